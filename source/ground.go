package source

// Sources of what is said about ground and vessels.
var (
	PlaneGeometry = cite("plane-geometry", "Plane geometry: areas in closed form, Heron's formula", "textbook")
	SolidGeometry = cite("solid-geometry", "Solid geometry: contents of cylinder, cone, box, frustum and circular segment in closed form", "textbook, checked by integrating the cross-section")
	Karney2013    = cite("karney-2013", "Karney 2013, Algorithms for geodesics, J. Geodesy 87, 43-55", "doi:10.1007/s00190-012-0578-z; areas on the WGS84 ellipsoid")
	RFC7946       = cite("rfc-7946", "RFC 7946, The GeoJSON Format", "https://www.rfc-editor.org/rfc/rfc7946")
	NMSUSoil      = cite("nmsu-soil", "New Mexico State University, irrigation scheduling soil table",
		"weather.nmsu.edu/models/irrsch/soiltype.html: field capacity, wilting point, density, final intake")
	LumpedBalance = cite("talati-1988-sedory-1992", "Talati 1988 and Sedory 1992, heat balances of aeration tanks (University of California, Los Angeles)",
		"the terms; convection stands in the heat loss of walls and surface")
	ASHRAESurface = cite("ashrae-surface", "ASHRAE Handbook, HVAC Applications: evaporation from a water surface (Carrier)", "coefficients from memory")
)
