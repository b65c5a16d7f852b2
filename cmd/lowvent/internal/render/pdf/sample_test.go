package pdf

import (
	"fmt"
	"strings"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/paper"
)

const prose = "The locker stands below the floor at the rear and opens to the outside only. Its vents were measured with a steel tape on both sides; the upper one is a louvre of 120 × 80 mm, of which 48 cm² are free, the lower one a hole of 60 mm in the floor, with a mesh of 3 mm."

// sample is an invented paper with every kind of block, long and short.
func sample() *paper.Document {
	return &paper.Document{
		Title: "Hand-off for the gas fitter: bus Teasel (invented)", Subject: "Propane installation of a converted bus, as its file states it",
		Language: "en", Made: "2026-11-25", Program: "lowvent 0.0",
		Foot:  "Prepared by the owner from tape and plates. Not inspected. Not a certificate. Keep the gas off until a licensed fitter has tested and signed.",
		Parts: []paper.Part{{ID: "fitter", Title: "For the fitter", Sections: fitterSections()}, {ID: "owner", Title: "For the owner", Sections: ownerSections()}},
		Enclosed: []paper.Enclosure{
			{Name: "teasel.json", About: "the layout that this was made from", Data: []byte("{\"name\": \"Teasel\"}\n")},
			{Name: "Maß und Zahl.txt", About: "an empty file (with a bracket)", Data: nil},
		},
	}
}

func fitterSections() []paper.Section {
	return []paper.Section{
		{ID: "first", Title: "Before anything else", Blocks: []paper.Block{
			&paper.Box{Blocks: []paper.Block{
				&paper.Para{Strong: true, Text: "In many places only a licensed person may cut, join, connect, convert, test or open gas pipe, hose or appliance."},
				&paper.Para{Text: "Nothing below is an instruction to do it. This is a check of a file; nothing was inspected. Local codes and the licensed gas fitter decide."},
			}},
			&paper.Pairs{Rows: []paper.Pair{
				{Label: "Gas now", Value: "The file says that gas is connected"}, {Label: "Dwelling", Value: "Road vehicle, 24 m³ of living space, two berths, ρ₀ = 1.9 kg/m³ at pₐ"},
				{Label: "Kind of licence", Blank: true}, {Label: "Fitter's name and number", Blank: true}, {Label: "Left at the dwelling", Value: "One cylinder, shut", Blank: true},
			}},
		}},
		{ID: "worst", Title: "The worst first", Blocks: []paper.Block{
			&paper.Heading{Word: "DANGER", Text: "The hob's burners have no flame guard"},
			&paper.Para{Text: prose + " " + prose},
			&paper.Para{Word: "WARNING", Text: "The low vent's free area is 28 cm² and 48 cm² are needed: " + prose},
			&paper.Para{Word: "CAUTION", Text: "The hose is of 2014, and nobody knows its rating."},
			&paper.Para{Word: "NOTICE", Text: "The regulator's plate can't be read."},
			&paper.Table{Caption: "Findings", Small: true, Columns: []paper.Column{{Title: "Word", Share: 14}, {Title: "Subject", Share: 20, Head: true}, {Title: "Found", Share: 22}, {Title: "Needed", Share: 22}, {Title: "Source", Share: 30}}, Rows: findings(26)},
		}},
		{ID: "tests", Title: "Test sheet", NewPage: true, Blocks: []paper.Block{
			&paper.Para{Text: "For the licensed fitter's use. Do not pressurise, do not drill jets."},
			&paper.Table{Caption: "In the order of work", Columns: []paper.Column{{Title: "Test", Share: 40, Head: true}, {Title: "Wanted", Share: 30}, {Title: "Read", Share: 20}, {Title: "Instrument, calibrated until", Share: 25}},
				Rows: [][]paper.Cell{
					{{Text: "Strength"}, {Text: "30 mbar for 5 min after the temperature has settled"}, {Blank: true}, {Blank: true}},
					{{Text: "Tightness, with the appliances' taps shut and the cylinder's valve shut"}, {Text: "No drop that can be read"}, {Text: "mbar", Blank: true}, {Blank: true}},
					{{Text: "Lock-up"}, {Text: "≤ 37 mbar"}, {Blank: true}, {Blank: true}},
					{{Text: "Running pressure, all on"}, {Text: "≥ 27 mbar", Strong: true}, {Blank: true}, {Blank: true}},
				}},
			&paper.Lines{Label: "What I could not see", Count: 3},
			&paper.List{Boxes: true, Items: []string{"Manuals of all appliances are at hand", "The lining at the rear is off, so that the run between " + strings.ToLower(prose) + " can be seen", "Nobody sleeps in the bus"}},
		}},
		{ID: "drawings", Title: "Drawings", Blocks: []paper.Block{
			&paper.Picture{Drawing: plan("plan", 120, 60)}, &paper.Picture{Drawing: plan("side", 240, 90)}, &paper.Picture{Drawing: plan("joints", 400, 150)},
		}},
	}
}

