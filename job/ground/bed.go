package ground

import (
	"time"

	"aerosteep/quantity"
)

// Bed is a piece of ground that gets tea: a bed, a tunnel, a block of trees.
type Bed struct {
	Name     string
	Site     string
	Area     *quantity.Area // nil where nothing was said of it
	Crop     string
	Stage    Stage
	Trees    int            // 0 where it is no orchard
	Corners  []Corner       // in walking order; nil where it was not walked
	Landmark string         // by which one knows the place
	Gate     string         // the way in
	KeepOff  []string       // well, pond, drain, hives, open food, what will be eaten
	Every    *quantity.Span // from one application to the next
	First    *time.Time     // of the season, midnight UTC of the date
	Last     *time.Time
}

// Stage is how far a crop is.
type Stage string

// The stages of growth.
const (
	Establishing Stage = "establishing"
	Vegetative   Stage = "vegetative"
	Flowering    Stage = "flowering"
	Fruiting     Stage = "fruiting"
	Dormant      Stage = "dormant"
	BareGround   Stage = "bare"
)

// Stages lists them through the year.
var Stages = []string{"establishing", "vegetative", "flowering", "fruiting", "dormant", "bare"}
