package web_test

import (
	"net/http"
	"strings"
	"testing"

	"aerosteep/record/journal"
)

// A logger's file whose units nobody said asks for them, keeps the file at hand,
// and remembers the answer under the logger's name: the next file goes in at
// once, and what is there already is passed over.
func TestALoggersFileIsTakenIn(t *testing.T) {
	server, h := groundServer(t)
	address := server.URL + "/batches/D-114/logger"
	first := []byte("Probe 3\nMoment,Oxygen,Temp\n2026-05-12 14:00:00,7.8,66\n2026-05-12 14:10:00,7.7,66\n")
	if status, body := sendPaper(t, address, "a.csv", first, map[string]string{"logger": "Probe"}); status != http.StatusUnprocessableEntity || !strings.Contains(body, "no line names the columns") {
		t.Fatalf("a clock that no word names: %d", status)
	}
	first = []byte(strings.Replace(string(first), "Moment", "Date Time", 1))
	status, body := sendPaper(t, address, "a.csv", first, map[string]string{"logger": "Probe"})
	if status != http.StatusUnprocessableEntity {
		t.Fatalf("answers %d", status)
	}
	see(t, body, "the unit of the column Oxygen is not said", "What each column is", "2026-05-12 14:10:00,7.7,66", `value="do mg/L"`)
	fields := "logger=Probe&column=Date+Time&is=at&column=Oxygen&is=do+mg%2FL&column=Temp&is=temp+%C2%B0F&order=&by=R.K.&text=" + strings.NewReplacer("\n", "%0A", ",", "%2C", " ", "+", ":", "%3A").Replace(string(first))
	response, err := http.Post(address, "application/x-www-form-urlencoded", strings.NewReader(fields))
	if err != nil {
		t.Fatal(err)
	}
	response.Body.Close()
	if response.StatusCode != http.StatusOK {
		t.Fatalf("mapped, it answers %d", response.StatusCode)
	}
	again := append(first, "2026-05-12 14:20:00,7.6,66\n2026-05-12 14:20:00,9,66\nnever,1,1\n"...)
	status, body = sendPaper(t, address, "b.csv", again, map[string]string{})
	if status != http.StatusOK {
		t.Fatalf("a second file answers %d", status)
	}
	see(t, body, "1 of 5 rows stored as readings, 2 were there already", "1 row is of a moment that was there already", "Line 7 was passed over")
	series, err := h.Journal().List(t.Context(), journal.Wanted{Subject: "batch:D-114", Kinds: []string{journal.Series}})
	if err != nil || len(series) != 2 || !strings.Contains(string(series[0].Body), `"temp_c":18.8889`) || series[0].By != "R.K." {
		t.Errorf("%d series, %v: %s", len(series), err, series[0].Body)
	}
	if status, _ := fetchStatus(t, server.URL+"/batches/Nobody/logger"); status != http.StatusNotFound {
		t.Errorf("a batch that nobody knows answers %d", status)
	}
}

func fetchStatus(t *testing.T, address string) (int, error) {
	t.Helper()
	response, err := http.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	defer response.Body.Close()
	return response.StatusCode, nil
}
