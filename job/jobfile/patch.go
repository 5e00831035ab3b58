package jobfile

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"

	"aerosteep/fault"
)

// Change is one operation of a JSON Patch (RFC 6902) on the JSON form of a job
// file: replace or add, as plans advise them.
type Change struct {
	Op    string `json:"op"`
	Path  string `json:"path"`
	Value any    `json:"value"`
}

// With is the file with changes made, read anew.
func (f *File) With(changes []Change) (*File, fault.List) {
	var document any
	if err := json.Unmarshal(f.JSON(), &document); err != nil {
		return nil, fault.List{notReadable("jobfile.not-json", 1, err.Error())}
	}
	for _, c := range changes {
		changed, err := apply(document, strings.Split(strings.TrimPrefix(c.Path, "/"), "/"), c)
		if err != nil {
			return nil, fault.List{notReadable("jobfile.not-json", 1, err.Error())}
		}
		document = changed
	}
	text, err := json.Marshal(document)
	if err != nil {
		return nil, fault.List{notReadable("jobfile.not-json", 1, err.Error())}
	}
	return Read(text, "changed.json", Whole)
}

// apply goes down one step of a path and puts the value at its end.
func apply(at any, path []string, c Change) (any, error) {
	step := strings.NewReplacer("~1", "/", "~0", "~").Replace(path[0])
	switch here := at.(type) {
	case map[string]any:
		return applyToTable(here, step, path, c)
	case []any:
		return applyToList(here, step, path, c)
	}
	return nil, fmt.Errorf("%s leads nowhere", c.Path)
}

func applyToTable(here map[string]any, step string, path []string, c Change) (any, error) {
	old, known := here[step]
	if len(path) == 1 {
		if c.Op == "replace" && !known {
			return nil, fmt.Errorf("%s is not there to be replaced", c.Path)
		}
		here[step] = c.Value
		return here, nil
	}
	changed, err := apply(old, path[1:], c)
	here[step] = changed
	return here, err
}

func applyToList(here []any, step string, path []string, c Change) (any, error) {
	if step == "-" && len(path) == 1 && c.Op == "add" {
		return append(here, c.Value), nil
	}
	n, err := strconv.Atoi(step)
	if err != nil || n < 0 || n >= len(here) {
		return nil, fmt.Errorf("%s leads nowhere", c.Path)
	}
	if len(path) == 1 && c.Op == "add" {
		return append(here[:n:n], append([]any{c.Value}, here[n:]...)...), nil
	}
	if len(path) == 1 {
		here[n] = c.Value
		return here, nil
	}
	changed, err := apply(here[n], path[1:], c)
	here[n] = changed
	return here, err
}
