package jobfile

import (
	"math"
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// kind is what a key takes: how it is read and how the schema describes it.
type kind struct {
	name   string            // word for it, in messages and in the schema
	schema map[string]any    // JSON Schema of its JSON form
	choice []string          // where it is one of a list
	inner  *form             // where it is a list of tables
	read   func(reading) any // the typed value, or nil after r.refuse
}

// reading is one value being read, with what it may need to know.
type reading struct {
	*value
	kind    *kind
	checker *checker
	path    string // key with its table
}

// refuse notes a problem of the value. It returns nil, so that a kind can
// return it.
func (r reading) refuse(what, allowed, advice wording.Text) any {
	return r.refuseNear(what, allowed, advice, "")
}

func (r reading) refuseNear(what, allowed, advice wording.Text, nearest string) any {
	r.checker.note(&fault.Fault{
		Field: r.path, Line: r.line, Given: r.given(),
		What: what, Allowed: allowed, Advice: advice, Nearest: nearest,
	})
	return nil
}

// wrongShape refuses a number where a text is needed, and the like.
func (r reading) wrongShape() any {
	return r.refuse(wording.Say("jobfile.wrong-shape", wording.Places{"shape": shapeWord(r.shape)}), r.allowed(), wording.Text{})
}

func (r reading) allowed() wording.Text { return wording.Say("jobfile.kind." + r.kind.name) }

func shapeWord(s shape) wording.Text {
	return wording.Say("jobfile.shape." + [...]string{"text", "number", "number", "yes-no", "time", "list", "table"}[s])
}

// textKind is free text on one line; it may not be empty.
var textKind = kind{name: "text", schema: map[string]any{"type": "string", "minLength": 1}, read: func(r reading) any {
	if r.shape != textShape {
		return r.wrongShape()
	}
	if t := strings.TrimSpace(r.text); t != "" {
		return t
	}
	return r.refuse(wording.Say("jobfile.empty"), r.allowed(), wording.Text{})
}}

// choiceOf is one word of a list.
func choiceOf(words ...string) kind {
	return kind{name: "choice", choice: words, schema: map[string]any{"enum": words}, read: func(r reading) any {
		if r.shape != textShape {
			return r.wrongChoice()
		}
		for _, w := range words {
			if r.text == w {
				return w
			}
		}
		return r.wrongChoice()
	}}
}

func (r reading) wrongChoice() any {
	nearest := fault.Nearest(r.text, r.kind.choice)
	advice := wording.Text{}
	if nearest != "" {
		advice = wording.Say("jobfile.did-you-mean", wording.Places{"nearest": nearest})
	}
	return r.refuseNear(wording.Say("jobfile.not-a-choice", wording.Places{"given": r.given()}),
		wording.Say("jobfile.one-of", wording.Places{"words": strings.Join(r.kind.choice, ", ")}), advice, nearest)
}

// boolKind is true or false.
var boolKind = kind{name: "yes-no", schema: map[string]any{"type": "boolean"}, read: func(r reading) any {
	if r.shape != boolShape {
		return r.wrongShape()
	}
	return r.text == "true"
}}

// numberFrom is a bare number between two limits.
func numberFrom(low, high float64) kind {
	return kind{name: "number", schema: map[string]any{"type": "number", "minimum": low, "maximum": high}, read: func(r reading) any {
		n, ok := r.number()
		if !ok {
			return r.wrongShape()
		}
		return r.within(n, low, high)
	}}
}

// wholeFrom is a bare whole number between two limits.
func wholeFrom(low, high int) kind {
	return kind{name: "whole", schema: map[string]any{"type": "integer", "minimum": low, "maximum": high}, read: func(r reading) any {
		n, ok := r.number()
		if !ok || n != math.Trunc(n) {
			return r.wrongShape()
		}
		if r.within(n, float64(low), float64(high)) == nil {
			return nil
		}
		return int(n)
	}}
}

func (r reading) within(n, low, high float64) any {
	if n >= low && n <= high {
		return n
	}
	return r.refuse(wording.Say("jobfile.out-of-range"), wording.Say("jobfile.between", wording.Places{"low": low, "high": high}), wording.Text{})
}

// span is the range of an amount; over says that the lower end itself is out.
type span[T quantity.Amount] struct {
	low, high T
	over      bool
}

func from[T quantity.Amount](low, high T) span[T] { return span[T]{low: low, high: high} }
func over[T quantity.Amount](low, high T) span[T] { return span[T]{low: low, high: high, over: true} }

// amountOf is a number with its unit, typed as text.
func amountOf[T quantity.Amount](name string, parse func(string) (T, error), s span[T]) kind {
	return kind{name: name, schema: map[string]any{"type": "string"}, read: func(r reading) any {
		if r.shape != textShape {
			return r.bareNumber()
		}
		amount, err := parse(r.text)
		if err != nil {
			return r.fault(err)
		}
		if amount < s.low || amount > s.high || s.over && amount == s.low || math.IsNaN(float64(amount)) {
			sentence := "jobfile.between"
			if s.over {
				sentence = "jobfile.over-to"
			}
			return r.refuse(wording.Say("jobfile.out-of-range"), wording.Say(sentence, wording.Places{"low": s.low, "high": s.high}), wording.Text{})
		}
		return amount
	}}
}

// bareNumber refuses a value that is not text where an amount belongs.
func (r reading) bareNumber() any {
	if _, isNumber := r.number(); isNumber {
		return r.refuse(wording.Say("quantity.bare", wording.Places{"number": r.text}), r.allowed(), wording.Say("jobfile.bare.advice"))
	}
	return r.wrongShape()
}

// fault takes over what another room says is wrong with the value.
func (r reading) fault(err error) any {
	list := fault.Of(err)
	if len(list) == 0 {
		return r.refuse(wording.Verbatim(err.Error()), r.allowed(), wording.Text{})
	}
	f := list[0]
	allowed := f.Allowed
	if allowed.IsZero() {
		allowed = r.allowed()
	}
	return r.refuseNear(f.What, allowed, f.Advice, f.Nearest)
}

// namesKind is one name or a list of names.
var namesKind = kind{name: "names", schema: map[string]any{"anyOf": []any{
	map[string]any{"type": "string"}, map[string]any{"type": "array", "items": map[string]any{"type": "string"}},
}}, read: func(r reading) any {
	if r.shape == textShape {
		return []string{strings.TrimSpace(r.text)}
	}
	if r.shape != listShape {
		return r.wrongShape()
	}
	names := []string{}
	for _, item := range r.list {
		if item.shape != textShape {
			return r.wrongShape()
		}
		names = append(names, strings.TrimSpace(item.text))
	}
	return names
}}
