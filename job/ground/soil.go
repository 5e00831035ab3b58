package ground

import "aerosteep/quantity"

// Texture is one of the twelve soil textures of the USDA triangle.
type Texture string

// Soil is how much water a texture holds and how fast it takes it in once
// wet. Soils of one texture vary threefold.
type Soil struct {
	Texture       Texture
	FieldCapacity float64 // percent of dry mass
	WiltingPoint  float64 // percent of dry mass
	Bulk          quantity.Density
	FinalIntake   quantity.DepthRate
}

// Soils are the textures from coarse to fine.
//
// Source: New Mexico State University, irrigation scheduling soil table.
var Soils = []Soil{
	{"sand", 9.1, 3.9, 1.627, 95.3618},
	{"loamy-sand", 11.6, 5.1, 1.584, 62.0929},
	{"sandy-loam", 13.9, 6.2, 1.533, 26.9116},
	{"loam", 22.3, 10.2, 1.395, 10.3354},
	{"silt-loam", 27.6, 12.5, 1.278, 5.12878},
	{"silt", 33.2, 14.9, 1.156, 4.41557},
	{"clay-loam", 26.4, 12.5, 1.354, 4.69487},
	{"sandy-clay-loam", 20.0, 9.5, 1.471, 12.586},
	{"silty-clay-loam", 32.1, 15.1, 1.239, 2.56399},
	{"sandy-clay", 23.1, 11.3, 1.444, 6.37784},
	{"silty-clay", 31.2, 15.0, 1.279, 1.77922},
	{"clay", 35.1, 17.2, 1.262, 1.92746},
}

// FindSoil looks a texture up.
func FindSoil(t Texture) (Soil, bool) {
	for _, s := range Soils {
		if s.Texture == t {
			return s, true
		}
	}
	return Soil{}, false
}

// AvailableWater is the water that plants can take from the soil.
//
//	(field capacity - wilting point) x 10 x bulk density, mm/m
func (s Soil) AvailableWater() quantity.WaterHolding {
	return quantity.WaterHolding((s.FieldCapacity - s.WiltingPoint) * 10 * s.Bulk.GramsPerMillilitre())
}
