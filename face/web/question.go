package web

import (
	"net/http"
	"net/url"
	"slices"
	"strings"
	"time"

	"aerosteep/fault"
	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
	"aerosteep/record/holding"
	sheets "aerosteep/worksheet/hygiene"
)

// questionView asks for one fact in a grower's words.
type questionView struct {
	Fact, Text, Serves string
	Batch              string // the page that asked was this batch's
	Answers            []option
	Text2              string // a value typed, where there is no list
	Date               bool
	For                []option
	Covered            []string // the questions of 112.2 to 112.5
	Faults             []string
	By                 string
	Done               string // nothing is left to ask
	Letters            bool
}

// question asks the next missing fact and stores what was answered.
func (s *Site) question(w http.ResponseWriter, r *http.Request) {
	if s.Holding == nil {
		s.nothingHere(w, r)
		return
	}
	r.Body = http.MaxBytesReader(w, r.Body, 1<<20)
	if err := r.ParseForm(); err != nil {
		http.Error(w, "too long", http.StatusRequestEntityTooLarge)
		return
	}
	p := s.page(w, r, "ground")
	batch := r.Form.Get("batch")
	p.Task, p.Back, p.BackTo = true, "/ground/allowed", p.Say("web.allowed.title")
	if batch != "" && s.knowsBatch(batch) {
		p.Back = "/batches/" + batch + "/allowed"
	}
	p.Heading = p.Say("web.question.title")
	p.Title = p.Heading
	view := &questionView{Batch: batch, By: kept(r, "by")}
	p.View = view
	status := http.StatusOK
	if r.Method == http.MethodPost {
		if view.Faults = s.keepAnswer(w, r, p); view.Faults == nil {
			http.Redirect(w, r, questionLink(batch, ""), http.StatusSeeOther)
			return
		}
		status = http.StatusUnprocessableEntity
	}
	view.fill(p, s.held(), r.Form)
	s.show(w, status, "question", p)
}

// questionLink is the address of a question; "" asks the next one.
func questionLink(batch, fact string) string {
	query := url.Values{}
	for name, value := range map[string]string{"batch": batch, "fact": fact} {
		if value != "" {
			query.Set(name, value)
		}
	}
	if len(query) == 0 {
		return "/ground/question"
	}
	return "/ground/question?" + query.Encode()
}

// keepAnswer stores an answer as an entry; nil says that it is on disk.
func (s *Site) keepAnswer(w http.ResponseWriter, r *http.Request, p *page) []string {
	fact, known := hygiene.FactNamed(r.PostForm.Get("fact"))
	value := strings.TrimSpace(r.PostForm.Get("value"))
	if typed := strings.TrimSpace(r.PostForm.Get("typed")); typed != "" && value == "" {
		value = typed
	}
	if !known || value == "" {
		return []string{p.Say("web.question.choose")}
	}
	made := holding.Made{At: s.now(), By: s.initials(w, r), Device: s.device(w, r)}
	if at, err := time.Parse(time.RFC3339, r.PostForm.Get("at")); err == nil {
		made.At = at // it waited on the phone
	}
	entry, err := s.Holding.Answer(fact, r.PostForm.Get("for"), value, made)
	if id := r.PostForm.Get("id"); id != "" && err == nil {
		entry.ID, entry.RecordedAt = id, entry.At // made on the phone, so that it is kept once
	}
	if err == nil {
		err = s.store(r.Context(), entry)
	}
	return p.mendLines(err)
}

// mendLines says what is wrong and what is allowed, a line for each fault.
func (p *page) mendLines(err error) []string {
	if err == nil {
		return nil
	}
	faults := fault.Of(err)
	if len(faults) == 0 {
		faults = fault.List{{What: verbatim(err)}}
	}
	lines := make([]string, len(faults))
	for i, f := range faults {
		lines[i] = f.What.For(p.Reader)
		if allowed := f.Allowed.For(p.Reader); allowed != "" {
			lines[i] += "; " + allowed
		}
	}
	return lines
}

func (v *questionView) fill(p *page, file *jobfile.File, form url.Values) {
	asked := openQuestions(file, v.Batch)
	fact, chosen := hygiene.FactNamed(form.Get("fact"))
	if !chosen {
		if len(asked.facts) == 0 {
			v.Done, v.Letters = p.Say("web.question.done"), len(asked.unknown) > 0
			return
		}
		fact = asked.facts[0]
	}
	v.Fact, v.Text = fact.String(), p.Text(hygiene.Asked(fact).Text)
	pairs := asked.waiting(fact)
	v.Serves = p.Say("web.question.serves", "n", len(pairs), "of", len(asked.pairs))
	v.choices(p, fact, form.Get("value"))
	v.For = p.carriers(file, fact, pairs, form.Get("for"))
	if fact == hygiene.Covered {
		for _, paragraph := range []string{"rarely-raw", "own-use", "kill-step", "sales", "qualified"} {
			v.Covered = append(v.Covered, p.Say("web.covered."+paragraph))
		}
	}
}

func (v *questionView) choices(p *page, fact hygiene.Fact, given string) {
	values := fact.Values()
	switch fact {
	case hygiene.Applied, hygiene.Harvest:
		v.Date = true
	case hygiene.Held:
		values = nil
		v.Text2 = p.Say("web.question.held")
	}
	for _, value := range values {
		v.Answers = append(v.Answers, option{value, answerWord(p, fact, value), value == given})
	}
	v.Answers = append(v.Answers, option{"unknown", p.Say("web.answer.unknown"), given == "unknown"})
}

// answerWord is a value in a grower's words.
func answerWord(p *page, fact hygiene.Fact, value string) string {
	if value == "yes" || value == "no" {
		return p.Say("web.answer." + value)
	}
	return p.Say("web.answer." + fact.String() + "." + value)
}

// carriers are the tables that an answer can be written into; first where the
// fact usually belongs, or where somebody said before that it is not known.
func (p *page) carriers(file *jobfile.File, fact hygiene.Fact, pairs []sheets.BedVerdict, given string) []option {
	all := []option{{Value: "hygiene", Label: p.Say("web.question.for.all")}}
	for _, v := range pairs {
		bed := option{Value: "bed:" + v.Bed, Label: v.Bed}
		if v.Batch != nil {
			if batch := (option{Value: "batch:" + *v.Batch, Label: p.Say("web.question.for.batch", "batch", *v.Batch)}); !slices.Contains(all, batch) {
				all = append(all, batch)
			}
		}
		if !slices.Contains(all, bed) {
			all = append(all, bed)
		}
	}
	if given == "" {
		given = usualCarrier(file, fact, pairs)
	}
	for i := range all {
		all[i].Chosen = all[i].Value == given
	}
	return all
}

func usualCarrier(file *jobfile.File, fact hygiene.Fact, pairs []sheets.BedVerdict) string {
	if len(pairs) == 0 {
		return "hygiene"
	}
	first := &pairs[0]
	if at := saidUnknown(file, first, fact); at != "" {
		return at
	}
	switch {
	case fact.Carrier() == hygiene.OfBed:
		return "bed:" + first.Bed
	case fact.Carrier() == hygiene.OfBatch && first.Batch != nil:
		return "batch:" + *first.Batch
	}
	return "hygiene"
}
