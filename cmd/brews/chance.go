package main

import (
	"math"
	"math/rand/v2"
)

// chance draws everything that is drawn, from one seed, so that a folder can be
// made again to the byte.
type chance struct{ *rand.Rand }

func seeded(seed, stream uint64) chance { return chance{rand.New(rand.NewPCG(seed, stream))} }

// between draws evenly between two numbers.
func (c chance) between(low, high float64) float64 { return low + (high-low)*c.Float64() }

// wide draws evenly in the logarithm: for what may differ by orders of magnitude.
func (c chance) wide(low, high float64) float64 {
	return math.Exp(c.between(math.Log(low), math.Log(high)))
}

// normal draws about a mean.
func (c chance) normal(mean, deviation float64) float64 { return mean + deviation*c.NormFloat64() }

// factor draws a number about 1 whose logarithm has this deviation.
func (c chance) factor(deviation float64) float64 { return math.Exp(c.normal(0, deviation)) }

// happens is true in this share of draws.
func (c chance) happens(share float64) bool { return c.Float64() < share }

func pick[A any](c chance, of ...A) A { return of[c.IntN(len(of))] }

// wander is an Ornstein-Uhlenbeck course about 0 with one value per step: what
// drifts slowly and comes back. Memory in the steps' unit.
func (c chance) wander(steps int, step, deviation, memory float64) []float64 {
	keep := math.Exp(-step / memory)
	course := make([]float64, steps)
	v := c.normal(0, deviation)
	for i := range course {
		course[i] = v
		v = keep*v + math.Sqrt(1-keep*keep)*c.normal(0, deviation)
	}
	return course
}
