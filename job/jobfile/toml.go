package jobfile

import (
	"errors"

	"github.com/pelletier/go-toml/v2/unstable"

	"aerosteep/fault"
	"aerosteep/wording"
)

// deepest is how far tables and lists may lie in each other. The form needs
// four; more is a slip or an attack, and reading it would eat the stack.
const deepest = 32

// readTOML reads the text into a tree that keeps its lines. Slips that leave
// the rest readable (a key or table given twice) are problems among others;
// a text that is not TOML has one problem and no tree.
func readTOML(text []byte) (*table, fault.List) {
	if line := tooDeep(text); line > 0 {
		return nil, fault.List{notReadable("jobfile.too-deep", line, "")}
	}
	r := tomlReader{lines: linesOf(text), root: &table{line: 1}}
	r.parser.Reset(text)
	r.here = r.root
	for r.parser.NextExpression() {
		r.expression(r.parser.Expression())
	}
	if err := r.parser.Error(); err != nil {
		return nil, fault.List{r.broken(err)}
	}
	return r.root, r.problems
}

// tooDeep finds the line on which brackets lie deeper in each other than any
// job file needs.
func tooDeep(text []byte) int {
	depth, line := 0, 1
	for _, c := range text {
		switch c {
		case '\n':
			line++
		case '[', '{':
			if depth++; depth > deepest {
				return line
			}
		case ']', '}':
			depth = max(0, depth-1)
		}
	}
	return 0
}

type tomlReader struct {
	parser   unstable.Parser
	lines    lines
	root     *table
	here     *table // the table that keys are added to
	path     string // its name, for messages
	problems fault.List
}

func (r *tomlReader) broken(err error) *fault.Fault {
	line, said := 1, err.Error()
	var parse *unstable.ParserError
	if errors.As(err, &parse) {
		said = parse.Message
		if len(parse.Highlight) > 0 {
			line = r.lines.at(int(r.parser.Range(parse.Highlight).Offset))
		}
	}
	return notReadable("jobfile.not-toml", line, said)
}

// notReadable is the one problem of a file that cannot be read at all.
func notReadable(key string, line int, said string) *fault.Fault {
	return &fault.Fault{
		Field: "file", Line: line,
		What:    wording.Say(key, wording.Places{"said": said}),
		Allowed: wording.Say("jobfile.readable"),
		Advice:  wording.Say("jobfile.not-toml.advice"),
	}
}

func (r *tomlReader) line(n *unstable.Node) int { return r.lines.at(int(n.Raw.Offset)) }

func (r *tomlReader) expression(n *unstable.Node) {
	switch n.Kind {
	case unstable.Table:
		r.openTable(n, false)
	case unstable.ArrayTable:
		r.openTable(n, true)
	case unstable.KeyValue:
		r.keyValue(r.here, r.path, n)
	}
}

// openTable makes [name] or one more [[name]] the table that keys go to.
func (r *tomlReader) openTable(n *unstable.Node, many bool) {
	at, path := r.root, ""
	for it := n.Key(); it.Next(); {
		key := it.Node()
		name, line := string(key.Data), r.line(key)
		path = joinPath(path, name)
		at = r.enter(at, path, name, line, many && it.IsLast(), it.IsLast())
	}
	r.here, r.path = at, path
}

// enter goes to the table name within at, making it where it is new.
func (r *tomlReader) enter(at *table, path, name string, line int, many, last bool) *table {
	old := at.get(name)
	switch {
	case old == nil && many:
		fresh := &table{line: line}
		at.add(name, line, &value{line: line, shape: listShape, list: []*value{{line: line, shape: tableShape, table: fresh}}})
		return fresh
	case old == nil:
		fresh := &table{line: line}
		at.add(name, line, &value{line: line, shape: tableShape, table: fresh})
		return fresh
	case many && old.shape == listShape:
		fresh := &table{line: line}
		old.list = append(old.list, &value{line: line, shape: tableShape, table: fresh})
		return fresh
	case !many && !last && old.shape == listShape && len(old.list) > 0 && old.list[len(old.list)-1].shape == tableShape:
		return old.list[len(old.list)-1].table
	case !last && old.shape == tableShape:
		return old.table
	}
	r.twice(path, name, line)
	return &table{line: line}
}

func (r *tomlReader) twice(path, name string, line int) {
	r.problems = append(r.problems, &fault.Fault{
		Field: path, Line: line, Given: name,
		What:    wording.Say("jobfile.twice"),
		Allowed: wording.Say("jobfile.twice.allowed"),
		Advice:  wording.Say("jobfile.twice.advice"),
	})
}

func (r *tomlReader) keyValue(at *table, path string, n *unstable.Node) {
	for it := n.Key(); it.Next(); {
		key := it.Node()
		name, line := string(key.Data), r.line(key)
		path = joinPath(path, name)
		if !it.IsLast() {
			at = r.enter(at, path, name, line, false, false)
			continue
		}
		if at.get(name) != nil {
			r.twice(path, name, line)
			return
		}
		at.add(name, line, r.value(n.Value(), path, line))
	}
}

func (r *tomlReader) value(n *unstable.Node, path string, line int) *value {
	if n.Raw.Length > 0 {
		line = r.line(n)
	}
	v := &value{line: line, text: string(n.Data)}
	switch n.Kind {
	case unstable.Integer:
		v.shape = wholeShape
	case unstable.Float:
		v.shape = decimalShape
	case unstable.Bool:
		v.shape = boolShape
	case unstable.DateTime, unstable.LocalDateTime, unstable.LocalDate, unstable.LocalTime:
		v.shape = momentShape
	case unstable.Array:
		v.shape = listShape
		for it := n.Children(); it.Next(); {
			if it.Node().Kind != unstable.Comment {
				v.list = append(v.list, r.value(it.Node(), path, line))
			}
		}
	case unstable.InlineTable:
		v.shape, v.table = tableShape, &table{line: line}
		for it := n.Children(); it.Next(); {
			if it.Node().Kind == unstable.KeyValue {
				r.keyValue(v.table, path, it.Node())
			}
		}
	}
	return v
}

func joinPath(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}
