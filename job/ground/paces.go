package ground

import "aerosteep/quantity"

// PacedOver is the length over which somebody counts their own paces once.
const PacedOver = 20 * quantity.Length(1)

// Paced is a length walked in paces by somebody whose paces over 20 m were
// counted.
//
//	length = 20 m x paces / paces over 20 m
//
// Both counts are over 0. A practised pace is good to about 2 to 5 % on level
// ground (common practice). Source: plane geometry.
func Paced(paces, over20 float64) quantity.Length {
	return quantity.Length(float64(PacedOver) * paces / over20)
}
