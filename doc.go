// Package aerosteep is the map of the house; it holds no code of its own.
//
// Aerosteep serves the person who turns compost, water, food and air into a
// living batch of aerated compost tea and puts it on crops. Data flows one
// way:
//
//	ground -> need -> plan -> batch -> checks -> application -> record
//
// The floors, from the cellar up; a package imports its own floor only where
// floors_test.go allows it, and never one above:
//
//	wording     every sentence a person reads, in each language
//	fault       what is wrong with an input, for a person and for a program
//	source      published sources by key: who says so, for every number
//	quantity    values that carry their unit: read, convert, print
//	numeric     integrators, least squares, root finding, resampling
//	table       text tables as people keep them
//	science     what nature does: true if nobody brewed tea
//	job         what the grower decides, in working order
//	worksheet   every single calculation described once
//	record      what is remembered
//	face        how people and machines reach it
//	cmd         the program
//
// Where does a function belong? Would it still be true if nobody brewed tea?
// Yes: science. No: job.
//
// Everything up to worksheet is pure: no files, no network, no clock, no
// chance that is not handed in. Those packages can be imported on their own
// and run in a browser. A reader who wants the main flow starts at job/plan
// (from ground to clock) and job/forecast (from readings to a decision).
package aerosteep
