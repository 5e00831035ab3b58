package worksheet

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"strings"

	"aerosteep/fault"
	"aerosteep/source"
	"aerosteep/wording"
)

// JSON is the result as every face answers it: the data's keys in their
// order, then basis, sources and cautions, sentences in the reader's language.
func (r *Result) JSON(reader wording.Reader) ([]byte, error) {
	object, err := r.tree(reader)
	if err != nil {
		return nil, err
	}
	return Plainly(object)
}

// Plainly encodes JSON as people write it: & < > stand as they are, since what
// we print is not a page.
func Plainly(value any) ([]byte, error) {
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	if err := encoder.Encode(value); err != nil {
		return nil, err
	}
	return bytes.TrimSuffix(b.Bytes(), []byte("\n")), nil
}

func (r *Result) tree(reader wording.Reader) (Object, error) {
	node, err := Tree(r.Data, reader)
	if err != nil {
		return nil, err
	}
	object, _ := node.(Object)
	return object.with("basis", string(r.Basis), r.Basis != "").
		with("sources", orEmpty(r.Sources), true).
		with("cautions", Sentences(r.Cautions, reader), true), nil
}

// Envelope adds sources and cautions to an answer that is not a worksheet's.
func Envelope(data any, sources []source.Source, cautions []wording.Text, reader wording.Reader) ([]byte, error) {
	return (&Result{Data: data, Sources: sources, Cautions: cautions}).JSON(reader)
}

func orEmpty(s []source.Source) []source.Source {
	if s == nil {
		return []source.Source{}
	}
	return s
}

// Sentences puts texts into the reader's language.
func Sentences(texts []wording.Text, reader wording.Reader) []string {
	said := make([]string, len(texts))
	for i, t := range texts {
		said[i] = t.For(reader)
	}
	return said
}

// Object is a JSON object that keeps the order of its keys.
type Object []Member

// Member is one key of an Object.
type Member struct {
	Key   string
	Value any
}

func (o Object) with(key string, value any, really bool) Object {
	if !really {
		return o
	}
	return append(o, Member{key, value})
}

// Get finds a key.
func (o Object) Get(key string) (any, bool) {
	for _, m := range o {
		if m.Key == key {
			return m.Value, true
		}
	}
	return nil, false
}

// MarshalJSON writes the members in their order.
func (o Object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		value, err := Plainly(m.Value)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", m.Key, err)
		}
		key, _ := json.Marshal(m.Key)
		b.Write(key)
		b.WriteByte(':')
		b.Write(value)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// Tree turns a value into Objects, slices and plain values, with every Text
// put into the reader's language. A number that is not finite is an error: it
// must never reach a person.
func Tree(value any, reader wording.Reader) (any, error) {
	return tree(reflect.ValueOf(value), reader)
}

var textType = reflect.TypeFor[wording.Text]()
var marshaler = reflect.TypeFor[json.Marshaler]()

func tree(v reflect.Value, r wording.Reader) (any, error) {
	if !v.IsValid() {
		return nil, nil
	}
	if v.Type() == textType {
		return v.Interface().(wording.Text).For(r), nil
	}
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			return nil, nil
		}
		return tree(v.Elem(), r)
	case reflect.Float64, reflect.Float32:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			return nil, fault.New("input", "", wording.Say("worksheet.not-finite"), wording.Say("worksheet.not-finite.allowed"), wording.Say("worksheet.not-finite.advice"))
		}
		return v.Float(), nil
	}
	if v.Type().Implements(marshaler) {
		return v.Interface(), nil
	}
	switch v.Kind() {
	case reflect.Struct:
		return structTree(v, r)
	case reflect.Slice, reflect.Array:
		return sliceTree(v, r)
	case reflect.Map:
		return mapTree(v, r)
	}
	return v.Interface(), nil
}

func structTree(v reflect.Value, r wording.Reader) (any, error) {
	object := Object{}
	for i := range v.NumField() {
		field := v.Type().Field(i)
		name, _, _ := strings.Cut(field.Tag.Get("json"), ",")
		if name == "-" || !field.IsExported() {
			continue
		}
		value, err := tree(v.Field(i), r)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		if inner, isObject := value.(Object); isObject && field.Anonymous && name == "" {
			object = append(object, inner...)
			continue
		}
		if name == "" {
			name = field.Name
		}
		object = append(object, Member{name, value})
	}
	return object, nil
}

func sliceTree(v reflect.Value, r wording.Reader) (any, error) {
	items := make([]any, v.Len())
	for i := range items {
		item, err := tree(v.Index(i), r)
		if err != nil {
			return nil, err
		}
		items[i] = item
	}
	return items, nil
}

func mapTree(v reflect.Value, r wording.Reader) (any, error) {
	object := Object{}
	values := map[string]reflect.Value{}
	for _, key := range v.MapKeys() {
		values[key.String()] = v.MapIndex(key)
	}
	for _, key := range sortedKeys(values) {
		value, err := tree(values[key], r)
		if err != nil {
			return nil, err
		}
		object = append(object, Member{key, value})
	}
	return object, nil
}
