package growth

import (
	"fmt"
	"math"
)

// Component is one column of a matrix: something whose concentration changes.
type Component struct {
	Name     string
	COD      float64 // g oxygen demand in one unit of it; -1 for oxygen itself
	Nitrogen float64 // g nitrogen in one unit of it
}

// Process is one row: how fast it goes, and what one unit of it does to each
// component.
type Process struct {
	Name  string
	Yield map[string]float64 // by the name of a component; absent is 0
	Rate  func(state State) float64
}

// Matrix is processes x components, as Petersen wrote them and the
// activated-sludge models do (Henze et al. 1987). A process is a row of data,
// not a path of code.
type Matrix struct {
	Components []Component
	Processes  []Process

	column map[string]int
}

// State reads concentrations by name.
type State struct {
	matrix *Matrix
	values []float64
}

// Of is the concentration of a component.
func (s State) Of(name string) float64 { return s.values[s.matrix.column[name]] }

// NewMatrix checks that every yield names a component.
func NewMatrix(components []Component, processes []Process) (*Matrix, error) {
	m := &Matrix{Components: components, Processes: processes, column: map[string]int{}}
	for i, c := range components {
		m.column[c.Name] = i
	}
	for _, p := range processes {
		for name := range p.Yield {
			if _, known := m.column[name]; !known {
				return nil, fmt.Errorf("growth: process %q changes %q, which is no component", p.Name, name)
			}
		}
	}
	return m, nil
}

// Column is the place of a component in a state.
func (m *Matrix) Column(name string) int { return m.column[name] }

// NegativeError says that a state handed in is below zero.
type NegativeError struct {
	Component string
	Value     float64
}

// Error names the component.
func (e *NegativeError) Error() string {
	return fmt.Sprintf("growth: %s is %g, and a concentration cannot be negative", e.Component, e.Value)
}

// Rates are the rates of all processes in a state.
//
// Errors: *NegativeError where a concentration is under zero or not a number:
// it is refused, not clipped.
func (m *Matrix) Rates(values []float64) ([]float64, error) {
	for i, v := range values {
		if !(v >= 0) || math.IsInf(v, 0) {
			return nil, &NegativeError{m.Components[i].Name, v}
		}
	}
	state := State{m, values}
	rates := make([]float64, len(m.Processes))
	for i, p := range m.Processes {
		rates[i] = p.Rate(state)
	}
	return rates, nil
}

// Change adds up what the processes at these rates do to each component.
func (m *Matrix) Change(rates []float64) []float64 {
	change := make([]float64, len(m.Components))
	for i, p := range m.Processes {
		for name, yield := range p.Yield {
			change[m.column[name]] += yield * rates[i]
		}
	}
	return change
}

// Imbalance is the oxygen demand and the nitrogen that one unit of a process
// makes from nothing: both are 0 in a sound row.
func (m *Matrix) Imbalance(p Process) (cod, nitrogen float64) {
	for name, yield := range p.Yield {
		c := m.Components[m.column[name]]
		cod += yield * c.COD
		nitrogen += yield * c.Nitrogen
	}
	return cod, nitrogen
}

// Monod is x/(half + x): 0 where there is none.
func Monod(x, half float64) float64 {
	if x <= 0 {
		return 0
	}
	return x / (half + x)
}

// Grazing is Holling's type II above a floor: the share of the highest rate at
// which prey is eaten; 0 at and under the floor (Taylor 1977 found one in four
// of seven ciliate curves).
func Grazing(prey, half, floor float64) float64 { return Monod(prey-floor, half) }
