package web

import "aerosteep/wording"

func verbatim(err error) wording.Text { return wording.Verbatim(err.Error()) }

// choiceWord is a value of a fixed list in the visitor's language where the
// list has words.
func choiceWord(p *page, flag, value string) string {
	for _, key := range []string{"value." + flag + "." + value, "value." + value} {
		if wording.Known(key) {
			return p.Say(key)
		}
	}
	return value
}
