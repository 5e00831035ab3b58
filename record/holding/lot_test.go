package holding

import (
	"context"
	"testing"

	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
	ws "aerosteep/worksheet"
)

// A lot carries its facts once: what was said of it is what check reads of its
// batches, a blend takes the strictest, and a later word counts over an earlier.
func TestALotHandsItsFactsToItsBatches(t *testing.T) {
	h := open(t, t.TempDir(), 1)
	log := func(word string, given ws.Values) {
		t.Helper()
		form, _ := FormOf(word)
		e, err := h.Compose(form, given, Made{At: noon, By: "M.R."})
		if err != nil {
			t.Fatal(err)
		}
		if _, err := h.Store(context.Background(), e); err != nil {
			t.Fatal(err)
		}
	}
	log("start", ws.Values{"batch": {"L-1"}, "vessel": {"V"}, "recipe": {"unfed"}, "volume": {"20 L"}})
	log("lot", ws.Values{"lot": {"heap 3"}, "material": {"compost"}, "animal-origin": {"yes"}, "treatment": {"validated"}, "process-record": {"yes"}})
	log("stock", ws.Values{"ingredient": {"compost"}, "used": {"1 kg"}, "batch": {"L-1"}, "lot": {"heap 3"}})
	facts := func() jobfile.Facts {
		t.Helper()
		file, err := h.File(jobfile.FactsOnly)
		if err != nil {
			t.Fatal(err)
		}
		b, known := file.Batch("L-1")
		if !known {
			t.Fatal("the batch is not known")
		}
		return b.Facts
	}
	if f := facts(); f["treatment"] != "validated" || f["process_record"] != "yes" || f["human_waste"] != "" {
		t.Fatalf("%v", f)
	}
	log("lot", ws.Values{"lot": {"bought"}, "material": {"compost"}, "treatment": {"none"}})
	log("stock", ws.Values{"ingredient": {"compost"}, "used": {"1 kg"}, "batch": {"L-1"}, "lot": {"bought"}})
	if f := facts(); f["treatment"] != "none" || f["animal_origin"] != "yes" || f["process_record"] != "" {
		t.Errorf("a blend with an unproven lot: %v", f)
	}
	log("lot", ws.Values{"lot": {"bought"}, "treatment": {"hot"}})
	if f := facts(); f["treatment"] != "hot" {
		t.Errorf("a later word: %v", f)
	}
	if batches := h.BatchesOfLot("heap 3"); len(batches) != 1 || batches[0] != "L-1" {
		t.Errorf("%v", batches)
	}
	if lots := h.Lots(); len(lots) != 2 || lots[0].Name != "heap 3" || lots[0].Facts[hygiene.Treatment.String()] != "validated" {
		t.Errorf("%+v", lots)
	}
}

func TestALotThatSaysNothingIsRefused(t *testing.T) {
	h := open(t, t.TempDir(), 1)
	form, _ := FormOf("lot")
	for name, given := range map[string]ws.Values{
		"no name":       {"treatment": {"hot"}},
		"nothing said":  {"lot": {"heap 3"}},
		"a wrong value": {"lot": {"heap 3"}, "treatment": {"boiled"}},
	} {
		if _, err := h.Compose(form, given, Made{At: noon}); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
}
