package web

import (
	"net/http"
	"slices"
	"strings"

	"aerosteep/fault"
	"aerosteep/job/application"
	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
	"aerosteep/quantity"
	"aerosteep/record/holding"
	"aerosteep/wording"
	"aerosteep/worksheet"
)

// releaseView is the one look at a batch before its first load.
type releaseView struct {
	Batch, By, UseBy string
	Faults           []mend
	Fields           []field // smell, look, oxygen
	Refusal          []field // why, where instead
	NoMeter          bool
	Rulings          []ruling
	Back             string
}

// releaseFields are what the look asks for, in order.
var releaseFields = []string{"smell", "look", "do"}

// release shows the look and takes the decision.
func (s *Site) release(w http.ResponseWriter, r *http.Request) {
	on := s.openRound(w, r, "web.release.title", "/run/{name}", "web.run.of")
	if on == nil {
		return
	}
	b, file, p, now, made := on.batch, on.file, on.page, on.now, on.made
	p.Task = true
	view := &releaseView{Batch: b.Name, By: made.By, NoMeter: r.PostForm.Get("no-meter") != "" || r.Method == http.MethodGet && !file.Holding.OxygenMeter}
	p.View = view
	useBy := s.useBy(r.Context(), b, now)
	if !useBy.IsZero() {
		view.UseBy = p.Say("web.release.useby", "clock", p.When(useBy, now))
	}
	status := http.StatusOK
	var faults fault.List
	if r.Method == http.MethodPost {
		look := lookOf(r, p)
		look.At, look.UseBy, look.Initials = now, useBy, made.By
		if faults = p.checkLook(look, r.PostForm.Get("smell")); faults == nil {
			faults = s.keepForm(r, p, "release", worksheet.Values{"batch": {b.Name}, "released": {yesNo(look.Released)}}, made)
		}
		if faults == nil {
			http.Redirect(w, r, "/run/"+b.Name, http.StatusSeeOther)
			return
		}
		status = http.StatusUnprocessableEntity
	}
	view.fields(p, r, faults)
	view.rule(p, file, b.Name)
	s.show(w, status, "release", p)
}

func yesNo(yes bool) string {
	if yes {
		return "yes"
	}
	return "no"
}

// lookOf reads the look as it was filled in.
func lookOf(r *http.Request, p *page) application.Release {
	look := application.Release{
		Smell: r.PostForm.Get("smell"), Look: r.PostForm.Get("look"), NoMeter: r.PostForm.Get("no-meter") != "",
		Released: r.PostForm.Get("released") == "yes", Why: r.PostForm.Get("why"), Instead: r.PostForm.Get("instead"),
	}
	if c, err := quantity.ParseConcentration(withUnit(r.PostForm.Get("do"), "mg/L")); err == nil {
		look.Oxygen = &c
	}
	return look
}

// badSmells are refused whatever else was found.
var badSmells = []string{"sour", "rotten"}

// checkLook asks for what is missing, and refuses to release what smells bad
// or is past its hour.
func (p *page) checkLook(look application.Release, smell string) fault.List {
	if look.UseBy.IsZero() {
		look.UseBy = look.At // not known: nothing to be past of
	}
	var faults fault.List
	for _, wrong := range fault.Of(look.Check()) {
		faults = append(faults, fault.New(wrong.Field, "", p.missingOfLook(wrong.Field), wording.Text{}, wording.Text{}))
	}
	if look.Released && slices.Contains(badSmells, smell) {
		faults = append(faults, fault.New("smell", smell, wording.Say("web.release.bad-smell", wording.Places{"smell": choiceWord(p, "smell", smell)}), wording.Text{}, wording.Text{}))
	}
	if len(faults) == 0 {
		return nil
	}
	return faults
}

// missingOfLook says what the look still needs.
func (p *page) missingOfLook(field string) wording.Text {
	switch field {
	case "oxygen":
		return wording.Say("web.release.oxygen-need")
	case "use-by":
		return wording.Say("web.release.past-useby")
	case "initials":
		return wording.Say("web.release.missing", wording.Places{"label": wording.Say("web.release.initials")})
	}
	return wording.Say("web.release.missing", wording.Places{"label": wording.Say("input.log-release." + field)})
}

func (v *releaseView) fields(p *page, r *http.Request, faults fault.List) {
	form, _ := holding.FormOf("release")
	make := func(flag string) field {
		in, _ := form.Sheet.Input(flag)
		f := field{Name: flag, Label: in.Label(form.Sheet.Name).For(p.Reader), Value: r.PostForm.Get(flag), Kind: "text", Unit: boxUnit(in, p), Decimal: in.Kind.Numeric()}
		if flag == "look" && f.Value == "" && r.Method == http.MethodGet {
			f.Value = p.Say("web.release.look.usual")
		}
		f.shape(in, p)
		for _, wrong := range faults {
			if wrong.Field == flag || wrong.Field == "oxygen" && flag == "do" {
				f.Error = p.Text(wrong.What)
			}
		}
		return f
	}
	for _, flag := range releaseFields {
		v.Fields = append(v.Fields, make(flag))
	}
	v.Refusal = []field{make("why"), make("instead")}
	for _, wrong := range faults {
		v.Faults = append(v.Faults, mend{strings.Replace(wrong.Field, "oxygen", "do", 1), p.Text(wrong.What)})
	}
}

// rule lists where this tea may go, bed by bed.
func (v *releaseView) rule(p *page, file *jobfile.File, batch string) {
	met, _ := file.Meetings()
	for _, m := range met {
		if m.Batch != nil && *m.Batch == batch {
			verdict := hygiene.Decide(m.Facts)
			v.Rulings = append(v.Rulings, p.ruling(m.Bed, &verdict))
		}
	}
}
