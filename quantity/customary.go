package quantity

// US customary units that worksheets and tables are stated in.
func Inches(l float64) Length { return Length(l * metresPerInch) }
func Feet(l float64) Length   { return Length(l * metresPerFoot) }

// SquareFeet and Acres build an area; the acre is the international one.
func SquareFeet(a float64) Area { return Area(a * metresPerFoot * metresPerFoot) }
func Acres(a float64) Area      { return Area(a * squareMetresPerAcre) }

// MilesPerHour builds a speed, USGallonsPerMinute a flow.
func MilesPerHour(s float64) Speed      { return Speed(s * metresPerMile / 3600) }
func USGallonsPerMinute(f float64) Flow { return Flow(f * litresPerUSGallon) }

// USGallonsPerAcre builds a dose.
func USGallonsPerAcre(d float64) Dose { return Dose(d * litresPerUSGallon / squareMetresPerAcre) }
