package web

import (
	"strings"
	"testing"
)

// Whatever is typed, a file comes out that has a head and no more lines than
// were typed; a file stays as it is.
func FuzzPumpOffFile(f *testing.F) {
	for _, seed := range []string{"0 8,0\n30 7,8", "0,8.0\n15,7.9", "0;8\t\n;;", "seconds,air,do_mg_per_l\n0,0,8", "# note\n0 8", ""} {
		f.Add(seed, "60")
	}
	f.Fuzz(func(t *testing.T, typed, on string) {
		file := pumpOffFile(typed, on)
		switch {
		case strings.TrimSpace(typed) == "":
			if file != "" {
				t.Errorf("nothing typed gives %q", file)
			}
		case !hasHead(typed) && !strings.HasPrefix(file, pumpOffHead):
			t.Errorf("%q gives %q, without a head", typed, file)
		case strings.Count(file, "\n") > strings.Count(typed, "\n")+1:
			t.Errorf("%q gives more lines: %q", typed, file)
		}
	})
}

func TestTheAirComesBackAtItsSecond(t *testing.T) {
	if got, want := pumpOffFile("0 8\n30 7,5\n60 7,7", "60"), "seconds;air;do_mg_per_l\n0;0;8\n30;0;7,5\n60;1;7,7"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
