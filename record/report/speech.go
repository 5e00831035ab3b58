package report

import (
	"aerosteep/wording"
)

// speech is the language, or the two side by side, in which a paper speaks.
type speech struct {
	first  wording.Reader
	second *wording.Reader
}

// inBothLanguages speaks the reader's language and the other one, both in the
// reader's units.
func inBothLanguages(r wording.Reader) speech {
	other := r
	other.Language = wording.Spanish
	if r.Language == wording.Spanish {
		other.Language = wording.English
	}
	return speech{r, &other}
}

// short is a word or a label: "batch / tanda".
func (s speech) short(say func(wording.Reader) string) string {
	text := say(s.first)
	if s.second != nil {
		if also := say(*s.second); also != text {
			return text + " / " + also
		}
	}
	return text
}

// long is a sentence: one column, or two side by side.
func (s speech) long(say func(wording.Reader) string) []string {
	texts := []string{say(s.first)}
	if s.second != nil {
		texts = append(texts, say(*s.second))
	}
	return texts
}

// value is what stands under a key; numbers and moments are said once.
func (s speech) value(key string, v any) string {
	switch v.(type) {
	case nil, string, wording.Text:
		return s.short(func(r wording.Reader) string { return Spoken(key, v, r) })
	}
	return Spoken(key, v, s.first)
}

// words are a table's heads and cells.
func (s speech) words(t Table) (heads []string, rows [][]string) {
	heads, rows = t.Words(s.first)
	if s.second == nil {
		return heads, rows
	}
	for i, key := range t.Columns {
		heads[i] = s.short(func(r wording.Reader) string { return Label(key, r) })
	}
	for n, row := range t.Rows {
		for i, v := range row {
			if rows[n][i] != "" {
				rows[n][i] = s.value(t.Columns[i], v)
			}
		}
	}
	return heads, rows
}
