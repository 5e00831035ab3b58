// Package numeric holds the mathematics that the sciences share: functions
// whose digits are the same on every machine, integrators, roots, least
// squares, and the tools of an ensemble.
//
// Everything is deterministic: randomness is handed in as a *rand.Rand, and
// a product that is added to something is rounded first (float64(x*y) + z),
// so that no compiler may fuse the two.
package numeric
