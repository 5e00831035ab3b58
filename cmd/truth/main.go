// Command truth scores forecasts against brews whose whole course is known: a
// folder of brews, each with a job file, the readings that were written down,
// the weather, and the truth.
//
//	go run ./cmd/truth examples/brews
//
// The brews of this repository were simulated, by models other than the one
// that forecasts. They show whether its bands are honest when its own
// assumptions are wrong; they say nothing about real tea.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"sort"
)

func main() {
	members := flag.Int("members", 2000, "members of each forecast")
	seed := flag.Uint64("seed", 1, "seed of each forecast")
	verbose := flag.Bool("v", false, "print every forecast")
	flag.Parse()
	folder := "examples/brews"
	if flag.NArg() > 0 {
		folder = flag.Arg(0)
	}
	if err := run(folder, options{*members, *seed, *verbose}); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

type options struct {
	members int
	seed    uint64
	verbose bool
}

func run(folder string, o options) error {
	files, err := filepath.Glob(filepath.Join(folder, "*", "meta.json"))
	if err != nil {
		return err
	}
	if len(files) == 0 {
		return fmt.Errorf("no brews in %s: each stands in a folder of its own with meta.json", folder)
	}
	sort.Strings(files)
	var all score
	printHead()
	for _, f := range files {
		b, err := readBrew(filepath.Dir(f))
		if err != nil {
			return fmt.Errorf("%s: %w", f, err)
		}
		s, err := b.score(o)
		if err != nil {
			return fmt.Errorf("%s: %w", f, err)
		}
		s.print(b.Name)
		all.add(s)
	}
	all.print("together")
	all.verdict()
	return nil
}
