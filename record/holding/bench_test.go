package holding

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"testing"
	"time"

	"aerosteep/record/intake"
	"aerosteep/record/journal"
)

// seasons fills a journal with batches, each with its start, its end and a
// series of readings, and answers the folder.
func seasons(b *testing.B, batches, readings int) string {
	b.Helper()
	folder := b.TempDir()
	h := open(b, folder, 1)
	var entries []journal.Entry
	for i := range batches {
		at := noon.Add(-time.Duration(batches-i) * 20 * time.Hour)
		name := fmt.Sprintf("batch:E-%d", i)
		for kind, body := range map[string]any{
			journal.Start:  map[string]any{"vessel": "Drum", "recipe": "Leafy", "volume_l": 150, "temp_c": 17.5},
			journal.Series: map[string]any{"rows": rows(at, readings)},
			journal.End:    map[string]any{"outcome": "used"},
		} {
			e, err := h.entry(kind, name, body, Made{At: at})
			if err != nil {
				b.Fatal(err)
			}
			entries = append(entries, e)
		}
		if len(entries) >= 300 || i == batches-1 {
			if _, err := h.Store(context.Background(), entries...); err != nil {
				b.Fatal(err)
			}
			entries = nil
		}
	}
	h.Close()
	return folder
}

func rows(from time.Time, n int) []map[string]any {
	list := make([]map[string]any, n)
	for i := range list {
		list[i] = map[string]any{"at": from.Add(time.Duration(i) * time.Minute).Format(time.RFC3339), "do_mg_per_l": 7 + float64(i%20)/10, "temp_c": 18.5}
	}
	return list
}

// Opening a holding of five years: 2,000 batches and 1,000,000 readings.
func BenchmarkOpenFiveYears(b *testing.B) {
	folder := seasons(b, 2000, 500)
	for b.Loop() {
		h := open(b, folder, 2)
		if len(h.Batches()) != 2000 {
			b.Fatal("not all batches are there")
		}
		h.Close()
	}
}

// The log of one batch out of them, as a forecast reads it.
func BenchmarkBrewLogOutOfFiveYears(b *testing.B) {
	h := open(b, seasons(b, 2000, 500), 2)
	for b.Loop() {
		log, err := h.BrewLog(context.Background(), "E-1000", noon.Add(-40000*time.Hour))
		if err != nil || len(log.Readings) != 500 {
			b.Fatal(len(log.Readings), err)
		}
	}
}

// Importing 1,000,000 readings as a logger's series of 10,000.
func BenchmarkImportMillionReadings(b *testing.B) {
	var text bytes.Buffer
	maker := journal.NewMaker(steady(3).Now, steady(3).Random)
	for i := range 100 {
		id, err := maker.New()
		if err != nil {
			b.Fatal(err)
		}
		at := noon.Add(time.Duration(i) * 10_000 * time.Minute)
		body, err := json.Marshal(map[string]any{"rows": rows(at, 10_000)})
		if err != nil {
			b.Fatal(err)
		}
		line, err := json.Marshal(journal.Entry{ID: id, Kind: journal.Series, At: at.Format(time.RFC3339), Subject: "batch:E-1", Body: body})
		if err != nil {
			b.Fatal(err)
		}
		// What its maker does not send: the place in a chain.
		line = bytes.Replace(line, []byte(`,"journal":"","seq":0,"before":""`), nil, 1)
		text.Write(append(line, '\n'))
	}
	for b.Loop() {
		h := open(b, b.TempDir(), 4)
		err := h.Journal().Import(context.Background(), bytes.NewReader(text.Bytes()), func(l journal.Line) {
			if l.Outcome != journal.Stored {
				b.Fatal(l.Why)
			}
		})
		if err != nil {
			b.Fatal(err)
		}
		h.Close()
	}
}

// Taking in a logger's file of 1,000,000 rows.
func BenchmarkTakeInMillionRows(b *testing.B) {
	var text bytes.Buffer
	text.WriteString("Date Time,DO mg/L,Temp °C\n")
	for i := range 1_000_000 {
		fmt.Fprintf(&text, "%s,%.2f,%.1f\n", noon.Add(time.Duration(i)*30*time.Second).UTC().Format(time.DateTime), 7+float64(i%100)/100, 18+float64(i%50)/10)
	}
	header, err := intake.Header(text.Bytes())
	if err != nil {
		b.Fatal(err)
	}
	b.ResetTimer()
	for range b.N {
		h := open(b, b.TempDir(), 4)
		batch, err := h.entry(journal.Start, "batch:E-1", map[string]any{"vessel": "V"}, Made{At: noon})
		if err != nil {
			b.Fatal(err)
		}
		if _, err := h.Store(context.Background(), batch); err != nil {
			b.Fatal(err)
		}
		done, err := h.TakeIn(context.Background(), "E-1", text.Bytes(), intake.Guess(header), Made{At: noon})
		if err != nil || done.New != 1_000_000 {
			b.Fatal(err)
		}
		h.Close()
	}
}
