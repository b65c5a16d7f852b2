package term

import (
	"fmt"
	"slices"
	"strings"

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
		if lack := Lacking(f.Missing); lack != "" {
			return "missing " + lack
		}
		return strings.TrimSpace("not known " + f.Note)
	}
	if f.Note != "" {
		return f.Value.Text + ", " + f.Note
	}
	return f.Value.Text
}

// Lacking names what is missing for a figure: the first few pointers.
func Lacking(missing []report.Missing) string {
	const most = 2
	var names []string
	for _, m := range missing {
		name := m.What
		if strings.HasSuffix(m.Place.Pointer, "/"+m.What) || len(name) > 60 {
			name = m.Place.Pointer
		}
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	if len(names) > most {
		return fmt.Sprintf("%s and %d more", strings.Join(names[:most], ", "), len(names)-most)
	}
	return strings.Join(names, ", ")
}
