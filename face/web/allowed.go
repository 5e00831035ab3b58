package web

import (
	"net/http"
	"slices"

	"aerosteep/job/hygiene"
	"aerosteep/job/jobfile"
	"aerosteep/wording"
	sheets "aerosteep/worksheet/hygiene"
)

// allowedView is what may go where: every pair of bed and batch with verdict,
// number, paragraph and the nearest way that the same rules allow.
type allowedView struct {
	Say      string
	Rows     []verdictRow
	More     string // where not all pairs are shown
	Ask      *askNext
	Unknown  []unknownFact
	Letters  bool
	Early    []string
	Cautions []string
}

type verdictRow struct {
	Class, Icon, Title, Say string
	Why                     []citedLine
	Sets                    []setCell
	Ways                    []string
	Card                    string // address of the card at the bed
}

type citedLine struct{ Text, Cite string }

// setCell is what one rule set says, beside the others.
type setCell struct{ Name, Says, Force string }

// askNext is the first question to answer, and how many pairs it serves.
type askNext struct{ Link, Text, Serves string }

// unknownFact is a fact of which somebody said that nobody here knows it.
type unknownFact struct{ Text, Link string }

// mostPairs is how many pairs one page shows: a page is read, not searched.
const mostPairs = 60

// allowed shows the verdicts of a batch, of a bed, or of the whole ground.
func (s *Site) allowed(w http.ResponseWriter, r *http.Request) {
	batch, bed := r.PathValue("name"), r.URL.Query().Get("bed")
	if s.Holding == nil || batch != "" && !s.knowsBatch(batch) {
		s.nothingHere(w, r)
		return
	}
	p := s.page(w, r, "ground")
	p.Back, p.BackTo = "/ground", p.Say("web.place.ground")
	p.Heading = p.Say("web.allowed.title")
	if batch != "" {
		p.Place, p.Back, p.BackTo, p.Under = "batches", "/batches/"+batch, batch, batch
	}
	p.Title = p.Heading
	view := &allowedView{}
	p.View = view
	view.fill(p, s.held(), batch, bed)
	for _, early := range s.early(r) {
		view.Early = append(view.Early, p.Text(early.Text()))
	}
	s.show(w, http.StatusOK, "allowed", p)
}

func (s *Site) knowsBatch(name string) bool {
	_, known := s.Holding.Batch(name)
	return known
}

func (v *allowedView) fill(p *page, file *jobfile.File, batch, bed string) {
	verdicts := judged(file, batch, bed)
	count := map[hygiene.Allowed]int{}
	for _, one := range verdicts {
		count[one.Allowed]++
	}
	v.Say = p.Say("web.allowed.none")
	if len(verdicts) > 0 {
		v.Say = p.Say("web.allowed.say", "n", len(verdicts), "yes", count[hygiene.Yes], "wait", count[hygiene.WaitUntil], "no", count[hygiene.No], "ask", count[hygiene.Ask])
	}
	slices.SortStableFunc(verdicts, func(a, b sheets.BedVerdict) int { return urgency[a.Allowed] - urgency[b.Allowed] })
	if len(verdicts) > mostPairs {
		v.More = p.Say("web.allowed.more", "shown", mostPairs, "n", len(verdicts))
	}
	for i := range verdicts[:min(len(verdicts), mostPairs)] {
		v.Rows = append(v.Rows, p.verdict(&verdicts[i]))
	}
	v.Ask = p.firstQuestion(file, batch)
	v.Unknown = p.unknownFacts(file, batch)
	v.Letters = count[hygiene.Ask] > 0
	for _, caution := range append(sheets.Cautions(), wording.Say("hygiene.caution.dust"), wording.Say("hygiene.caution.kitchen")) {
		v.Cautions = append(v.Cautions, p.Text(caution))
	}
}

// urgency puts first what must not happen, then what has to be asked.
var urgency = map[hygiene.Allowed]int{hygiene.No: 0, hygiene.Ask: 1, hygiene.WaitUntil: 2, hygiene.Yes: 3}

// judged are the verdicts on the meetings of a file; "" is any batch or bed.
func judged(file *jobfile.File, batch, bed string) []sheets.BedVerdict {
	if file == nil {
		return nil
	}
	meetings, problems := file.Meetings()
	if len(problems) > 0 {
		return nil // a holding whose facts cannot be read was refused at loading
	}
	return sheets.Judged(slices.DeleteFunc(meetings, func(m jobfile.Meeting) bool {
		return bed != "" && m.Bed != bed || batch != "" && (m.Batch == nil || *m.Batch != batch)
	}))
}

// verdict is one pair as the page tells it: verdict, reason, number, citation,
// and the way that is allowed, in that order.
func (p *page) verdict(v *sheets.BedVerdict) verdictRow {
	row := verdictRow{Class: string(v.Allowed), Icon: allowedIcons[v.Allowed], Title: p.Text(v.Title()), Say: p.Text(sheets.Sentence(v.Verdict))}
	for _, why := range v.Why {
		row.Why = append(row.Why, citedLine{p.Text(why.Text), p.Say("web.allowed.cite", "set", p.Say("hygiene.set."+why.Set), "rule", why.Citation, "force", p.Say("hygiene.force."+why.Force), "read", p.read(why.Read))})
	}
	for i := range v.Sets {
		row.Sets = append(row.Sets, p.setCell(&v.Sets[i]))
	}
	for _, way := range v.Ruling().Nearest {
		row.Ways = append(row.Ways, p.Text(way.Text))
	}
	if v.Allowed == hygiene.WaitUntil {
		row.Card = v.Bed
	}
	return row
}

var allowedIcons = map[hygiene.Allowed]string{hygiene.Yes: "yes", hygiene.No: "no", hygiene.WaitUntil: "clock", hygiene.Ask: "doubt"}

// read says when a paragraph was last read.
func (p *page) read(when string) string {
	if when == "memory" {
		return p.Say("web.allowed.from-memory")
	}
	return p.Say("web.allowed.read", "day", when)
}

func (p *page) setCell(s *hygiene.SetVerdict) setCell {
	cell := setCell{Name: p.Say("hygiene.set." + s.Name), Force: p.Say("hygiene.force." + s.Force)}
	switch {
	case s.Applies == nil:
		cell.Says = p.Say("web.allowed.set.open")
	case !*s.Applies:
		cell.Says = p.Say("web.allowed.set.off")
	case s.Allowed == hygiene.WaitUntil && s.IntervalDays != nil:
		cell.Says = p.Say("web.allowed.set.wait", "days", *s.IntervalDays)
	default:
		cell.Says = p.Say("web.allowed.set." + string(s.Allowed))
	}
	return cell
}
