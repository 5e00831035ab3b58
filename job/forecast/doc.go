// Package forecast says what the oxygen of a batch will do: from what the
// grower knows, or with that and every reading since.
//
// A forecast is an ensemble. Each member is one brew that could be this one:
// its own strength of compost, its own air, its own meter, and its own ways
// in which our equations are wrong. Readings weigh the members; what most of
// them do next is the forecast.
package forecast
