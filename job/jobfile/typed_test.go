package jobfile_test

import (
	"encoding/json"
	"os"
	"testing"

	"aerosteep/job/jobfile"
)

// Every table of Tern Hollow, shown in boxes and typed back, says the same.
func TestTypedBackItSaysTheSame(t *testing.T) {
	text, err := os.ReadFile("../../examples/ternhollow/week.toml")
	if err != nil {
		t.Fatal(err)
	}
	file, problems := jobfile.Read(text, "week.toml", jobfile.Whole)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	var parts []jobfile.Part
	for _, part := range file.Parts() {
		part.Body = jobfile.FromTyped(part.Table, jobfile.Typed(part.Body), nil)
		parts = append(parts, part)
	}
	again, problems := jobfile.Compose(parts)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	back, problems := jobfile.Read(again, "typed.toml", jobfile.Whole)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	var want, got any
	if json.Unmarshal(file.JSON(), &want) != nil || json.Unmarshal(back.JSON(), &got) != nil {
		t.Fatal("no JSON")
	}
	for i, part := range back.Parts() {
		if was := file.Parts()[i]; string(part.Body) != string(was.Body) {
			t.Errorf("%s %s: %s, was %s", part.Table, part.Name, part.Body, was.Body)
		}
	}
}

func TestWhatIsNoNumberIsRefused(t *testing.T) {
	body := jobfile.FromTyped("site", map[string]string{"name": "A", "latitude": "north", "longitude": "-123"}, nil)
	text, _ := jobfile.Compose([]jobfile.Part{{Table: "site", Name: "A", Body: body}})
	if _, problems := jobfile.Read(text, "typed.toml", jobfile.Whole); len(problems) == 0 {
		t.Error("a latitude of north is taken")
	}
}

// A box that nobody touched keeps what it cannot show; one that was typed in, or
// emptied, says what was typed.
func TestAnEditKeepsWhatABoxCannotShow(t *testing.T) {
	const before = `{"name":"A","hours":24,"note":"old","items":[{"ingredient":"compost","amount":"2 qt","bulk_density":"0.6 kg/L"}]}`
	typed := jobfile.Typed([]byte(before))
	typed["hours"], typed["note"] = "30", ""
	const want = `{"hours":30,"items":[{"ingredient":"compost","amount":"2 qt","bulk_density":"0.6 kg/L"}],"name":"A"}`
	if got := string(jobfile.FromTyped("recipe", typed, []byte(before))); got != want {
		t.Errorf("%s, not %s", got, want)
	}
}
