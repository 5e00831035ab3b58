// Package growth holds what lives in a brew: processes and components as a
// table whose oxygen demand and nitrogen close, growth on food, its response
// to temperature, grazing, and the living model that a forecast runs.
package growth
