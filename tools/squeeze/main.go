// Command squeeze makes a file small for a slow line, once and as small as it
// gets: NAME.br by Brotli and NAME.gz by gzip beside it.
package main

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"os"

	"github.com/andybalholm/brotli"
)

// quickEnough is the Brotli level that is nearly as small as the smallest and
// ten times as fast.
const quickEnough = 9

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
	byGzip := func(w io.Writer) io.WriteCloser {
		z, _ := gzip.NewWriterLevel(w, gzip.BestCompression)
		return z
	}
	byBrotli := func(w io.Writer) io.WriteCloser { return brotli.NewWriterLevel(w, quickEnough) }
	if err := write(name+".gz", content, byGzip); err != nil {
		return err
	}
	return write(name+".br", content, byBrotli)
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
