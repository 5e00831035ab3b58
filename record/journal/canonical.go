package journal

import (
	"bytes"
	"math"
	"sort"
	"strconv"
	"unicode/utf16"
	"unicode/utf8"

	"aerosteep/fault"
	"aerosteep/wording"
)

// Canonical is the RFC 8785 form (JSON Canonicalization Scheme) of a JSON
// text: no white space, keys sorted by UTF-16 code units, numbers and strings
// written as ECMAScript writes them. Two texts that say the same have the same
// form, and so the same digest, on every machine.
//
// What RFC 7493 (I-JSON) forbids is refused: a key twice in one object, a lone
// surrogate, bytes that are not UTF-8, a number too large for a double.
func Canonical(text []byte) ([]byte, error) {
	r := reader{text: text}
	out, err := r.value(make([]byte, 0, len(text)), 0)
	if err != nil {
		return nil, err
	}
	if r.space(); r.at != len(text) {
		return nil, r.wrong("journal.json.after-end")
	}
	return out, nil
}

// deepest is how far objects and arrays may be nested: far beyond any entry,
// and far below what the stack bears.
const deepest = 100

// reader walks through a JSON text once and writes its canonical form.
type reader struct {
	text []byte
	at   int
}

func (r *reader) wrong(key string) error {
	line := 1 + bytes.Count(r.text[:min(r.at, len(r.text))], []byte("\n"))
	return fault.New("", r.excerpt(), wording.Say(key, wording.Places{"line": line, "place": r.at + 1}), wording.Say("journal.json.allowed"), wording.Say("journal.json.advice"))
}

// excerpt is the text around a mistake, for the message about it.
func (r *reader) excerpt() string {
	from, to := max(0, r.at-12), min(len(r.text), r.at+12)
	return string(bytes.ToValidUTF8(r.text[min(from, to):to], []byte("?")))
}

func (r *reader) space() {
	for r.at < len(r.text) {
		switch r.text[r.at] {
		case ' ', '\t', '\n', '\r':
			r.at++
		default:
			return
		}
	}
}

// next answers the next character that is not white space, 0 at the end.
func (r *reader) next() byte {
	if r.space(); r.at < len(r.text) {
		return r.text[r.at]
	}
	return 0
}

func (r *reader) value(out []byte, depth int) ([]byte, error) {
	if depth > deepest {
		return nil, r.wrong("journal.json.too-deep")
	}
	switch c := r.next(); c {
	case '{':
		return r.object(out, depth)
	case '[':
		return r.array(out, depth)
	case '"':
		s, err := r.str()
		if err != nil {
			return nil, err
		}
		return appendString(out, s), nil
	case 't':
		return r.literal(out, "true")
	case 'f':
		return r.literal(out, "false")
	case 'n':
		return r.literal(out, "null")
	default:
		return r.number(out)
	}
}

func (r *reader) literal(out []byte, word string) ([]byte, error) {
	if !bytes.HasPrefix(r.text[r.at:], []byte(word)) {
		return nil, r.wrong("journal.json.not-a-value")
	}
	r.at += len(word)
	return append(out, word...), nil
}

func (r *reader) array(out []byte, depth int) ([]byte, error) {
	r.at++
	out = append(out, '[')
	if r.next() == ']' {
		r.at++
		return append(out, ']'), nil
	}
	for {
		var err error
		if out, err = r.value(out, depth+1); err != nil {
			return nil, err
		}
		switch r.next() {
		case ',':
			r.at++
			out = append(out, ',')
		case ']':
			r.at++
			return append(out, ']'), nil
		default:
			return nil, r.wrong("journal.json.no-end-of-array")
		}
	}
}

// member is one key of an object with the canonical form of its value.
type member struct {
	key   string
	value []byte
}

func (r *reader) object(out []byte, depth int) ([]byte, error) {
	r.at++
	if r.next() == '}' {
		r.at++
		return append(out, '{', '}'), nil
	}
	var members []member
	var values []byte // of all members, one after the other
	for {
		key, err := r.key()
		if err != nil {
			return nil, err
		}
		from := len(values)
		if values, err = r.value(values, depth+1); err != nil {
			return nil, err
		}
		members = append(members, member{key, values[from:len(values):len(values)]})
		switch r.next() {
		case ',':
			r.at++
		case '}':
			r.at++
			return r.sorted(out, members)
		default:
			return nil, r.wrong("journal.json.no-end-of-object")
		}
	}
}

func (r *reader) key() (string, error) {
	if r.next() != '"' {
		return "", r.wrong("journal.json.no-key")
	}
	key, err := r.str()
	if err != nil {
		return "", err
	}
	if r.next() != ':' {
		return "", r.wrong("journal.json.no-colon")
	}
	r.at++
	return key, nil
}

// sorted writes the members of an object by key.
func (r *reader) sorted(out []byte, members []member) ([]byte, error) {
	sort.SliceStable(members, func(i, j int) bool { return lessUTF16(members[i].key, members[j].key) })
	out = append(out, '{')
	for i, m := range members {
		if i > 0 {
			if m.key == members[i-1].key {
				return nil, r.wrong("journal.json.key-twice")
			}
			out = append(out, ',')
		}
		out = append(append(appendString(out, m.key), ':'), m.value...)
	}
	return append(out, '}'), nil
}

// lessUTF16 orders as RFC 8785 section 3.2.3 asks: by UTF-16 code units, which
// differs from the order of bytes above U+FFFF.
func lessUTF16(a, b string) bool {
	for i := 0; i < len(a) && i < len(b); i++ {
		if a[i] >= utf8.RuneSelf || b[i] >= utf8.RuneSelf {
			return lessUnits(utf16.Encode([]rune(a)), utf16.Encode([]rune(b)))
		}
		if a[i] != b[i] {
			return a[i] < b[i]
		}
	}
	return len(a) < len(b)
}

