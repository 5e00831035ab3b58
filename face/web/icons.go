package web

import "html/template"

// icons are our own, drawn from the things themselves on a field of 24 units:
// the inside of an svg element by name. A new one is looked at at 22 px in the
// night look before it is kept.
var icons = map[string]template.HTML{
	"today":     `<path d="M3 17h18M6.5 17a5.5 5.5 0 0 1 11 0M12 4v3.5M4.6 8.6l2 2M19.4 8.6l-2 2M8 21h8"/>`,
	"ground":    `<path d="M2 13h20M4 17.5c3-2 5-2 8 0s5 2 8 0M4 21.5c3-2 5-2 8 0s5 2 8 0M12 13V7M12 8c-3.5 0-5-1.6-5-4.5C10.5 3.5 12 5 12 8zM12 9.5c0-2.5 1.5-4 4.5-4 0 2.5-1.5 4-4.5 4z"/>`,
	"batches":   `<path d="M5 3v15.5a2.5 2.5 0 0 0 2.5 2.5h9a2.5 2.5 0 0 0 2.5-2.5V3M5 8.5h14"/><circle cx="9.5" cy="16.5" r="1.6"/><circle cx="14" cy="13" r="1.6"/>`,
	"rig":       `<path d="M3 12h11v8H3zM8.5 12V7M5.5 7h6M14 16h3.5a3 3 0 0 0 3-3V8a3 3 0 0 0-6 0M6.5 16h4"/>`,
	"records":   `<path d="M6 3h12v18H6zM6 3v18M9.5 8h5M9.5 12h5M9.5 16h2.5M3.5 7H6M3.5 12H6M3.5 17H6"/>`,
	"well":      `<path d="M3 20h18"/><circle cx="9" cy="14" r="3.2"/><circle cx="15.5" cy="8.5" r="2.6"/><circle cx="9.5" cy="4.5" r="1.6"/>`,
	"near":      `<path d="M2.5 20h19" stroke-dasharray="4.5 2.75"/><circle cx="12" cy="11" r="5.5"/>`,
	"under":     `<path d="M3 5h18M12 9v8M8.5 14l3.5 3.5 3.5-3.5" stroke-width="2.8"/><path d="M3 21.5h18"/>`,
	"blind":     `<circle cx="12" cy="12" r="8" stroke-dasharray="3 3.3"/><path d="M8.5 12h7"/>`,
	"doubt":     `<path d="M4 9h16M4 15h16M16 4L8 20"/>`,
	"drop":      `<path d="M12 3c3.5 4.5 6 7.5 6 11a6 6 0 0 1-12 0c0-3.5 2.5-6.5 6-11zM12 17a3 3 0 0 1-3-3"/>`,
	"pen":       `<path d="M4 20l1-4.5L16.5 4 20 7.5 8.5 19zM14 6.5l3.5 3.5M12 20h8"/>`,
	"food":      `<path d="M3 9h12a6 6 0 0 1-12 0zM15 9l6-5.5M6 18.5v1.5M9 19.5V21M12 18.5v1.5"/>`,
	"bag":       `<path d="M8 5h8M9 5c0 3-4 6-4 11a4 4 0 0 0 4 4h6a4 4 0 0 0 4-4c0-5-4-8-4-11M9 15h.01M12 12.5h.01M15 15.5h.01"/>`,
	"flag":      `<path d="M6 21V4M6 5h11l-2.5 3.5L17 12H6"/>`,
	"moon":      `<path d="M19 14.5A8 8 0 0 1 9.5 5a8 8 0 1 0 9.5 9.5z"/>`,
	"next":      `<path d="M9 5l7 7-7 7"/>`,
	"back":      `<path d="M15 5l-7 7 7 7"/>`,
	"close":     `<path d="M5 5l14 14M19 5L5 19"/>`,
	"yes":       `<path d="M4 12.5l5.5 5.5L20 6.5"/>`,
	"no":        `<circle cx="12" cy="12" r="9"/><path d="M5.8 5.8l12.4 12.4"/>`,
	"bell":      `<path d="M6 17V11a6 6 0 0 1 12 0v6l1.5 1.5h-15zM10 21h4M12 3v2"/>`,
	"instep":    `<path d="M3 12.5c3-5 6-5 9 0s6 5 9 0"/>`,
	"no-signal": `<path d="M4 18v2M9 14v6M14 10v10M19 6v14"/><path d="M3 4l18 17" stroke-width="2.6"/>`,
	"kept":      `<path d="M6 3h12v18H6zM10 18h4M9 9.5l2.2 2.5L15 7.5"/>`,
	"erase":     `<path d="M9 5h11v14H9l-6-7zM12 9.5l5 5M17 9.5l-5 5"/>`,
	"brush":     `<path d="M14 3l7 7-3.5 1.5-5-5zM12.5 6.5L5 17c-.8 1.2-.5 2.5.3 3.3s2.1 1 3.2.2L17.5 11.5"/>`,
	"strain":    `<path d="M4 5h16l-3 8H7zM9 16v2M12 16v4M15 16v2M9 8h.01M12 9.5h.01M15 8h.01"/>`,
	"tap":       `<path d="M3 9h9a5 5 0 0 1 5 5v1M14 15h6M7 9V5M4 5h6M17 19v2"/>`,
	"air":       `<path d="M4 8h10a2.5 2.5 0 1 0-2.5-2.5M4 12h14a3 3 0 1 1-3 3M4 16h6a2.5 2.5 0 1 1-2.5 2.5"/>`,
	"cool":      `<path d="M12 3v18M4.5 7.5l15 9M19.5 7.5l-15 9M9.5 4.5L12 7l2.5-2.5M9.5 19.5L12 17l2.5 2.5"/>`,
	"clock":     `<circle cx="12" cy="12" r="9"/><path d="M12 7v5.5l3.5 2"/>`,
	"calc":      `<path d="M4 20V4M4 20h16M7 16c3 0 4-9 12-10"/>`,
	"lens":      `<circle cx="10.5" cy="10.5" r="6.5"/><path d="M15.5 15.5L21 21M8 10.5h.01M11.5 9h.01M11 12.5h.01"/>`,
	"print":     `<path d="M7 8V3h10v5M7 17H4V9h16v8h-3M7 14h10v7H7z"/>`,
	"plan":      `<path d="M3 6h7v4H3zM12 6h6v4h-6zM8 14h10v4H8zM3 21h18"/>`,
}

// icon draws one; it always stands beside a word, so it is hidden from screen
// readers.
func icon(name string) template.HTML {
	return `<svg class="icon" viewBox="0 0 24 24" aria-hidden="true">` + icons[name] + `</svg>`
}
