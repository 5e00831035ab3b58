package weather

import (
	"math"
	"time"
)

// radians and degrees turn one into the other.
const (
	radians = math.Pi / 180
	degrees = 180 / math.Pi
)

// julianCenturies counts from noon of 1 January 2000.
func julianCenturies(at time.Time) float64 {
	days := float64(at.Unix()-946728000)/86400 + float64(at.Nanosecond())/86400e9
	return days / 36525
}

// sun is where the sun stands as seen from the middle of the earth.
type sun struct {
	declination    float64 // radians
	equationOfTime float64 // minutes by which a sundial is ahead of the clock
}

// sunAt works out the sun's declination and the equation of time.
//
// Range: 1901 to 2099, declination to about 0.01°. Source: NOAA Solar
// Calculator equations, after Meeus 1998, Astronomical Algorithms, chapter 25.
func sunAt(at time.Time) sun {
	T := julianCenturies(at)
	meanLongitude := (280.46646 + T*(36000.76983+T*0.0003032)) * radians
	meanAnomaly := (357.52911 + T*(35999.05029-T*0.0001537)) * radians
	eccentricity := 0.016708634 - T*(0.000042037+T*0.0000001267)
	centre := ((1.914602-T*(0.004817+T*0.000014))*math.Sin(meanAnomaly) +
		(0.019993-T*0.000101)*math.Sin(2*meanAnomaly) + 0.000289*math.Sin(3*meanAnomaly)) * radians
	node := (125.04 - 1934.136*T) * radians
	apparent := meanLongitude + centre - (0.00569+0.00478*math.Sin(node))*radians
	obliquity := (23.4392911 - T*(0.0130042+T*(1.64e-7-T*5.04e-7)) + 0.00256*math.Cos(node)) * radians
	y := math.Tan(obliquity / 2)
	y *= y
	equation := y*math.Sin(2*meanLongitude) - 2*eccentricity*math.Sin(meanAnomaly) +
		4*eccentricity*y*math.Sin(meanAnomaly)*math.Cos(2*meanLongitude) -
		0.5*y*y*math.Sin(4*meanLongitude) - 1.25*eccentricity*eccentricity*math.Sin(2*meanAnomaly)
	return sun{
		declination:    math.Asin(math.Sin(obliquity) * math.Sin(apparent)),
		equationOfTime: 4 * degrees * equation,
	}
}

// hourAngle is how far the sun is past the meridian of a place, -180° to 180°.
func (s sun) hourAngle(at time.Time, p Place) float64 {
	_, fraction := math.Modf(float64(at.Unix())/86400 + float64(at.Nanosecond())/86400e9)
	return math.Remainder(fraction*360-180+s.equationOfTime/4+p.Longitude, 360)
}

// SunPosition is the sun's elevation above the horizon, without refraction,
// and its azimuth clockwise from north, both in degrees.
//
//	sin(elevation) = sin(lat) sin(dec) + cos(lat) cos(dec) cos(hour angle)
//
// Within 0.02° of the NREL algorithm. Source: as sunAt.
func SunPosition(at time.Time, p Place) (elevation, azimuth float64) {
	s := sunAt(at)
	h, latitude := s.hourAngle(at, p)*radians, p.Latitude*radians
	sinDec, cosDec := math.Sincos(s.declination)
	sinLat, cosLat := math.Sincos(latitude)
	up := sinLat*sinDec + cosLat*cosDec*math.Cos(h)
	east := -cosDec * math.Sin(h)
	north := cosLat*sinDec - sinLat*cosDec*math.Cos(h)
	elevation = math.Atan2(up, math.Hypot(east, north)) * degrees
	azimuth = math.Mod(math.Atan2(east, north)*degrees+360, 360)
	return elevation, azimuth
}

func elevation(at time.Time, p Place) float64 {
	e, _ := SunPosition(at, p)
	return e
}

// The heights of the sun's centre that begin and end a day.
const (
	horizon = -0.833 // 34' of refraction and 16' of radius
	civil   = -6.0
)

// ClearSkyUV is the ultraviolet index under a clear sky near sea level; 0 when
// the sun is down.
//
//	12.5 sin(elevation)^2.42 (ozone/300)^-1.23
//
// Source: Madronich 2007, Photochem. Photobiol. 83, 1537-1540.
func ClearSkyUV(elevation, ozone float64) float64 {
	if elevation <= 0 {
		return 0
	}
	return 12.5 * math.Pow(math.Sin(elevation*radians), 2.42) * math.Pow(ozone/300, -1.23)
}
