package numeric

import (
	"errors"
	"math"
)

// LU factors a small square matrix with partial pivoting and solves with it.
type LU struct {
	n     int
	a     []float64
	pivot []int
}

// ErrSingular says that a matrix has no inverse.
var ErrSingular = errors.New("numeric: the matrix is singular")

// NewLU makes room for an n x n matrix.
func NewLU(n int) *LU { return &LU{n: n, a: make([]float64, n*n), pivot: make([]int, n)} }

// Set writes an element before factoring.
func (m *LU) Set(row, column int, v float64) { m.a[row*m.n+column] = v }

// Factor factors in place.
func (m *LU) Factor() error {
	n, a := m.n, m.a
	for c := range n {
		p := c
		for r := c + 1; r < n; r++ {
			if math.Abs(a[r*n+c]) > math.Abs(a[p*n+c]) {
				p = r
			}
		}
		m.pivot[c] = p
		if a[p*n+c] == 0 {
			return ErrSingular
		}
		if p != c {
			for j := range n {
				a[p*n+j], a[c*n+j] = a[c*n+j], a[p*n+j]
			}
		}
		for r := c + 1; r < n; r++ {
			a[r*n+c] /= a[c*n+c]
			for j := c + 1; j < n; j++ {
				a[r*n+j] -= a[r*n+c] * a[c*n+j]
			}
		}
	}
	return nil
}

// Solve replaces b by the solution of A x = b.
func (m *LU) Solve(b []float64) {
	n, a := m.n, m.a
	for c := range n {
		b[c], b[m.pivot[c]] = b[m.pivot[c]], b[c]
	}
	for r := range n {
		for j := range r {
			b[r] -= a[r*n+j] * b[j]
		}
	}
	for r := n - 1; r >= 0; r-- {
		for j := r + 1; j < n; j++ {
			b[r] -= a[r*n+j] * b[j]
		}
		b[r] /= a[r*n+r]
	}
}
