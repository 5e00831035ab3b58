package ground

import (
	"math"

	"aerosteep/quantity"
)

// earthRadius is the mean radius of the earth, m (IUGG: 6,371,009).
const earthRadius = 6371009.0

// OffBed is how far a position lies from a bed: 0 within it, else to its nearest
// edge. The bed is laid out flat around the position,
//
//	x = R cos(latitude) Δlongitude, y = R Δlatitude
//
// Range: within 10 km, good to 0.5 %; a phone's position is off by more.
func OffBed(corners []Corner, at Corner) quantity.Length {
	flat := make([][2]float64, len(corners))
	for i, c := range corners {
		flat[i] = [2]float64{
			earthRadius * math.Cos(at.Latitude*math.Pi/180) * math.Remainder(c.Longitude-at.Longitude, 360) * math.Pi / 180,
			earthRadius * (c.Latitude - at.Latitude) * math.Pi / 180,
		}
	}
	nearest, inside := math.Inf(1), false
	for i := range flat {
		a, b := flat[i], flat[(i+1)%len(flat)]
		nearest = min(nearest, toSide(a, b))
		if (a[1] > 0) != (b[1] > 0) && a[0]-a[1]*(b[0]-a[0])/(b[1]-a[1]) > 0 {
			inside = !inside // a ray to the east crosses this side
		}
	}
	if inside {
		return 0
	}
	return quantity.Metres(nearest)
}

// toSide is the distance of the origin to the side between two points.
func toSide(a, b [2]float64) float64 {
	dx, dy := b[0]-a[0], b[1]-a[1]
	share := 0.0
	if length := dx*dx + dy*dy; length > 0 {
		share = math.Max(0, math.Min(1, -(a[0]*dx+a[1]*dy)/length))
	}
	return math.Hypot(a[0]+share*dx, a[1]+share*dy)
}
