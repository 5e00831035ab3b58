package web_test

import (
	"bytes"
	"io"
	"mime/multipart"
	"net/http"
	"testing"

	"aerosteep/record/journal"
)

// sendPaper posts a paper as a browser's form does.
func sendPaper(t *testing.T, address, file string, content []byte, fields map[string]string) (int, string) {
	t.Helper()
	var body bytes.Buffer
	form := multipart.NewWriter(&body)
	for name, value := range fields {
		_ = form.WriteField(name, value)
	}
	if file != "" {
		part, err := form.CreateFormFile("file", file)
		if err != nil {
			t.Fatal(err)
		}
		_, _ = part.Write(content)
	}
	form.Close()
	response, err := http.Post(address, form.FormDataContentType(), &body)
	if err != nil {
		t.Fatal(err)
	}
	defer response.Body.Close()
	text, _ := io.ReadAll(response.Body)
	return response.StatusCode, string(text)
}

// A paper of somebody else comes back as it was, stands on the trace of its lot,
// and never runs as a page; what is lacking is said.
func TestAPaperOfSomebodyElseIsKept(t *testing.T) {
	server, h := groundServer(t)
	address := server.URL + "/records/attach"
	paper := []byte("<script>alert(1)</script>")
	status, body := sendPaper(t, address, `C:\papers\heap 3.html`, paper, map[string]string{"what": "heating", "lot": "W-7", "by": "R.K."})
	if status != http.StatusOK {
		t.Fatalf("answers %d", status)
	}
	see(t, body, "Kept.", "heap 3.html", "compost heating record")
	papers, err := h.Attachments(t.Context())
	if err != nil || len(papers) != 1 || papers[0].Hash != journal.Hash(paper) {
		t.Fatalf("%+v %v", papers, err)
	}
	response, err := http.Get(server.URL + "/records/attached/" + papers[0].Hash)
	if err != nil {
		t.Fatal(err)
	}
	defer response.Body.Close()
	got, _ := io.ReadAll(response.Body)
	if !bytes.Equal(got, paper) || response.Header.Get("Content-Type") != "application/octet-stream" || response.Header.Get("X-Content-Type-Options") != "nosniff" {
		t.Errorf("comes back as %q, %v", got, response.Header)
	}
	for _, wrong := range []struct {
		file   string
		fields map[string]string
		says   string
	}{
		{"", map[string]string{"what": "heating", "lot": "W-7"}, "Choose a file first"},
		{"a.pdf", map[string]string{"lot": "W-7"}, "what"},
		{"a.pdf", map[string]string{"what": "heating"}, "what the paper is about"},
		{"a.pdf", map[string]string{"what": "heating", "batch": "Nobody"}, "Nobody"},
	} {
		status, body := sendPaper(t, address, wrong.file, paper, wrong.fields)
		if status != http.StatusUnprocessableEntity {
			t.Errorf("%+v answers %d", wrong, status)
		}
		see(t, body, wrong.says)
	}
	if status, _ := sendPaper(t, address, "a.pdf", make([]byte, journal.LongestContent+1), map[string]string{"what": "label", "lot": "W-7"}); status != http.StatusUnprocessableEntity {
		t.Errorf("too long a paper answers %d", status)
	}
}
