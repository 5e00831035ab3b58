package web

import (
	"net/http"
	"net/url"

	"aerosteep/job/jobfile"
	"aerosteep/quantity"
)

// rigView is the equipment: vessels with their air, applicators.
type rigView struct {
	Vessels     []rigItem
	Pumps       []rigItem
	Applicators []rigItem
	Shed        []vesselView
}

// rigItem is a thing of the equipment, with its last tests and the page of the
// next one.
type rigItem struct {
	Name, Line, More string
	Tests            []testRow
	Test, TestName   string // address, and what is tested
	Learned          *learnedLine
}

// rig shows the equipment and leads to the worksheets that test it.
func (s *Site) rig(w http.ResponseWriter, r *http.Request) {
	p := s.page(w, r, "rig")
	p.Heading, p.Title = p.Say("web.place.rig"), p.Say("web.place.rig")
	view := &rigView{}
	p.View = view
	if file := s.held(); file != nil {
		view.fill(p, file)
		view.Shed = shed(p, file, nil)
	}
	s.show(w, http.StatusOK, "rig", p)
}

func (v *rigView) fill(p *page, file *jobfile.File) {
	for _, vessel := range file.Vessels {
		item := rigItem{Name: vessel.Name, Line: p.Say("web.rig.vessel", "full", both(p, vessel.Full), "brew", both(p, vessel.Brew))}
		switch {
		case vessel.Pump == "":
			item.More = p.Say("web.rig.stirred")
		case vessel.KLa20 != nil:
			item.More = p.Say("web.rig.measured", "pump", vessel.Pump, "kla", vessel.KLa20.Estimate)
		case caught(file, vessel.Pump) != nil:
			item.More = p.Say("web.rig.caught", "pump", vessel.Pump, "flow", quantity.Airflow(*caught(file, vessel.Pump)))
		default:
			item.More = p.Say("web.rig.pump", "pump", vessel.Pump)
		}
		if vessel.Pump != "" {
			item.Test, item.TestName = "/rig/pump-off?vessel="+url.QueryEscape(vessel.Name), p.Say("web.pumpoff.title")
			item.Tests = p.lastTests("vessel", vessel.Name)
			item.Learned = p.Site.taughtOf(p, p.request, vessel.Name, p.Site.now())
		}
		v.Vessels = append(v.Vessels, item)
	}
	for _, pump := range file.Pumps {
		v.Pumps = append(v.Pumps, rigItem{
			Name: pump.Name, Tests: p.lastTests("pump", pump.Name),
			Test: "/rig/jug?pump=" + url.QueryEscape(pump.Name), TestName: p.Say("web.jug.title"),
		})
	}
	for _, a := range file.Applicators {
		line := choiceWord(p, "applicator", string(a.Kind))
		if a.Tank != nil {
			line += ", " + both(p, *a.Tank)
		}
		v.Applicators = append(v.Applicators, rigItem{
			Name: a.Name, Line: line, Tests: p.lastTests("applicator", a.Name),
			Test: "/rig/calibrate?applicator=" + url.QueryEscape(a.Name), TestName: p.Say("web.calibrate.title"),
		})
	}
}

// shownTests are the tests that stand beside a thing of the equipment.
const shownTests = 2

func (p *page) lastTests(what, name string) []testRow {
	rows := p.tests(p.Site.Holding.TestsOf(what, name), p.Site.now())
	return rows[:min(len(rows), shownTests)]
}

// caught is the air that a jug caught of a pump; nil where none was.
func caught(file *jobfile.File, pump string) *quantity.Flow {
	found, known := file.Pump(pump)
	if !known {
		return nil
	}
	return found.Caught
}
