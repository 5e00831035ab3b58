package quantity

// Dimension is what a unit measures, as whole powers of length, mass, time,
// temperature and electrical conductance.
type Dimension struct{ Length, Mass, Time, Temperature, Conductance int8 }

func (d Dimension) plus(e Dimension, sign int8) Dimension {
	return Dimension{
		d.Length + sign*e.Length, d.Mass + sign*e.Mass, d.Time + sign*e.Time,
		d.Temperature + sign*e.Temperature, d.Conductance + sign*e.Conductance,
	}
}

// The dimensions that have a type or a kind of their own.
var (
	none          = Dimension{}
	length        = Dimension{Length: 1}
	area          = Dimension{Length: 2}
	volume        = Dimension{Length: 3}
	mass          = Dimension{Mass: 1}
	span          = Dimension{Time: 1}
	temperature   = Dimension{Temperature: 1}
	pressure      = Dimension{Length: -1, Mass: 1, Time: -2}
	speed         = Dimension{Length: 1, Time: -1}
	flow          = Dimension{Length: 3, Time: -1}
	energy        = Dimension{Length: 2, Mass: 1, Time: -2}
	power         = Dimension{Length: 2, Mass: 1, Time: -3}
	massPerVolume = Dimension{Length: -3, Mass: 1}
	massPerArea   = Dimension{Length: -2, Mass: 1}
	conductivity  = Dimension{Length: -1, Conductance: 1}
	conductance   = Dimension{Conductance: 1}
	perTime       = Dimension{Time: -1}
	uptake        = Dimension{Length: -3, Mass: 1, Time: -1}
	heatLoss      = Dimension{Length: 2, Mass: 1, Time: -3, Temperature: -1}
)

// kindNames are the words that convert answers with, by dimension. Depth of
// water and volume per area are one dimension; the spelling tells them apart
// (see Unit.kind).
var kindNames = map[Dimension]string{
	length: "length", area: "area", volume: "volume", mass: "mass",
	pressure: "pressure", speed: "speed", flow: "flow", span: "time",
	energy: "energy", power: "power", massPerVolume: "concentration",
	massPerArea: "mass-per-area", conductivity: "conductivity",
	temperature: "temperature",
}
