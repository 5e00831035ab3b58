package spray_test

import (
	"testing"

	"aerosteep/fault"
	"aerosteep/quantity"
	"aerosteep/science/spray"
)

// fullSetting is a sprayer of which everything is known and agrees.
func fullSetting(t *testing.T) spray.Setting {
	flow, speed, width := quantity.LitresPerMinute(1.2), quantity.KilometresPerHour(5), quantity.Metres(0.5)
	rate := must(spray.Rate(flow, speed, width))(t)
	return spray.Setting{Rate: &rate, Speed: &speed, Width: &width, Flow: &flow}
}

// Each of the four follows from the other three, and comes back as it was.
func TestAnyThreeGiveTheFourth(t *testing.T) {
	whole := fullSetting(t)
	for name, leave := range map[string]func(*spray.Setting){
		"mix-rate":    func(s *spray.Setting) { s.Rate = nil },
		"speed":       func(s *spray.Setting) { s.Speed = nil },
		"spacing":     func(s *spray.Setting) { s.Width = nil },
		"nozzle-flow": func(s *spray.Setting) { s.Flow = nil },
	} {
		s := whole
		leave(&s)
		out := must(s.Solve())(t)
		if out.Found != name || len(out.Missing()) != 0 {
			t.Errorf("without %s: found %q, missing %v", name, out.Found, out.Missing())
		}
		near(t, name+": rate", float64(*out.Rate / *whole.Rate), 1, 1e-12)
		near(t, name+": speed", float64(*out.Speed / *whole.Speed), 1, 1e-12)
		near(t, name+": width", float64(*out.Width / *whole.Width), 1, 1e-12)
		near(t, name+": flow", float64(*out.Flow / *whole.Flow), 1, 1e-12)
	}
}

func TestPressureAndCatch(t *testing.T) {
	s := fullSetting(t)
	s.Rating = &spray.Rating{Flow: 0.6, Pressure: 100}
	near(t, "kPa for twice the flow", float64(*must(s.Solve())(t).Pressure), 400, 1e-9)

	s = fullSetting(t)
	caught := *s.Rate * 1.1
	s.Rate, s.Caught = nil, &caught
	out := must(s.Solve())(t)
	percent, both := out.Differ()
	if !both || *out.Rate != caught {
		t.Errorf("the catch is the answer: %+v", out)
	}
	near(t, "percent", percent, 0.1/1.05*100, 1e-9)
}

func TestSettingRefuses(t *testing.T) {
	off, pressure := fullSetting(t), fullSetting(t)
	*off.Rate *= 1.03
	pressure.Pressure = new(quantity.Pressure(200))
	flows := fullSetting(t)
	flows.Rating, flows.Pressure = &spray.Rating{Flow: 1, Pressure: 100}, new(quantity.Pressure(100))
	for field, s := range map[string]spray.Setting{"mix-rate": off, "pressure": pressure, "nozzle-flow": flows} {
		_, err := s.Solve()
		if faults := fault.Of(err); len(faults) != 1 || faults[0].Field != field {
			t.Errorf("%s: %v", field, err)
		}
	}
	caught := fullSetting(t)
	caught.Caught = new(*caught.Rate * 1.05)
	if _, err := caught.Solve(); fault.Of(err) == nil {
		t.Error("a catch 5 % off the stated rate was taken")
	}
}
