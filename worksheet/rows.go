package worksheet

import (
	"aerosteep/fault"
	"aerosteep/table"
	"aerosteep/wording"
)

// NoteRows says on standard error which columns of a file were not used, and
// there and as a caution how many bad rows were left out.
func (r *Result) NoteRows(t *table.Table, skipped fault.List) {
	if len(t.Unknown) > 0 {
		r.Notices = append(r.Notices, wording.Say("worksheet.columns-ignored", wording.Places{"file": t.Name, "columns": t.Unknown}))
	}
	if len(skipped) == 0 {
		return
	}
	places := wording.Places{"n": len(skipped), "line": skipped[0].Line}
	r.Notices = append(r.Notices, wording.Say("worksheet.rows-skipped", places))
	r.Caution("worksheet.rows-skipped", places)
}
