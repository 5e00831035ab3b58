package journal

import (
	"bytes"
	"encoding/json"
	"strconv"
)

// plainSeries tells quickly that a series is good: rows as loggers write them,
// without white space, each a time and known numbers within their limits. One
// that is not plain is looked at row by row, to accept it or to say what is wrong
// where. It is not slower for being strict: a million rows come through here.
func plainSeries(body json.RawMessage) bool {
	s := scanner{rest: body}
	if !s.take(`{"rows":[`) {
		return false
	}
	for n := 1; ; n++ {
		if n > longestSeries || !s.row() {
			return false
		}
		if s.take(`]}`) {
			return len(s.rest) == 0
		}
		if !s.take(`,`) {
			return false
		}
	}
}

// scanner walks through a plain series.
type scanner struct{ rest []byte }

func (s *scanner) take(text string) bool {
	if len(s.rest) < len(text) || string(s.rest[:len(text)]) != text {
		return false
	}
	s.rest = s.rest[len(text):]
	return true
}

// row is {"at":"…","do_mg_per_l":7.4,…}: the time first, each key once.
func (s *scanner) row() bool {
	if !s.take(`{"at":"`) {
		return false
	}
	end := bytes.IndexByte(s.rest, '"')
	if end < 0 {
		return false
	}
	if _, ok := instant(string(s.rest[:end])); !ok {
		return false
	}
	s.rest = s.rest[end+1:]
	before := "at"
	for !s.take(`}`) {
		key, ok := s.value()
		if !ok || key <= before {
			return false
		}
		before = key
	}
	return true
}

// value is ,"key":number with a number that the journal keeps.
func (s *scanner) value() (string, bool) {
	if !s.take(`,"`) {
		return "", false
	}
	end := bytes.IndexByte(s.rest, '"')
	if end < 0 {
		return "", false
	}
	key := string(s.rest[:end])
	b, known := measured[key]
	s.rest = s.rest[end+1:]
	if !known || !s.take(`:`) {
		return "", false
	}
	end = 0
	for end < len(s.rest) && (s.rest[end] >= '0' && s.rest[end] <= '9' || s.rest[end] == '.' || s.rest[end] == '-') {
		end++
	}
	number := s.rest[:end]
	s.rest = s.rest[end:]
	v, err := strconv.ParseFloat(string(number), 64)
	return key, err == nil && plainNumber(number) && v >= b.low && v <= b.high
}

// plainNumber tells a number that JSON takes: no leading zero, no lone point.
func plainNumber(text []byte) bool {
	digits := bytes.TrimPrefix(text, []byte("-"))
	whole, _, point := bytes.Cut(digits, []byte("."))
	return len(whole) > 0 && (len(whole) == 1 || whole[0] != '0') && !(point && digits[len(digits)-1] == '.')
}
