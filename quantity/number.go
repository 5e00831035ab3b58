package quantity

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"aerosteep/fault"
	"aerosteep/wording"
)

// vulgar are the fractions that have a letter of their own.
var vulgar = map[rune]string{
	'½': "1/2", '⅓': "1/3", '⅔': "2/3", '¼': "1/4", '¾': "3/4",
	'⅛': "1/8", '⅜': "3/8", '⅝': "5/8", '⅞': "7/8",
	'⅕': "1/5", '⅖': "2/5", '⅗': "3/5", '⅘': "4/5", '⅙': "1/6", '⅚': "5/6",
}

// tidy brings a text to plain letters: fractions, superscripts, the micro
// sign, the true minus and no-break spaces.
func tidy(text string) string {
	var b strings.Builder
	last := ' '
	for _, c := range text {
		switch {
		case vulgar[c] != "":
			if last >= '0' && last <= '9' {
				b.WriteByte(' ')
			}
			b.WriteString(vulgar[c])
		case c == '²':
			b.WriteByte('2')
		case c == '³':
			b.WriteByte('3')
		case c == 'µ' || c == 'μ':
			b.WriteByte('u')
		case c == '−' || c == '–':
			b.WriteByte('-')
		case c == '⁄':
			b.WriteByte('/')
		case c == '\u00a0' || c == '\u202f' || c == '\t':
			b.WriteByte(' ')
		case c == 'º':
			b.WriteRune('°')
		default:
			b.WriteRune(c)
		}
		last = c
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

var (
	mixedNumber   = regexp.MustCompile(`^([+-]?)(\d+) (\d+)/(\d+)(?:[^\d/]|$)`)
	fractionOnly  = regexp.MustCompile(`^([+-]?)(\d+)/(\d+)(?:[^\d/]|$)`)
	decimalNumber = regexp.MustCompile(`^[+-]?(\d+([.,]\d*)?|[.,]\d+)([eE][+-]?\d+)?`)
	thousands     = regexp.MustCompile(`^[+-]?[1-9]\d{0,2}(,\d{3})+$`)
	notFinite     = regexp.MustCompile(`(?i)^[+-]?(nan|inf(inity)?)\b`)
)

// Nothing that is measured lies outside these; a number that does is a slip,
// and products of such numbers would overflow.
const (
	largestNumber  = 1e30
	smallestNumber = 1e-30
)

// leadingNumber reads the number at the start of a tidied text and returns
// what follows it.
func leadingNumber(text string) (value float64, rest string, err *fault.Fault) {
	value, rest, err = anyNumber(text)
	size := math.Abs(value)
	switch {
	case err != nil:
		return 0, "", err
	case size > largestNumber:
		return 0, "", fault.New("", text, wording.Say("quantity.too-large"), wording.Text{}, wording.Text{})
	case size > 0 && size < smallestNumber:
		return 0, "", fault.New("", text, wording.Say("quantity.too-small"), wording.Text{}, wording.Text{})
	}
	return value, rest, nil
}

func anyNumber(text string) (value float64, rest string, err *fault.Fault) {
	if notFinite.MatchString(text) {
		return 0, "", fault.New("", text, wording.Say("quantity.not-finite"), wording.Text{}, wording.Text{})
	}
	if m := mixedNumber.FindStringSubmatch(text); m != nil {
		return fraction(text, m[0], m[1], m[2], m[3], m[4])
	}
	if m := fractionOnly.FindStringSubmatch(text); m != nil {
		return fraction(text, m[0], m[1], "0", m[2], m[3])
	}
	digits := decimalNumber.FindString(text)
	if digits == "" {
		return 0, "", fault.New("", text, wording.Say("quantity.no-number"), wording.Text{}, wording.Say("quantity.no-number.advice"))
	}
	if thousands.MatchString(digits) {
		return 0, "", doubtfulThousands(text, digits)
	}
	value, parseErr := strconv.ParseFloat(strings.Replace(digits, ",", ".", 1), 64)
	if parseErr != nil || math.IsInf(value, 0) {
		return 0, "", fault.New("", text, wording.Say("quantity.too-large"), wording.Text{}, wording.Text{})
	}
	return value, text[len(digits):], nil
}

func fraction(text, matched, sign, whole, above, below string) (float64, string, *fault.Fault) {
	w, _ := strconv.ParseFloat(whole, 64)
	a, _ := strconv.ParseFloat(above, 64)
	b, _ := strconv.ParseFloat(below, 64)
	if b == 0 {
		return 0, "", fault.New("", text, wording.Say("quantity.zero-below"), wording.Text{}, wording.Text{})
	}
	value := w + a/b
	if sign == "-" {
		value = -value
	}
	end := len(matched)
	if last := matched[end-1]; last < '0' || last > '9' {
		// The pattern looked one byte ahead; it may be the first byte of a
		// longer letter, which the rest must keep whole.
		end = strings.LastIndexAny(matched[:end], "0123456789") + 1
	}
	return value, text[end:], nil
}

// doubtfulThousands refuses 1,200 with both readings named.
func doubtfulThousands(text, digits string) *fault.Fault {
	return fault.New("", text,
		wording.Say("quantity.thousands", wording.Places{
			"given":     digits,
			"thousands": strings.ReplaceAll(digits, ",", ""),
			"decimal":   strings.Replace(digits, ",", ".", 1),
		}), wording.Text{}, wording.Say("quantity.thousands.advice"))
}

// Bare reads a number without a unit: "1.5", "1/2", "7,4".
func Bare(text string) (float64, error) {
	t := tidy(text)
	if t == "" {
		return 0, fault.New("", text, wording.Say("quantity.empty"), wording.Text{}, wording.Text{})
	}
	value, rest, err := leadingNumber(t)
	if err != nil {
		err.Given = text
		return 0, err
	}
	if rest = strings.TrimSpace(rest); rest != "" {
		return 0, fault.New("", text, wording.Say("quantity.unit-on-bare", wording.Places{"unit": rest}), wording.Text{}, wording.Say("quantity.unit-on-bare.advice"))
	}
	return value, nil
}
