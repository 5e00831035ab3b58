package wording

import (
	"fmt"
	"time"
)

// Day is a calendar day as people say it: "29 August 2026".
type Day time.Time

var months = map[Language][12]string{
	English: {"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"},
	Spanish: {"enero", "febrero", "marzo", "abril", "mayo", "junio", "julio", "agosto", "septiembre", "octubre", "noviembre", "diciembre"},
}

// Speak writes day, month and year; no order of figures to mistake.
func (d Day) Speak(r Reader) string {
	t := time.Time(d)
	if r.Language == Spanish {
		return fmt.Sprintf("%d de %s de %d", t.Day(), months[Spanish][t.Month()-1], t.Year())
	}
	return fmt.Sprintf("%d %s %d", t.Day(), months[English][t.Month()-1], t.Year())
}
