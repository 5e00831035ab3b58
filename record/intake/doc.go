// Package intake takes readings from the files of loggers and meters, whatever
// their columns are called: columns are mapped once, units are said and never
// guessed from values, gaps and doubles are told.
//
// It reads text that is handed in and opens no file.
package intake
