package jobfile

import (
	"regexp"
	"strings"

	"aerosteep/job/ground"
	"aerosteep/job/rig"
	"aerosteep/quantity"
	"aerosteep/wording"
)

// zoneKind is a name of the IANA time zone database.
var zoneKind = kind{name: "zone", schema: map[string]any{"type": "string"}, read: func(r reading) any {
	name := strings.TrimSpace(r.text)
	if r.shape != textShape {
		return r.wrongShape()
	}
	if zone, err := zoneNamed(name); err == nil && name != "" && name != "Local" {
		return zone
	}
	return r.refuse(wording.Say("jobfile.not-a-zone"), r.allowed(), wording.Say("jobfile.not-a-zone.advice"))
}}

var threeCapitals = regexp.MustCompile(`^[A-Z]{3}$`)

var currencyKind = kind{name: "currency", schema: map[string]any{"type": "string", "pattern": threeCapitals.String()}, read: func(r reading) any {
	if r.shape != textShape || !threeCapitals.MatchString(r.text) {
		return r.refuse(wording.Say("jobfile.not-a-currency"), r.allowed(), wording.Text{})
	}
	return r.text
}}

var curveKind = kind{name: "curve", schema: map[string]any{"type": "string"}, read: func(r reading) any {
	if r.shape != textShape {
		return r.wrongShape()
	}
	curve, err := rig.ParseCurve(r.text)
	if err != nil {
		return r.fault(err)
	}
	return curve
}}

// dilutionKind is "1:8": parts of tea, then parts of water.
var dilutionKind = kind{name: "dilution", schema: map[string]any{"type": "string"}, read: func(r reading) any {
	if r.shape != textShape {
		return r.wrongShape()
	}
	tea, water, found := strings.Cut(r.text, ":")
	t, err1 := quantity.Bare(tea)
	w, err2 := quantity.Bare(water)
	if !found || err1 != nil || err2 != nil || t <= 0 || w < 0 || w/t > 10000 {
		return r.refuse(wording.Say("jobfile.not-a-dilution"), r.allowed(), wording.Text{})
	}
	return w / t
}}

// mostCorners is more than anybody walks; a field is checked side by side.
const mostCorners = 2000

var cornersKind = kind{name: "corners", schema: map[string]any{
	"type": "array", "minItems": 3,
	"items": map[string]any{"type": "array", "items": map[string]any{"type": "number"}, "minItems": 2, "maxItems": 2},
}, read: func(r reading) any {
	if r.shape != listShape {
		return r.wrongShape()
	}
	corners := []ground.Corner{}
	for _, item := range r.list {
		c, ok := readCorner(item)
		if !ok {
			return r.refuse(wording.Say("jobfile.not-a-corner", wording.Places{"corner": item.given()}), r.allowed(), wording.Say("jobfile.not-a-corner.advice"))
		}
		corners = append(corners, c)
	}
	if len(corners) < 3 || len(corners) > mostCorners {
		return r.refuse(wording.Say("jobfile.few-corners"), r.allowed(), wording.Text{})
	}
	return corners
}}

func readCorner(v *value) (ground.Corner, bool) {
	if v.shape != listShape || len(v.list) != 2 {
		return ground.Corner{}, false
	}
	latitude, ok1 := v.list[0].number()
	longitude, ok2 := v.list[1].number()
	inRange := latitude >= -90 && latitude <= 90 && longitude >= -180 && longitude <= 180
	return ground.Corner{Latitude: latitude, Longitude: longitude}, ok1 && ok2 && inRange
}

// tablesOf is a list of tables of one form.
func tablesOf(inner *form) kind {
	return kind{name: "tables", inner: inner, read: func(r reading) any {
		if r.shape != listShape {
			return r.wrongShape()
		}
		records := []*record{}
		for _, item := range r.list {
			if item.shape != tableShape {
				one := r
				one.value = item
				one.wrongShape()
				continue
			}
			records = append(records, r.checker.readTable(inner, item.table, r.path))
		}
		if len(r.list) == 0 {
			return r.refuse(wording.Say("jobfile.empty-list"), r.allowed(), wording.Text{})
		}
		return records
	}}
}

// typedAs is an amount that the recipe room reads; here it is kept as it was
// typed.
func typedAs(name string) kind {
	return kind{name: name, schema: map[string]any{"type": "string"}, read: func(r reading) any {
		if r.shape != textShape {
			return r.bareNumber()
		}
		return r.text
	}}
}

// Price is money per amount: "0.30 USD / kWh", "24 USD / h".
type Price struct {
	Money    float64
	Currency string
	Per      quantity.Unit
}

var priceForm = regexp.MustCompile(`^(.*?)([A-Z]{3})\s*(?:/|per )\s*(\S.*)$`)

// priceOf is a price per unit of one kind.
func priceOf(per string) kind {
	return kind{name: "price-per-" + per, schema: map[string]any{"type": "string"}, read: func(r reading) any {
		if r.shape != textShape {
			return r.wrongShape()
		}
		m := priceForm.FindStringSubmatch(strings.TrimSpace(r.text))
		if m == nil {
			return r.refuse(wording.Say("jobfile.not-a-price"), r.allowed(), wording.Text{})
		}
		money, err := quantity.Bare(m[1])
		unit, wrongUnit := quantity.ParseUnit(m[3])
		if err != nil || money < 0 || wrongUnit != nil || unit.Kind() != per {
			return r.refuse(wording.Say("jobfile.not-a-price"), r.allowed(), wording.Text{})
		}
		return Price{money, m[2], unit}
	}}
}

// For is the money for an amount in SI units (J, s).
func (p Price) For(si float64) float64 { return p.Money * si / p.Per.Factor }
