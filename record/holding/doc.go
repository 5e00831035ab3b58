// Package holding is what the journal's entries add up to: the set-up of a
// place (the tables of its job file) and its batches, living and past.
//
// The state is kept up entry by entry, in whatever order entries arrive, and
// set aside as a checkpoint now and then, so that a start need not go through
// everything. Readings are not part of it: they are looked up where a batch is
// looked at.
//
// Nothing is written but through the journal; what a person logs or loads
// becomes entries.
package holding
