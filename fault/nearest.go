package fault

import "strings"

// Nearest finds the known word that a misspelt one is closest to: at most two
// slips (or a third of the word) apart. It answers "" where nothing is near.
func Nearest(word string, known []string) string {
	best, bestDistance := "", max(2, len(word)/3)+1
	for _, k := range known {
		if d := distance(strings.ToLower(word), strings.ToLower(k)); d < bestDistance {
			best, bestDistance = k, d
		}
	}
	return best
}

// distance counts the insertions, deletions, replacements and swaps of
// neighbours that turn one word into another (optimal string alignment).
func distance(a, b string) int {
	s, t := []rune(a), []rune(b)
	before, row := make([]int, len(t)+1), make([]int, len(t)+1)
	for j := range row {
		row[j] = j
	}
	var twoBefore []int
	for i := 1; i <= len(s); i++ {
		twoBefore, before, row = before, row, make([]int, len(t)+1)
		row[0] = i
		for j := 1; j <= len(t); j++ {
			cost := 1
			if s[i-1] == t[j-1] {
				cost = 0
			}
			row[j] = min(before[j]+1, row[j-1]+1, before[j-1]+cost)
			if i > 1 && j > 1 && s[i-1] == t[j-2] && s[i-2] == t[j-1] {
				row[j] = min(row[j], twoBefore[j-2]+1)
			}
		}
	}
	return row[len(t)]
}
