package oxygen_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"strconv"
	"testing"

	"aerosteep/internal/published"
)

// The saturation formula is read from its own source and worked out with one
// digit of one coefficient mistyped: do the check values notice? Slips of this
// kind stand in published code (1.0567 for 1.01567).

// spoiled is the source of the formula with one literal replaced.
type spoiled struct {
	functions map[string]*ast.FuncDecl
	literal   *ast.BasicLit
	as        float64
}

// formula are the functions that hold coefficients.
var formula = []string{"saturation", "vapourPressure", "nonIdeality"}

func readFormula(t *testing.T) spoiled {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), "saturation.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	s := spoiled{functions: map[string]*ast.FuncDecl{}}
	for _, d := range file.Decls {
		if f, isFunc := d.(*ast.FuncDecl); isFunc {
			s.functions[f.Name.Name] = f
		}
	}
	return s
}

// coefficients are the literals with a point or an exponent.
func (s spoiled) coefficients() []*ast.BasicLit {
	var all []*ast.BasicLit
	for _, name := range formula {
		ast.Inspect(s.functions[name].Body, func(n ast.Node) bool {
			if lit, isLit := n.(*ast.BasicLit); isLit && len(lit.Value) > 1 {
				all = append(all, lit)
			}
			return true
		})
	}
	return all
}

// call works a function of the formula out. It leaves the branch for 1 atm
// aside: the general one holds there too.
func (s spoiled) call(name string, arguments map[string]float64) float64 {
	scope := arguments
	for _, statement := range s.functions[name].Body.List {
		switch st := statement.(type) {
		case *ast.AssignStmt:
			scope[st.Lhs[0].(*ast.Ident).Name] = s.value(st.Rhs[0], scope)
		case *ast.ReturnStmt:
			return s.value(st.Results[0], scope)
		}
	}
	panic("the formula returns nothing")
}

func (s spoiled) value(e ast.Expr, scope map[string]float64) float64 {
	switch x := e.(type) {
	case *ast.BasicLit:
		if x == s.literal {
			return s.as
		}
		v, _ := strconv.ParseFloat(x.Value, 64)
		return v
	case *ast.Ident:
		v, known := scope[x.Name]
		if !known {
			panic("the formula uses " + x.Name)
		}
		return v
	case *ast.ParenExpr:
		return s.value(x.X, scope)
	case *ast.UnaryExpr:
		return -s.value(x.X, scope)
	case *ast.BinaryExpr:
		return operate(x.Op, s.value(x.X, scope), s.value(x.Y, scope))
	case *ast.CallExpr:
		return s.callValue(x, scope)
	}
	panic(fmt.Sprintf("the formula holds a %T", e))
}

func operate(op token.Token, a, b float64) float64 {
	switch op {
	case token.ADD:
		return a + b
	case token.SUB:
		return a - b
	case token.MUL:
		return a * b
	}
	return a / b
}

// callValue knows the few calls of the formula.
func (s spoiled) callValue(x *ast.CallExpr, scope map[string]float64) float64 {
	switch f := x.Fun.(type) {
	case *ast.Ident:
		if f.Name == "float64" {
			return s.value(x.Args[0], scope)
		}
		parameter := s.functions[f.Name].Type.Params.List[0].Names[0].Name
		return s.call(f.Name, map[string]float64{parameter: s.value(x.Args[0], scope)})
	case *ast.SelectorExpr:
		switch f.Sel.Name {
		case "Exp":
			return math.Exp(s.value(x.Args[0], scope))
		case "Concentration":
			return s.value(x.Args[0], scope)
		case "Kelvin":
			return s.value(f.X, scope) + 273.15
		case "Celsius":
			return s.value(f.X, scope)
		case "Atmospheres":
			return s.value(f.X, scope) / 101.325
		}
	}
	panic("the formula makes a call that this test does not know")
}

// slips are a literal's values with one digit off by one, or two neighbours
// swapped; those that leave the value alone are none.
func slips(literal string) []float64 {
	right, _ := strconv.ParseFloat(literal, 64)
	var all []float64
	add := func(text []byte) {
		if v, err := strconv.ParseFloat(string(text), 64); err == nil && v != right {
			all = append(all, v)
		}
	}
	for i := range literal {
		if literal[i] < '0' || literal[i] > '9' {
			continue
		}
		off := []byte(literal)
		off[i] = '0' + (literal[i]-'0'+1)%10
		add(off)
		if i > 0 && literal[i-1] >= '0' && literal[i-1] <= '9' {
			swapped := []byte(literal)
			swapped[i-1], swapped[i] = swapped[i], swapped[i-1]
			add(swapped)
		}
	}
	return all
}

// checkValue is one published value of the formula.
type checkValue struct{ celsius, kPa, salt, expected, tolerance float64 }

func checkValues(t *testing.T) []checkValue {
	var all []checkValue
	for _, row := range published.Rows(t, "saturation-digits.csv") {
		all = append(all, checkValue{row.Float("temperature_c"), row.Float("pressure_kpa"), row.Float("salinity_psu"), row.Float("expected"), row.Float("tolerance")})
	}
	for _, row := range published.Rows(t, "do-saturation.csv") {
		all = append(all, checkValue{row.Float("temperature_c"), float64(mmHg(row.Float("pressure_mmhg"))), row.Float("salinity_psu"), row.Float("expected"), row.Float("tolerance")})
	}
	return all
}

func (s spoiled) meets(values []checkValue) bool {
	for _, v := range values {
		got := s.call("saturation", map[string]float64{"water": v.celsius, "air": v.kPa, "salt": v.salt})
		if math.Abs(got-v.expected) > v.tolerance {
			return false
		}
	}
	return true
}

// At least 95 of 100 slips are caught; the formula as it stands meets all.
func TestCheckValuesCatchTypingSlips(t *testing.T) {
	values, s := checkValues(t), readFormula(t)
	if !s.meets(values) {
		t.Fatal("the formula as it stands does not meet its check values")
	}
	literals := s.coefficients()
	if len(literals) != 14 {
		t.Fatalf("found %d coefficients, want 14", len(literals))
	}
	tried, caught := 0, 0
	for _, literal := range literals {
		for _, slip := range slips(literal.Value) {
			s.literal, s.as = literal, slip
			tried++
			if s.meets(values) {
				t.Logf("%s typed as %g is not caught", literal.Value, slip)
			} else {
				caught++
			}
		}
	}
	t.Logf("%d of %d slips caught", caught, tried)
	if tried < 120 || 100*caught < 95*tried {
		t.Errorf("%d of %d slips caught, want 95 %%", caught, tried)
	}
}
