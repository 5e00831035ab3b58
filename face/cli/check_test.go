package cli_test

import (
	"reflect"
	"testing"
)

// check answers the same of a file and of the holding it was loaded into: the
// holding's own path needs no FILE.
func TestCheckReadsFileAndHolding(t *testing.T) {
	folder := t.TempDir()
	good(t, folder, "load", ternHollow)
	ofFile, ofHolding := object(t, folder, "check", ternHollow), object(t, folder, "check")
	if !reflect.DeepEqual(ofFile, ofHolding) {
		t.Errorf("the file is told %v, the holding %v", ofFile, ofHolding)
	}
	beds, _ := ofHolding["beds"].([]any)
	if len(beds) != 8 {
		t.Errorf("%d pairs of 4 beds and 2 batches", len(beds))
	}
	one := object(t, folder, "check", "--bed", "Strawberries", "--batch", "D-114")["beds"].([]any)
	if len(one) != 1 || one[0].(map[string]any)["bed"] != "Strawberries" {
		t.Errorf("one pair is %v", one)
	}
}

func TestCheckRefuses(t *testing.T) {
	folder := t.TempDir()
	if _, errs, status := in(t, folder, "check"); status != 2 || errs == "" {
		t.Errorf("an empty holding: status %d, %q", status, errs)
	}
	good(t, folder, "load", ternHollow)
	for _, args := range [][]string{{"--bed", "Strawberry"}, {"--batch", "D-115"}} {
		if _, errs, status := in(t, folder, append([]string{"check"}, args...)...); status != 2 || errs == "" {
			t.Errorf("%v: status %d, %q", args, status, errs)
		}
	}
}
