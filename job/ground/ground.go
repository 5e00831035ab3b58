// Package ground is where tea goes: sites with their clock and hours of work,
// and beds with their area, crop and stage.
package ground
