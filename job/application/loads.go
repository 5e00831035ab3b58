package application

import (
	"math"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// Split is how a job is shared out into loads.
type Split string

const (
	FullLoads  Split = "full"  // full loads and a rest
	EqualLoads Split = "equal" // the same number of equal loads
)

const (
	dust      = 1e-4  // share of a tank that is arithmetic, not a load
	mostLoads = 10000 // more is a slip of the unit, not a job
)

// Tank is what the mix is carried in.
type Tank struct {
	Holds quantity.Volume // the most that one load adds to a tank run dry
	Dead  quantity.Volume // pump, filter, hose, boom: filled once, left over at the end
}

func (t Tank) check() error {
	if !(t.Holds > 0) {
		return missing("tank")
	}
	if t.Dead < 0 || !(t.Dead < t.Holds) {
		return fault.New("dead-volume", "", wording.Say("application.dead-volume", wording.Places{"dead": t.Dead, "tank": t.Holds}),
			wording.Say("application.dead-volume.allowed", wording.Places{"tank": t.Holds}), wording.Say("application.dead-volume.advice"))
	}
	return nil
}

// Load is one filling of the tank.
type Load struct {
	Number  int
	Amounts         // tea, water and mix of this load
	Covers  float64 // m² or plants
	Part    bool    // less than a full tank
}

// Loads is a job shared out.
type Loads struct {
	Each     []Load
	Full     int             // loads of a full tank
	Last     quantity.Volume // the rest, 0 where all are full; with equal loads the size of each
	Sprayed  quantity.Volume // mix that reaches the ground
	Prepared Amounts         // everything that is mixed, with the dead volume
	LeftOver quantity.Volume // the dead volume
	Covers   float64         // m² or plants in all
}

// Outing is ground (or plants) to be covered at a strength. Per is the mix for
// one m² or one plant, in litres.
type Outing struct {
	Covers float64
	Per    quantity.Volume
	Share  quantity.Share
	Tank   Tank
	Split  Split
}

// Loads shares the job out. Every load has the same share of tea, so the last
// one is scaled: mixing it at full-load amounts is the classical mistake.
//
//	sprayed  = covers x mix per unit
//	prepared = sprayed + dead volume
//	load i covers (max(0, S_i - dead) - max(0, S_(i-1) - dead)) / mix per unit
//
// where S_i is all that has been prepared up to and with load i.
func (o Outing) Loads() (Loads, error) {
	if err := o.Tank.check(); err != nil {
		return Loads{}, err
	}
	sprayed := quantity.Volume(o.Covers) * o.Per
	prepared := sprayed + o.Tank.Dead
	sizes, err := sizes(prepared, o.Tank.Holds, o.Split)
	if err != nil {
		return Loads{}, err
	}
	loads := Loads{
		Each: o.fill(sizes), Sprayed: sprayed, Prepared: MixOf(prepared, o.Share),
		LeftOver: o.Tank.Dead, Covers: o.Covers,
	}
	for _, l := range loads.Each {
		if !l.Part {
			loads.Full++
		}
	}
	if last := loads.Each[len(loads.Each)-1]; last.Part || o.Split == EqualLoads {
		loads.Last = last.Total
	}
	return loads, nil
}

// OutingFor turns the question round: how far does this tea go? What fills
// the dead volume goes nowhere.
func OutingFor(tea, per quantity.Volume, share quantity.Share, tank Tank, split Split) (Outing, error) {
	if err := tank.check(); err != nil {
		return Outing{}, err
	}
	prepared := tea / quantity.Volume(share)
	if !over(prepared.Litres(), tank.Dead.Litres()) {
		return Outing{}, fault.New("tea", "", wording.Say("application.tea-in-lines", wording.Places{"mix": prepared, "dead": tank.Dead}),
			wording.Say("application.tea-in-lines.allowed", wording.Places{"tea": tank.Dead * quantity.Volume(share)}), wording.Text{})
	}
	covers := ((prepared - tank.Dead) / per).Litres()
	return Outing{Covers: covers, Per: per, Share: share, Tank: tank, Split: split}, nil
}

// sizes is the mix of each load.
func sizes(prepared, tank quantity.Volume, split Split) ([]quantity.Volume, error) {
	full := math.Floor((prepared / tank).Litres() + dust)
	rest := prepared - quantity.Volume(full)*tank
	partLoad := rest >= dust*tank || full == 0
	if full > mostLoads || full == mostLoads && partLoad {
		return nil, fault.New("tank", "", wording.Say("application.too-many-loads", wording.Places{"loads": full, "tank": tank}),
			wording.Say("application.too-many-loads.allowed"), wording.Say("application.too-many-loads.advice"))
	}
	each := make([]quantity.Volume, int(full), int(full)+1)
	for i := range each {
		each[i] = tank
	}
	if partLoad {
		each = append(each, rest)
	}
	if split == EqualLoads {
		for i := range each {
			each[i] = prepared / quantity.Volume(len(each))
		}
	}
	return each, nil
}

func (o Outing) fill(sizes []quantity.Volume) []Load {
	loads := make([]Load, len(sizes))
	var before quantity.Volume
	for i, size := range sizes {
		after := before + size
		covers := (max(0, after-o.Tank.Dead) - max(0, before-o.Tank.Dead)) / o.Per
		loads[i] = Load{
			Number: i + 1, Amounts: MixOf(size, o.Share), Covers: covers.Litres(),
			Part: size < o.Tank.Holds*(1-dust),
		}
		before = after
	}
	return loads
}

// SmallLast tells whether the last load is under a tenth of the tank, too
// little to mix and spray well; equal loads are the way out.
func (l Loads) SmallLast(tank Tank) bool {
	n := len(l.Each)
	return n > 1 && l.Each[n-1].Total < tank.Holds/10
}

// HighestTeaRate is the top of the range of undiluted tea in circulation,
// 87 US gal/acre (common practice); above it a mix rate was probably meant.
var HighestTeaRate = quantity.USGallonsPerAcre(87)

// FieldTime is the time to cover ground:
//
//	area / (speed x swath x efficiency)
//
// efficiency is the share of the time that the applicator really sprays, 0.1
// to 1; 0.65 is common practice for turns and refills.
func FieldTime(ground quantity.Area, speed quantity.Speed, swath quantity.Length, efficiency float64) quantity.Span {
	return quantity.Seconds(ground.SquareMetres() / (speed.MetresPerSecond() * swath.Metres() * efficiency))
}