func ownerSections() []paper.Section {
	return []paper.Section{{ID: "todo", Title: "What to do", Blocks: []paper.Block{
		&paper.List{Ordered: true, Items: []string{"Keep the gas off.", prose, "Ask the fitter before you buy.", "Photograph the plate.", "e", "f", "g", "h", "i", "Say what is hidden."}},
		&paper.List{Items: []string{"a vent", "another vent with /a/very/long/path/that-has-no-space/in/it-" + strings.Repeat("abcdefghij", 20)}},
		&paper.Para{Strong: true, Text: "Result of this file check: nothing was inspected."},
	}}}
}

func findings(count int) [][]paper.Cell {
	words := []string{"DANGER", "WARNING", "CAUTION", "NOTICE"}
	var rows [][]paper.Cell
	for i := range count {
		rows = append(rows, []paper.Cell{
			{Word: words[i*4/count]}, {Text: fmt.Sprintf("locker skirt, vent %d", i+1)}, {Text: fmt.Sprintf("%d cm² ± 2 cm²", 20+i)}, {Text: "48 cm²"},
			{Text: "EN 1949:2021, 5.4.2, second-hand [/lockers/skirt/lowVents/" + fmt.Sprint(i) + "/gross]"},
		})
	}
	return rows
}

// plan is a drawing with every kind of mark.
func plan(id string, wide, high float64) *draw.Drawing {
	frame := []draw.Point{{X: 0.2, Y: 0.2}, {X: wide - 0.2, Y: 0.2}, {X: wide - 0.2, Y: high - 0.2}, {X: 0.2, Y: high - 0.2}}
	marks := []draw.Mark{
		&draw.Path{Points: frame, Closed: true, Pen: draw.Pen{Width: 0.4}},
		&draw.Group{Of: "/lockers/skirt", Label: "locker skirt", Marks: []draw.Mark{
			&draw.Path{Points: []draw.Point{{X: 10, Y: 10}, {X: 40, Y: 10}, {X: 40, Y: 40}, {X: 10, Y: 40}}, Closed: true, Fill: draw.Pale, Pen: draw.Pen{Width: 0.3}},
			&draw.Circle{Centre: draw.Point{X: 25, Y: 25}, Radius: 6, Fill: draw.White, Pen: draw.Pen{Width: 0.3}},
			&draw.Text{At: draw.Point{X: 25, Y: 47}, Size: 3, Anchor: draw.Middle, Content: "locker skirt"},
		}},
		&draw.Text{At: draw.Point{X: 8, Y: 40}, Size: 3, Turn: -90, Content: "300 mm", Bold: true},
		&draw.Text{At: draw.Point{X: wide - 3, Y: high - 3}, Size: 3, Anchor: draw.End, Content: "rear"},
	}
	for i, dash := range []draw.Dash{draw.Solid, draw.Dashed, draw.Dotted, draw.DashDot, draw.LongDash} {
		y := 15 + 6*float64(i)
		marks = append(marks, &draw.Path{Points: []draw.Point{{X: 50, Y: y}, {X: wide - 10, Y: y}}, Pen: draw.Pen{Width: 0.35, Dash: dash}})
	}
	return &draw.Drawing{ID: id, Title: "The bus from above, " + id, Alt: "The locker at the left, five lines.", Width: wide, Height: high, Scale: 50, Marks: marks, Key: legend()}
}

func legend() []draw.Explained {
	var key []draw.Explained
	for i, dash := range []draw.Dash{draw.Solid, draw.Dashed, draw.Dotted, draw.DashDot, draw.LongDash} {
		key = append(key, draw.Explained{Means: []string{"high pressure", "medium pressure", "low pressure", "a run that can't be seen without taking off the lining", "dimension"}[i],
			Marks: []draw.Mark{&draw.Path{Points: []draw.Point{{X: 0, Y: 3}, {X: 12, Y: 3}}, Pen: draw.Pen{Width: 0.35, Dash: dash}}}})
	}
	return key
}
