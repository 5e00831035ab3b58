package web_test

import (
	"io"
	"net/http"
	"net/http/httptest"
	"regexp"
	"strings"
	"testing"

	"aerosteep/examples"
)

var hrefs = regexp.MustCompile(`(?:href|action)="(/[^"#]*)"`)

// crawl follows every link from a page and returns the addresses of the
// house, each once and without its query; an address that answers wrongly
// fails the test.
func crawl(t *testing.T, server *httptest.Server, start string) []string {
	t.Helper()
	var found []string
	seen, queue := map[string]bool{start: true}, []string{start}
	for len(queue) > 0 {
		address := queue[0]
		queue = queue[1:]
		body, kind := fetch(t, server, address)
		if !strings.HasPrefix(kind, "text/html") {
			continue
		}
		found = append(found, address)
		for _, m := range hrefs.FindAllStringSubmatch(body, -1) {
			next, _, _ := strings.Cut(m[1], "?")
			if !seen[next] && !strings.HasPrefix(next, "/assets/") {
				seen[next] = true
				queue = append(queue, next)
			}
		}
	}
	return found
}

func fetch(t *testing.T, server *httptest.Server, address string) (body, kind string) {
	t.Helper()
	response, err := http.Get(server.URL + address)
	if err != nil {
		t.Fatal(err)
	}
	defer response.Body.Close()
	content, err := io.ReadAll(response.Body)
	if err != nil {
		t.Fatal(err)
	}
	if response.StatusCode != http.StatusOK {
		t.Errorf("%s answers %d", address, response.StatusCode)
	}
	return string(content), response.Header.Get("Content-Type")
}

func copyBody(to io.Writer, response *http.Response) (int64, error) {
	return io.Copy(to, response.Body)
}

// pail is the example of one pail, wished for a day after the demo's hour.
func pail(t *testing.T) string {
	t.Helper()
	text, err := examples.ReadFile("examples/pail.toml")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
