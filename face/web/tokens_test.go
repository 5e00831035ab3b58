package web_test

import (
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// Contrast by the WCAG 2 formula (relative luminance; W3C, Web Content
// Accessibility Guidelines 2.2, 2023): text tones 7:1 on every fill, mark
// tones 3:1.
func TestTokensHoldTheirContrast(t *testing.T) {
	css, err := os.ReadFile("assets/css/1-tokens.css")
	if err != nil {
		t.Fatal(err)
	}
	looks := regexp.MustCompile(`(?s)(:root \{|\[data-look="\w+"\] \{|:root:not\(\[data-look\]\) \{)(.*?)\n\s*\}`).FindAllStringSubmatch(string(css), -1)
	checked := 0
	for _, look := range looks {
		tokens := map[string]string{}
		for _, m := range regexp.MustCompile(`--(\w+): (#[0-9A-F]{6})`).FindAllStringSubmatch(look[2], -1) {
			tokens[m[1]] = m[2]
		}
		for _, fill := range []string{"paper", "sheet", "pool", "loam", "blush"} {
			for _, text := range []string{"ink", "soft", "water", "soil", "stop"} {
				checked += floor(t, look[1], tokens, text, fill, 7)
			}
			for _, mark := range []string{"edge", "watermark", "soilmark", "stopmark"} {
				checked += floor(t, look[1], tokens, mark, fill, 3)
			}
		}
		for _, solid := range []string{"ink", "water", "stop"} {
			checked += floor(t, look[1], tokens, "onink", solid, 7)
		}
	}
	if checked != 4*48 {
		t.Errorf("checked %d pairs, want %d: a look or a token is missing", checked, 4*48)
	}
}

func floor(t *testing.T, look string, tokens map[string]string, front, back string, least float64) int {
	t.Helper()
	a, b := tokens[front], tokens[back]
	if a == "" || b == "" {
		return 0
	}
	if c := contrast(a, b); c < least-0.05 {
		t.Errorf("%s %s on %s is %.2f:1, least %.0f:1", strings.TrimSpace(look), front, back, c, least)
	}
	return 1
}

func contrast(a, b string) float64 {
	la, lb := luminance(a), luminance(b)
	return (math.Max(la, lb) + 0.05) / (math.Min(la, lb) + 0.05)
}

func luminance(hex string) float64 {
	part := func(i int) float64 {
		n, _ := strconv.ParseUint(hex[i:i+2], 16, 8)
		c := float64(n) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*part(1) + 0.7152*part(3) + 0.0722*part(5)
}
