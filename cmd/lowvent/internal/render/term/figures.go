package term

import (
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// figures lists what was computed, whether or not a check reads it.
func (p *page) figures(f *report.FileReport) {
	if len(f.Figures) == 0 {
		return
	}
	const room = 30 // for the value, at least
	p.heading("FIGURES, as good as what the file states")
	column := 0
	for i := range f.Figures {
		column = max(column, text.Width(figureName(&f.Figures[i]))+2)
	}
	column = min(column, p.Width()-room)
	for i := range f.Figures {
		p.Row(2, figureName(&f.Figures[i]), column, figureValue(&f.Figures[i]))
	}
}

func figureName(f *report.Figure) string {
	if f.Subject == "" {
		return f.Title
	}
	return f.Label + ": " + f.Title
}

func figureValue(f *report.Figure) string {
	if f.Value == nil {
		if lack := saying.Lacking(f.Missing); lack != "" {
			return "missing " + lack
		}
		return strings.TrimSpace("not known " + f.Note)
	}
	if f.Note != "" {
		return f.Value.Text + ", " + f.Note
	}
	return f.Value.Text
}