func lessUnits(a, b []uint16) bool {
	for i := 0; i < len(a) && i < len(b); i++ {
		if a[i] != b[i] {
			return a[i] < b[i]
		}
	}
	return len(a) < len(b)
}

// str reads a string with its quotes.
func (r *reader) str() (string, error) {
	r.at++
	from, plain := r.at, true
	for r.at < len(r.text) {
		switch c := r.text[r.at]; {
		case c == '"':
			raw := r.text[from:r.at]
			r.at++
			if !utf8.Valid(raw) {
				return "", r.wrong("journal.json.not-utf8")
			}
			if plain {
				return string(raw), nil
			}
			return r.unescape(raw)
		case c == '\\':
			plain = false
			r.at += 2
		case c < ' ':
			return "", r.wrong("journal.json.control")
		default:
			r.at++
		}
	}
	return "", r.wrong("journal.json.no-end-of-string")
}

// escapes are the two-character escapes of RFC 8259 section 7.
var escapes = map[byte]byte{'"': '"', '\\': '\\', '/': '/', 'b': '\b', 'f': '\f', 'n': '\n', 'r': '\r', 't': '\t'}

func (r *reader) unescape(raw []byte) (string, error) {
	out := make([]byte, 0, len(raw))
	for i := 0; i < len(raw); {
		if raw[i] != '\\' {
			out = append(out, raw[i])
			i++
			continue
		}
		if plain, known := escapes[raw[i+1]]; known {
			out = append(out, plain)
			i += 2
			continue
		}
		char, length := unicodeEscape(raw[i:])
		if length == 0 {
			return "", r.wrong("journal.json.escape")
		}
		out = utf8.AppendRune(out, char)
		i += length
	}
	return string(out), nil
}

// unicodeEscape reads \uXXXX, or the two that make one character above
// U+FFFF; length 0 where it is neither.
func unicodeEscape(raw []byte) (char rune, length int) {
	first, ok := hexUnit(raw)
	if !ok {
		return 0, 0
	}
	if !utf16.IsSurrogate(first) {
		return first, 6
	}
	second, ok := hexUnit(raw[6:])
	if char = utf16.DecodeRune(first, second); !ok || char == utf8.RuneError {
		return 0, 0
	}
	return char, 12
}

func hexUnit(raw []byte) (rune, bool) {
	if len(raw) < 6 || raw[0] != '\\' || raw[1] != 'u' {
		return 0, false
	}
	n, err := strconv.ParseUint(string(raw[2:6]), 16, 16)
	return rune(n), err == nil
}

// appendString writes a string as RFC 8785 section 3.2.2.2 asks: only quotes,
// backslashes and control characters are escaped.
func appendString(out []byte, s string) []byte {
	const short = "btn\x00fr" // the letters of \b to \r, from U+0008 on
	out = append(out, '"')
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case c == '"' || c == '\\':
			out = append(out, '\\', c)
		case c >= '\b' && c <= '\r' && c != '\v':
			out = append(out, '\\', short[c-'\b'])
		case c < ' ':
			const hex = "0123456789abcdef"
			out = append(out, '\\', 'u', '0', '0', hex[c>>4], hex[c&15])
		default:
			out = append(out, c)
		}
	}
	return append(out, '"')
}

// number reads a number by the grammar of RFC 8259 section 6.
func (r *reader) number(out []byte) ([]byte, error) {
	from := r.at
	if r.peek() == '-' {
		r.at++
	}
	if r.peek() == '0' {
		r.at++
	} else if r.digits() == 0 {
		return nil, r.wrong("journal.json.not-a-value")
	}
	if r.peek() == '.' {
		r.at++
		if r.digits() == 0 {
			return nil, r.wrong("journal.json.number")
		}
	}
	if c := r.peek(); c == 'e' || c == 'E' {
		r.at++
		if c := r.peek(); c == '+' || c == '-' {
			r.at++
		}
		if r.digits() == 0 {
			return nil, r.wrong("journal.json.number")
		}
	}
	v, err := strconv.ParseFloat(string(r.text[from:r.at]), 64)
	if err != nil {
		return nil, r.wrong("journal.json.number-too-large")
	}
	return appendNumber(out, v), nil
}

func (r *reader) peek() byte {
	if r.at < len(r.text) {
		return r.text[r.at]
	}
	return 0
}

func (r *reader) digits() (n int) {
	for ; r.peek() >= '0' && r.peek() <= '9'; n++ {
		r.at++
	}
	return n
}

// appendNumber writes a finite double as ECMAScript does (ECMA-262, Number to
// String; RFC 8785 section 3.2.2.3): the shortest digits that read back as the
// same double, plain from 1e-6 up to 1e21, otherwise with an exponent.
func appendNumber(out []byte, v float64) []byte {
	if v == 0 {
		return append(out, '0') // -0 too
	}
	if size := math.Abs(v); size >= 1e-6 && size < 1e21 {
		return strconv.AppendFloat(out, v, 'f', -1, 64)
	}
	out = strconv.AppendFloat(out, v, 'e', -1, 64)
	// Go writes at least two digits of exponent, ECMAScript as few as needed.
	if n := len(out); out[n-2] == '0' && (out[n-3] == '-' || out[n-3] == '+') {
		out = append(out[:n-2], out[n-1])
	}
	return out
}
