package counting

import (
	"math"

	"aerosteep/quantity"
)

// SquareGridLength is the length of hyphae in a field from N crossings with a
// square grid of spacing G, both line directions counted:
//
//	R = (π/4) N G
//
// It is Newman's R = π N A/(2H) with A/H = G/2; the rounding 11/14 for π/4
// (Tennant 1975) is not used.
//
// Source: Newman 1966, J. Appl. Ecol. 3:139-145; Tennant 1975, J. Ecol. 63:995.
func SquareGridLength(crossings float64, spacing quantity.Length) quantity.Length {
	return spacing * quantity.Length(math.Pi/4*crossings)
}

// ParallelLinesLength is the same with the lines of one direction only, so
// that A/H = G: R = (π/2) N G.
func ParallelLinesLength(crossings float64, spacing quantity.Length) quantity.Length {
	return spacing * quantity.Length(math.Pi/2*crossings)
}

// LineIntersectLength is the general form, R = π N A/(2H), with lines of the
// total length H in the counted area A.
//
// Source: Newman 1966, J. Appl. Ecol. 3:139-145.
func LineIntersectLength(crossings float64, area quantity.Area, lines quantity.Length) quantity.Length {
	return quantity.Metres(math.Pi * crossings * area.SquareMetres() / (2 * lines.Metres()))
}

// Lengths is the length of hyphae seen: in each field, or only in all.
type Lengths struct {
	Each   []quantity.Length // nil where only the total is known
	Total  quantity.Length
	Fields int
}

// EachFieldLength is a length for every field.
func EachFieldLength(each []quantity.Length) Lengths {
	l := Lengths{Each: each, Fields: len(each)}
	for _, length := range each {
		l.Total += length
	}
	return l
}

// LengthSummary is the mean length of hyphae in a field with its 95 % range.
type LengthSummary struct {
	Mean      quantity.Length
	Low, High quantity.Length // meaningless where Interval is NoInterval
	Interval  Interval
}

// SummariseLengths draws the range by Student's t over the fields, not under
// zero. Where nothing was seen the upper limit is the exact Poisson one:
// 3.688879 hyphae, each as long as the field is wide, in all that was looked
// at.
//
// Input: at least one field. Source: Student's t; Garwood 1936 for nothing seen.
func SummariseLengths(l Lengths, fieldDiameter quantity.Length) LengthSummary {
	n := float64(l.Fields)
	s := LengthSummary{Mean: quantity.Length(float64(l.Total) / n), Interval: NoInterval}
	if l.Total == 0 {
		_, unseen := Poisson(0)
		s.High, s.Interval = quantity.Length(unseen*float64(fieldDiameter)/n), ZeroSeen
		return s
	}
	if len(l.Each) < 2 {
		return s
	}
	values := make([]float64, len(l.Each))
	for i, length := range l.Each {
		values[i] = float64(length)
	}
	half := quantity.Length(student(len(values)-1, 1-twoSided95) * math.Sqrt(variance(values)/n))
	s.Low, s.High, s.Interval = max(0, s.Mean-half), s.Mean+half, StudentT
	return s
}

// MetresPerMillilitre is a length in a field scaled to 1 mL of the sample.
func MetresPerMillilitre(inField quantity.Length, field quantity.Volume, dilution, concentration float64) float64 {
	return inField.Metres() / field.Millilitres() * dilution / concentration
}

// HyphaDiameter is taken where nobody measured it: 2.5 µm, common practice.
// Biomass goes with its square, so measure it.
const HyphaDiameter = quantity.Length(2.5e-6)

// HyphaDryDensity is dry mass per volume of living hypha, 0.33 g/cm³ (0.11 to
// 0.41 by moisture stress).
//
// Source: van Veen and Paul 1979, Appl. Environ. Microbiol. 37:686-692.
const HyphaDryDensity = quantity.Density(0.33)

// HyphaMass is the dry mass in µg/mL of a length in m/mL: length x π d²/4 x
// density.
func HyphaMass(metresPerMillilitre float64, diameter quantity.Length, dry quantity.Density) float64 {
	cubicMetres := metresPerMillilitre * circle(diameter).SquareMetres()
	return dry.MassOf(quantity.Litres(cubicMetres*1000)).Grams() * 1e6
}
