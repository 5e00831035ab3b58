// Command brews simulates brews by models other than the one that forecasts,
// with their truth, and writes them in the form that cmd/truth scores.
//
//	go run ./cmd/brews --count 96 --seed 7 FOLDER
//
// Four lives take turns: sludge that stores, sugar before protein, a curve
// without organisms, cells that hoard. Half the brews are calm, a quarter
// crash; a third of the others meet something that nobody could know. They say
// nothing about real tea.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
)

func main() {
	count := flag.Int("count", 96, "how many brews")
	seed := flag.Uint64("seed", 7, "seed; the same one gives the same brews")
	flag.Parse()
	if flag.NArg() != 1 || *count < 1 {
		fmt.Fprintln(os.Stderr, "usage: brews --count N --seed S FOLDER")
		os.Exit(2)
	}
	if err := run(flag.Arg(0), *count, *seed); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(folder string, count int, seed uint64) error {
	lot := seeded(seed, 0)
	kinds := kindsOf(lot, count)
	happen := fates(lot, kinds)
	for i, kind := range kinds {
		number := i + 1
		b, err := newBrew(seed, number, lifeNames[i%len(lifeNames)], kind, happen[i])
		if err != nil {
			return err
		}
		asks := b.asks(seeded(seed+1, uint64(number)))
		name := fmt.Sprintf("%0*d", max(2, len(fmt.Sprint(count))), number)
		if err := b.write(filepath.Join(folder, name), asks, seed); err != nil {
			return err
		}
	}
	return nil
}

// kindsOf deals out the kinds in their shares, each life the same: half calm, a
// quarter crashes, the rest safe or close.
func kindsOf(c chance, count int) []string {
	kinds := make([]string, count)
	lot := make([][]int, len(lifeNames))
	for n := range lot {
		lot[n] = c.Perm((count + len(lifeNames) - 1) / len(lifeNames))
	}
	for i := range kinds {
		deck := lot[i%len(lifeNames)]
		u := (float64(deck[i/len(lifeNames)]) + c.Float64()) / float64(len(deck))
		switch {
		case u < 0.5:
			kinds[i] = "calm"
		case u < 0.75:
			kinds[i] = "crash"
		case u < 0.88:
			kinds[i] = "safe"
		default:
			kinds[i] = "close"
		}
	}
	return kinds
}
