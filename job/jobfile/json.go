package jobfile

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"strings"

	"aerosteep/fault"
	"aerosteep/wording"
)

// readJSON reads the JSON form of a job file into the same tree as readTOML.
func readJSON(text []byte) (*table, fault.List) {
	if line := tooDeep(text); line > 0 {
		return nil, fault.List{notReadable("jobfile.too-deep", line, "")}
	}
	r := jsonReader{lines: linesOf(text), decoder: json.NewDecoder(bytes.NewReader(text))}
	r.decoder.UseNumber()
	v, err := r.next("")
	if err == nil {
		if _, more := r.decoder.Token(); more != io.EOF {
			err = errors.New("text after the end of the object")
		}
	}
	if err != nil {
		return nil, fault.List{notReadable("jobfile.not-json", r.line(), err.Error())}
	}
	if v == nil || v.shape != tableShape {
		return nil, fault.List{notReadable("jobfile.not-json", 1, "not an object")}
	}
	return v.table, r.problems
}

type jsonReader struct {
	decoder  *json.Decoder
	lines    lines
	problems fault.List
}

func (r *jsonReader) line() int { return r.lines.at(max(0, int(r.decoder.InputOffset())-1)) }

// next reads one value; null is the same as leaving the key out.
func (r *jsonReader) next(path string) (*value, error) {
	token, err := r.decoder.Token()
	if err != nil {
		return nil, err
	}
	v := &value{line: r.line()}
	switch t := token.(type) {
	case json.Delim:
		if t == '{' {
			return v, r.object(v, path)
		}
		return v, r.array(v, path)
	case string:
		v.text = t
	case json.Number:
		v.text, v.shape = t.String(), wholeShape
		if strings.ContainsAny(v.text, ".eE") {
			v.shape = decimalShape
		}
	case bool:
		v.shape, v.text = boolShape, "false"
		if t {
			v.text = "true"
		}
	case nil:
		return nil, nil
	}
	return v, nil
}

func (r *jsonReader) object(v *value, path string) error {
	v.shape, v.table = tableShape, &table{line: v.line}
	for r.decoder.More() {
		token, err := r.decoder.Token()
		if err != nil {
			return err
		}
		name, line := token.(string), r.line()
		inner := joinPath(path, name)
		item, err := r.next(inner)
		if err != nil {
			return err
		}
		if v.table.get(name) != nil {
			r.twice(inner, name, line)
			continue
		}
		if item != nil {
			v.table.add(name, line, item)
		}
	}
	_, err := r.decoder.Token()
	return err
}

func (r *jsonReader) array(v *value, path string) error {
	v.shape = listShape
	for r.decoder.More() {
		item, err := r.next(path)
		if err != nil {
			return err
		}
		if item != nil {
			v.list = append(v.list, item)
		}
	}
	_, err := r.decoder.Token()
	return err
}

func (r *jsonReader) twice(path, name string, line int) {
	r.problems = append(r.problems, &fault.Fault{
		Field: path, Line: line, Given: name,
		What:    wording.Say("jobfile.twice"),
		Allowed: wording.Say("jobfile.twice.allowed"),
		Advice:  wording.Say("jobfile.twice.advice"),
	})
}
