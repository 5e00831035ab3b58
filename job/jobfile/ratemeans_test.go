package jobfile_test

import (
	"strings"
	"testing"

	"aerosteep/job/jobfile"
)

// 20 gal/ac of tea at 1:4 is 100 gal/ac of mix: which of the two a plain rate is
// differs by five times, so that a site says it once.
func TestARateIsWhatTheSiteMeans(t *testing.T) {
	text := func(means, want string) []byte {
		return []byte("[holding]\nzone = \"UTC\"\n[[site]]\nname = \"S\"\nlatitude = 44\nlongitude = 1\naltitude = \"0 m\"\n" + means +
			"\n[[bed]]\nname = \"B\"\narea = \"1 ac\"\n[[want]]\nbed = \"B\"\nmethod = \"drench\"\nat = 2026-05-14T07:00:00Z\n" + want + "\n")
	}
	tea := func(means, want string) (float64, string) {
		file, problems := jobfile.Read(text(means, want), "s.toml", jobfile.Whole)
		for _, p := range problems {
			return 0, p.Field + ": " + p.Error()
		}
		volume, _ := file.Wants[0].TeaOn(file.Beds[0])
		return volume.USGallons(), ""
	}
	for _, c := range []struct {
		means, want string
		gallons     float64
	}{
		{`rate_means = "tea"`, "rate = \"20 gal/ac\"\ndilution = \"1:4\"", 20},
		{`rate_means = "mix"`, "rate = \"100 gal/ac\"\ndilution = \"1:4\"", 20},
		{``, "tea_rate = \"20 gal/ac\"\ndilution = \"1:4\"", 20},
	} {
		if got, problem := tea(c.means, c.want); problem != "" || got < c.gallons*0.999999 || got > c.gallons*1.000001 {
			t.Errorf("%s %s: %v gal, %s", c.means, c.want, got, problem)
		}
	}
	for _, c := range [][3]string{
		{``, "rate = \"20 gal/ac\"", "rate_means"},
		{`rate_means = "mix"`, `rate = "20 gal/ac"`, "dilution"},
		{`rate_means = "tea"`, "rate = \"20 gal/ac\"\ntea_rate = \"20 gal/ac\"", "rate"},
		{`rate_means = "water"`, "tea_rate = \"20 gal/ac\"", "tea"},
	} {
		if _, problem := tea(c[0], c[1]); !strings.Contains(problem, c[2]) {
			t.Errorf("%s %s answers %q", c[0], c[1], problem)
		}
	}
}
