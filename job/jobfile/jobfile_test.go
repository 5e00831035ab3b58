package jobfile_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	_ "time/tzdata"

	"aerosteep/fault"
	"aerosteep/job/jobfile"
	"aerosteep/quantity"
	"aerosteep/wording"
)

func read(t *testing.T, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func good(t *testing.T, text []byte, name string) *jobfile.File {
	t.Helper()
	file, problems := jobfile.Read(text, name, jobfile.Whole)
	if len(problems) > 0 {
		t.Fatalf("%s: %v", name, problems)
	}
	return file
}

// Job files as brewers wrote them down are taken without an edit.
func TestRealFilesAreTaken(t *testing.T) {
	names, _ := filepath.Glob("testdata/*.toml")
	if len(names) < 13 {
		t.Fatalf("only %d files", len(names))
	}
	for _, name := range names {
		text := read(t, filepath.Base(name))
		for form, variant := range map[string][]byte{
			"LF": text, "CRLF": bytes.ReplaceAll(text, []byte("\n"), []byte("\r\n")), "BOM": append([]byte("\ufeff"), text...),
		} {
			file := good(t, variant, name)
			if len(file.Vessels) != 1 || len(file.Sites) != 1 {
				t.Errorf("%s (%s): %d vessels, %d sites", name, form, len(file.Vessels), len(file.Sites))
			}
		}
	}
}

func TestWholeFormIsRead(t *testing.T) {
	file := good(t, read(t, "whole.toml"), "whole.toml")
	vessel, _ := file.Vessel("Drum")
	want := file.Wants[0]
	recipe, _ := file.Recipe("Leafy, bacterial")
	checks := map[string]bool{
		"zone":            file.Holding.Zone.String() == "America/Los_Angeles",
		"full":            vessel.Full == quantity.Litres(200),
		"turnaround":      vessel.Turnaround == quantity.Hours(3),
		"indoors":         vessel.Indoors != nil && *vessel.Indoors,
		"kLa20":           vessel.KLa20 != nil && vessel.KLa20.Estimate == quantity.PerHour(14),
		"area":            math.Abs(file.Beds[0].Area.SquareFeet()-1200) < 1e-9,
		"dilution":        want.Dilution == 8,
		"rate":            math.Abs(want.TeaRate.USGallonsPerAcre()-20) < 1e-9,
		"hour":            want.At.Equal(time.Date(2026, 5, 14, 14, 0, 0, 0, time.UTC)),
		"items":           len(recipe.Items) == 3 && recipe.Items[2].When.Finish,
		"hygiene":         file.Hygiene["treatment"] == "hot",
		"price":           file.Larder.All() != nil && file.Limits.Chance == 5,
		"loss":            file.Limits.Loss == quantity.Percent(5),
		"started":         file.Batches[0].StartedAt != nil,
		"work hours":      file.Sites[0].WorkHours.From == 390,
		"day off":         len(file.Sites[0].NoWork) == 1,
		"curve":           len(file.Pumps[0].Curve) == 3,
		"bed's batch":     file.Beds[0].Batches[0] == "D-114",
		"minutes":         file.Applicators[0].MinutesPerLoad == 25,
		"chlorine":        file.Water.FreeChlorine != nil && *file.Water.FreeChlorine == 0.8,
		"US units":        file.Holding.Reader.Units == wording.US,
		"built-in recipe": known(file, "bacterial"),
	}
	for what, right := range checks {
		if !right {
			t.Errorf("%s is not as the file says", what)
		}
	}
}

func known(f *jobfile.File, recipe string) bool { _, ok := f.Recipe(recipe); return ok }

// Defaults of the form: brew 85 % of full, least half of brew, water 15 °C.
func TestDefaults(t *testing.T) {
	file := good(t, []byte("[[vessel]]\nname = \"Pail\"\nfull = \"20 L\"\n"), "a.toml")
	v := file.Vessels[0]
	if v.Brew != 17 || v.Least != 8.5 || v.Turnaround != quantity.Hours(3) || v.Indoors != nil {
		t.Errorf("%+v", v)
	}
	if file.Water.Temperature != 15 || file.Water.TemperatureGiven || file.Limits.StrainMinutes != 30 || file.Limits.UseByDO != 2 {
		t.Errorf("%+v %+v", file.Water, file.Limits)
	}
}

const twelve = `form = 1
[holding]
name = "Twelve mistakes"
zone = "America/Los_Angeles"
langage = "en"
[[site]]
name = "Home"
latitude = 95
longitude = -123.05
altitude = 640
[[bed]]
name = "Kale"
site = "Hom"
area = "1200 gal"
stage = "vegetativ"
[[vessel]]
name = "Drum"
full = "200 L"
brew = "260 L"
pump = "Blower"
[[recipe]]
name = "R"
for_volume = "4 gal"
items = [
  { ingredient = "compst", amount = "2 qt" },
  { ingredient = "molasses", amount = 20 },
]
[[want]]
bed = "Kale"
method = "drip"
at = 2026-03-08T02:30:00
tea = "4 gal"
`

// Twelve different mistakes are told at once, each on its line with the
// nearest key or word.
func TestTwelveMistakesAtOnce(t *testing.T) {
	want := []struct {
		line         int
		key, nearest string
	}{
		{5, "holding.langage", "language"}, {8, "site.latitude", ""}, {10, "site.altitude", ""}, {13, "bed.site", "Home"},
		{14, "bed.area", ""}, {15, "bed.stage", "vegetative"}, {19, "vessel.brew", ""}, {20, "vessel.pump", ""},
		{25, "recipe.items.ingredient", "compost"}, {26, "recipe.items.amount", ""}, {30, "want.method", ""}, {31, "want.at", ""},
	}
	for _, variant := range []string{twelve, strings.ReplaceAll(twelve, "\n", "\r\n")} {
		_, problems := jobfile.Read([]byte(variant), "twelve.toml", jobfile.Whole)
		if len(problems) != len(want) {
			t.Fatalf("%d problems:\n%v", len(problems), problems)
		}
		for i, w := range want {
			p := problems[i]
			if p.Line != w.line || p.Field != w.key || p.Nearest != w.nearest {
				t.Errorf("problem %d: line %d %s nearest %q, want %+v", i+1, p.Line, p.Field, p.Nearest, w)
			}
			for _, language := range wording.Languages {
				r := p.For(wording.Reader{Language: language, Units: wording.US})
				if r.What == "" || r.Allowed == "" || strings.Contains(r.What+r.Allowed+r.Advice, "«jobfile.") {
					t.Errorf("%s in %s: %+v", w.key, language, r)
				}
			}
		}
	}
}

// A file that is not TOML has one problem, with its line.
func TestNotReadable(t *testing.T) {
	for text, line := range map[string]int{
		"form = 1\nname yes\n": 2,
		"[holding\n":           1,
		"a = [1,\n2\n":         0,
		"form = 1\n[holding]\nname = \"x\xff\"\n":       3,
		"x = " + strings.Repeat("[", 100000) + "\n":     1,
		"form = 1\n\nx = " + strings.Repeat("{a=", 9e3): 3,
	} {
		file, problems := jobfile.Read([]byte(text), "a.toml", jobfile.Whole)
		if file != nil || len(problems) != 1 || line > 0 && problems[0].Line != line {
			t.Errorf("%.20q: %v", text, problems)
		}
	}
	if _, problems := jobfile.Read([]byte("{\"form\": 1,\n \"bed\": [}"), "a.json", jobfile.Whole); len(problems) != 1 || problems[0].Line != 2 {
		t.Errorf("broken JSON: %v", problems)
	}
}

// A local hour that the clocks skip or repeat is refused, both readings named.
// US clocks changed on 8 March and change on 1 November 2026 (15 U.S.C. 260a).
func TestClockChange(t *testing.T) {
	zone, err := time.LoadLocation("America/Los_Angeles")
	if err != nil {
		t.Fatal(err)
	}
	for text, named := range map[string][]string{
		"2026-03-08 02:30": {"2026-03-08T01:30:00-08:00", "2026-03-08T03:30:00-07:00"},
		"2026-11-01 01:30": {"2026-11-01T01:30:00-07:00", "2026-11-01T01:30:00-08:00"},
	} {
		_, f := jobfile.Moment(text, zone)
		if f == nil {
			t.Fatalf("%s was taken", text)
		}
		for _, n := range named {
			if !strings.Contains(f.What.String(), n) {
				t.Errorf("%s: %q does not name %s", text, f.What.String(), n)
			}
		}
	}
	if got, f := jobfile.Moment("2026-11-01 03:00", zone); f != nil || got.Format(time.RFC3339) != "2026-11-01T03:00:00-08:00" {
		t.Errorf("%v %v", got, f)
	}
}

// problemsOf reads a text and lists the keys of its problems.
func problemsOf(text string, purpose jobfile.Purpose) string {
	_, problems := jobfile.Read([]byte(text), "a.toml", purpose)
	keys := make([]string, len(problems))
	for i, p := range problems {
		keys[i] = p.Field
	}
	return strings.Join(keys, " ")
}

func TestWhatBelongsTogether(t *testing.T) {
	const bed = "[[bed]]\nname = \"A\"\n"
	for text, keys := range map[string]string{
		bed + "area = \"1 m2\"\ntrees = 3\ndrip_radius = \"1 m\"": "bed.trees",
		bed + "rows = 3": "bed.row_length bed.row_width",
		bed + bed:        "bed.name",
		bed + "[[want]]\nbed = \"A\"\nmethod = \"drench\"":                                                                           "want.at want.tea_rate",
		bed + "[[want]]\nbed = \"A\"\nmethod = \"drench\"\nat = 2026-05-01T06:00:00Z\ntea_rate = \"1 L/m2\"":                         "bed.area",
		bed + "[[want]]\nbed = \"A\"\nmethod = \"drench\"\nat = 2026-05-01T06:00:00Z\nmix_rate = \"1 L/m2\"":                         "bed.area want.dilution",
		bed + "[[want]]\nbed = \"A\"\nmethod = \"drench\"\nfrom = 2026-05-01T06:00:00Z\nuntil = 2026-05-01T05:00:00Z\ntea = \"1 L\"": "want.until",
		bed + "[[want]]\nbed = \"A\"\nmethod = \"drench\"\nat = 2026-05-01T06:00:00\ntea = \"1 L\"":                                  "holding.zone",
		"[[vessel]]\nname = \"V\"":                                                            "vessel.full",
		"[[vessel]]\nname = \"V\"\nfull = \"200 L\"\nkla20_in = \"brew\"":                     "vessel.kla20",
		"[[vessel]]\nname = \"V\"\nshape = \"box\"\nlength = \"1 m\"":                         "vessel.width vessel.height",
		"[[recipe]]\nname = \"R\"\nitems = []":                                                "recipe.items",
		"[[recipe]]\nname = \"R\"\nitems = [{ ingredient = \"compost\", amount = \"2 qt\" }]": "recipe.for_volume",
		"[holding]\nname = \"x\"\n[holding]\nunits = \"us\"":                                  "holding",
		"[site]\nname = \"x\"":                                                                "site",
		"form = 2":                                                                            "form",
		"[[bed]]\nnmae = \"A\"":                                                               "bed.nmae",
		bed + "harvest = \"2026-02-30\"":                                                      "bed.harvest",
		bed + "applied = \"2026-05-10\"\nharvest = \"2026-05-01\"":                            "bed.harvest",
		bed + "batch = \"B-1\"":                                                               "bed.batch",
		"[[site]]\nname = \"a\"\nlatitude = 1\nlongitude = 1\n[[site]]\nname = \"b\"\nlatitude = 1\nlongitude = 1\n" + bed: "bed.site",
	} {
		if got := problemsOf(text, jobfile.Whole); got != keys {
			t.Errorf("%q\n  problems of %q, want %q", text, got, keys)
		}
	}
}

// For the hygiene decision the other tables may be there in part.
func TestFactsOnly(t *testing.T) {
	for _, text := range []string{
		"[[bed]]\nname = \"A\"\nsite = \"Home\"\n[[want]]\nbed = \"A\"\nmethod = \"drench\"\n",
		"[[bed]]\nname = \"A\"\norganic = true\nheld = \"5 h\"\nadditives = [\"molasses\", \"kelp meal\"]\n[[vessel]]\nname = \"V\"\n[[site]]\nname = \"x\"\n",
		"[[batch]]\nname = \"B\"\ntreatment = \"unknown\"\n",
	} {
		if got := problemsOf(text, jobfile.FactsOnly); got != "" {
			t.Errorf("%q: problems of %s", text, got)
		}
	}
	if got := problemsOf("[[bed]]\nname = \"A\"\ntreatment = \"warm\"\nbatch = \"none\"\n", jobfile.FactsOnly); got != "bed.treatment bed.batch" {
		t.Errorf("problems of %s", got)
	}
}

// The JSON form says the same as the TOML, and a file written anew reads back
// to the same JSON.
func TestFormsSayTheSame(t *testing.T) {
	file := good(t, read(t, "whole.toml"), "whole.toml")
	asJSON := file.JSON()
	if !json.Valid(asJSON) {
		t.Fatalf("not JSON: %s", asJSON)
	}
	again := good(t, asJSON, "whole.json")
	if !bytes.Equal(again.JSON(), asJSON) {
		t.Errorf("JSON changed:\n%s\n%s", asJSON, again.JSON())
	}
	text, problems := jobfile.Compose(file.Parts())
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if !bytes.Equal(good(t, text, "composed.toml").JSON(), asJSON) {
		t.Errorf("TOML changed:\n%s", text)
	}
}

// A JSON Patch (RFC 6902) changes what its path names, and nothing else.
func TestPatch(t *testing.T) {
	file := good(t, read(t, "whole.toml"), "whole.toml")
	changed, problems := file.With([]jobfile.Change{
		{Op: "replace", Path: "/recipe/0/items/1/amount", Value: "12 mL"},
		{Op: "add", Path: "/recipe/-", Value: map[string]any{"name": "bacterial", "for_volume": "100 L", "items": []any{map[string]any{"ingredient": "compost", "amount": "1 kg"}}}},
	})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if r, _ := changed.Recipe("Leafy, bacterial"); r.Items[1].Amount.Volume != quantity.Millilitres(12) {
		t.Errorf("%+v", r.Items[1])
	}
	if r, _ := changed.Recipe("bacterial"); len(r.Items) != 1 {
		t.Errorf("the file's recipe does not hide the built-in one: %+v", r)
	}
	if r, _ := file.Recipe("Leafy, bacterial"); math.Abs(r.Items[1].Amount.Volume.Millilitres()-20) > 1e-9 {
		t.Error("the first file was changed too")
	}
	if _, problems := file.With([]jobfile.Change{{Op: "replace", Path: "/recipe/9/hours", Value: 3}}); len(problems) == 0 {
		t.Error("a path that leads nowhere was taken")
	}
}

// Every key has its meaning and what it takes in both languages, and the
// schema names them all.
func TestSchemaNamesEveryKey(t *testing.T) {
	text, err := json.Marshal(jobfile.Schema(wording.Reader{Language: wording.English, Units: wording.US}))
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range jobfile.Keys() {
		if !strings.Contains(string(text), fmt.Sprintf("%q:", k.Name)) {
			t.Errorf("the schema lacks %s.%s", k.Table, k.Name)
		}
		for _, language := range wording.Languages {
			r := wording.Reader{Language: language}
			if s := k.Meaning.For(r) + k.Takes.For(r); strings.Contains(s, "«") {
				t.Errorf("%s.%s in %s: %s", k.Table, k.Name, language, s)
			}
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add("form = 1\n[holding]\nname = \"x\"\n", "a.toml")
	f.Add("{\"bed\":[{\"name\":\"A\"}]}", "a.json")
	f.Add("[[want]]\nat = 2026-03-08T02:30:00\nitems = [{a=1}]\n", "a.toml")
	f.Fuzz(func(t *testing.T, text, name string) {
		for _, purpose := range []jobfile.Purpose{jobfile.Whole, jobfile.FactsOnly} {
			file, problems := jobfile.Read([]byte(text), name, purpose)
			if (file == nil) == (len(problems) == 0) {
				t.Fatalf("neither a file nor a problem, or both: %v", problems)
			}
			for _, p := range fault.List(problems) {
				if p.Line < 1 && p.Field != "file" {
					t.Errorf("%s has no line", p.Field)
				}
			}
		}
	})
}

// A name that stands twice is one to choose from once.
func TestNameTwiceIsOfferedOnce(t *testing.T) {
	_, problems := jobfile.Read([]byte("[[site]]\nname = \"S\"\nlatitude = 44\nlongitude = 1\n[[bed]]\nname = \"K\"\n[[bed]]\nname = \"K\"\n[[want]]\nbed = \"Q\"\nmethod = \"drench\"\nat = 2026-05-14T07:00:00Z\ntea = \"4 L\"\n"), "a.toml", jobfile.Whole)
	offered := false
	for _, p := range problems {
		allowed := p.Allowed.For(wording.Reader{})
		offered = offered || p.Field == "want.bed" && strings.HasSuffix(allowed, ": K")
	}
	if !offered {
		t.Errorf("the beds to choose from are not named once: %+v", problems)
	}
}
