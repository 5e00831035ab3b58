package holding

import (
	"encoding/json"

	"aerosteep/record/journal"
)

// LotOf is the lot that an entry names, "" where it names none.
func LotOf(k journal.Kept) string {
	var body struct {
		Lot string `json:"lot"`
	}
	_ = json.Unmarshal(k.Body, &body) // a lot of another type is none
	return body.Lot
}
