// Command squeeze makes a file small for a slow line, once and as small as it
// gets: NAME.br by Brotli and NAME.gz by gzip beside it.
package main

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"fmt"
	"io"
	"os"

	"github.com/andybalholm/brotli"
)

// small is how Brotli squeezes: nearly as small as it gets, in half a minute. What
// was squeezed before is left as it is.
var small = brotli.WriterOptions{Quality: 10, LGWin: 24}

func main() {
	for _, name := range os.Args[1:] {
		if err := squeeze(name); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
	}
}

func squeeze(name string) error {
	content, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	mark := []byte(fmt.Sprintf("%x %+v\n", sha256.Sum256(content), small))
	if before, err := os.ReadFile(name + ".mark"); err == nil && bytes.Equal(before, mark) && there(name+".gz") && there(name+".br") {
		return nil
	}
	byGzip := func(w io.Writer) io.WriteCloser {
		z, _ := gzip.NewWriterLevel(w, gzip.BestCompression)
		return z
	}
	byBrotli := func(w io.Writer) io.WriteCloser { return brotli.NewWriterOptions(w, small) }
	if err := write(name+".gz", content, byGzip); err != nil {
		return err
	}
	if err := write(name+".br", content, byBrotli); err != nil {
		return err
	}
	return os.WriteFile(name+".mark", mark, 0o644)
}

func there(name string) bool {
	_, err := os.Stat(name)
	return err == nil
}

func write(name string, content []byte, by func(io.Writer) io.WriteCloser) error {
	var b bytes.Buffer
	w := by(&b)
	if _, err := w.Write(content); err != nil {
		return err
	}
	if err := w.Close(); err != nil {
		return err
	}
	return os.WriteFile(name, b.Bytes(), 0o644)
}
