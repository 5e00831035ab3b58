package application

import (
	"math"
	"strconv"
	"strings"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/science/spray"
	"aerosteep/wording"
)

// Screen is one stage of straining as somebody named it.
type Screen struct {
	Given   string
	Opening quantity.Length
	Sieve   int // ASTM E11 number; 0 where the opening itself was given
}

// ParseScreen reads "400 um", "0.4 mm" or "50 mesh"; N mesh is the opening of
// ASTM E11 sieve No. N.
func ParseScreen(text string) (Screen, error) {
	given := strings.TrimSpace(text)
	if number, isMesh := strings.CutSuffix(strings.ToLower(given), "mesh"); isMesh {
		return meshScreen(given, strings.TrimSpace(number))
	}
	opening, err := quantity.ParseLength(given)
	if err != nil {
		for _, f := range fault.Of(err) {
			f.Field, f.Given, f.Allowed = "chain", given, wording.Say("application.screen.allowed")
		}
		return Screen{}, err
	}
	if opening <= 0 {
		return Screen{}, fault.New("chain", given, wording.Say("application.screen.zero"), wording.Say("application.screen.allowed"), wording.Text{})
	}
	return Screen{Given: given, Opening: opening}, nil
}

func meshScreen(given, number string) (Screen, error) {
	mesh, err := quantity.Bare(number)
	if err != nil || mesh <= 0 {
		return Screen{}, fault.New("chain", given, wording.Say("application.screen.mesh-number"), wording.Say("application.screen.allowed"), wording.Text{})
	}
	if sieve, known := spray.FindSieve(int(min(mesh, 1e6))); known && mesh == math.Trunc(mesh) {
		return Screen{Given: given, Opening: sieve.Opening, Sieve: sieve.Number}, nil
	}
	low, high := spray.NearestSieves(mesh)
	return Screen{}, fault.New("chain", given,
		wording.Say("application.screen.no-sieve", wording.Places{"mesh": number, "low": strconv.Itoa(low), "high": strconv.Itoa(high)}),
		wording.Say("application.screen.allowed"), wording.Say("application.screen.no-sieve.advice"))
}

// StageVerdict is what a screen does in its place.
type StageVerdict string

const (
	StageOK       StageVerdict = "ok"
	NotFiner      StageVerdict = "not-finer"           // not smaller than the stage before
	PassesTooMuch StageVerdict = "passes-too-much"     // the last one, not smaller than the orifice
	fungalStrands              = 200e-6                // m; finer screens hold strands back (common practice)
	SmallestOpen               = quantity.Length(4e-4) // orifice too small for living product (common practice)
)

// Stage is a screen in its place.
type Stage struct {
	Screen
	Verdict StageVerdict
}

// Chain is the verdict on a chain of screens.
type Chain struct {
	Stages       []Stage
	Finest       quantity.Length
	PassesFungi  bool // strands of fungus get through all screens
	OK           bool // every stage does its work
	LastTo       *float64
	AdvisedLow   *quantity.Length // half of the orifice
	AdvisedHigh  *quantity.Length // two thirds of it
	SmallOrifice bool
}

// JudgeChain tells whether each screen is finer than the one before and the
// last one finer than the smallest passage behind it. The last one does best
// at one half to two thirds of that passage (common practice); finer than
// 200 µm holds fungal strands back (common practice, no test found). A nil
// orifice is not known.
func JudgeChain(screens []Screen, orifice *quantity.Length) Chain {
	chain := Chain{OK: true, Finest: screens[0].Opening}
	for i, s := range screens {
		stage := Stage{s, StageOK}
		if i > 0 && !finer(s.Opening, screens[i-1].Opening) {
			stage.Verdict = NotFiner
		}
		if i == len(screens)-1 && stage.Verdict == StageOK && orifice != nil && !finer(s.Opening, *orifice) {
			stage.Verdict = PassesTooMuch
		}
		chain.OK = chain.OK && stage.Verdict == StageOK
		chain.Finest = min(chain.Finest, s.Opening)
		chain.Stages = append(chain.Stages, stage)
	}
	chain.PassesFungi = chain.Finest.Metres() >= fungalStrands*(1-slack)
	if orifice != nil {
		last := float64(screens[len(screens)-1].Opening / *orifice)
		low, high := *orifice/2, *orifice*2/3
		chain.LastTo, chain.AdvisedLow, chain.AdvisedHigh = &last, &low, &high
		chain.SmallOrifice = *orifice < SmallestOpen*(1-slack)
	}
	return chain
}

func finer(a, b quantity.Length) bool { return a < b*(1-slack) }
