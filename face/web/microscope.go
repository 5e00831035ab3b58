package web

import (
	"net/http"
	"net/url"
	"strings"

	"aerosteep/worksheet"
	"aerosteep/worksheet/catalog"
)

// microscope is how slides are looked at on this device: the flags of the
// worksheets that make numbers of counts, as they were typed.
type microscope map[string]string

// scopeFlags are asked for once and then kept on the device. The grid belongs
// to the strands alone.
var scopeFlags = []struct{ sheet, flag string }{
	{"field-count", "field-diameter"}, {"field-count", "coverslip-side"}, {"field-count", "drop-volume"},
	{"field-count", "dilution"}, {"hyphae", "grid"},
}

func scopeInput(sheet, flag string) (*worksheet.Sheet, *worksheet.Input) {
	found, _ := catalog.Find(sheet)
	in, _ := found.Input(flag)
	return found, in
}

// microscopeOf is the set-up of a form, else what the device kept. A set-up
// that came with a form is kept.
func microscopeOf(w http.ResponseWriter, r *http.Request, p *page) microscope {
	set := microscope{}
	if !r.PostForm.Has("field-diameter") {
		if before, err := url.ParseQuery(kept(r, "microscope")); err == nil {
			for _, f := range scopeFlags {
				set[f.flag] = before.Get(f.flag)
			}
		}
		return set
	}
	keep := url.Values{}
	for _, f := range scopeFlags {
		text := strings.TrimSpace(r.PostForm.Get(f.flag))
		if len(text) > 40 {
			text = text[:40]
		}
		_, in := scopeInput(f.sheet, f.flag)
		if text != "" {
			text = withBoxUnit(in, text, p)
			keep.Set(f.flag, text)
		}
		set[f.flag] = text
	}
	http.SetCookie(w, &http.Cookie{Name: "microscope", Value: keep.Encode(), Path: "/", MaxAge: 400 * 86400, SameSite: http.SameSiteLaxMode})
	return set
}

// ready tells whether counts can be made into numbers.
func (m microscope) ready() bool {
	return m["field-diameter"] != "" && m["coverslip-side"] != "" && m["drop-volume"] != ""
}

// said is the set-up in the words in which it was typed, for the record.
func (m microscope) said() string {
	var parts []string
	for _, f := range scopeFlags {
		if m[f.flag] != "" {
			parts = append(parts, f.flag+" "+m[f.flag])
		}
	}
	return strings.Join(parts, ", ")
}

// fields are the set-up's fields with their labels.
func (m microscope) fields(p *page) []field {
	var fields []field
	for _, f := range scopeFlags {
		sheet, in := scopeInput(f.sheet, f.flag)
		one := field{
			Name: f.flag, Label: in.Label(sheet.Name).For(p.Reader), Hint: in.Allowed().For(p.Reader), Value: m[f.flag],
			Kind: "text", Decimal: true,
		}
		if m.ready() || in.Kind == worksheet.Bare {
			one.Unit = "" // what is kept carries its unit
		} else {
			one.Unit = boxUnit(in, p)
		}
		if in.Default != "" {
			one.Hint += p.Say("web.field.default", "default", in.Default)
		}
		fields = append(fields, one)
	}
	return fields
}
