package html

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/paper"
)

// sample is an invented paper with a block of every kind, and enough of each to fill pages.
func sample() *paper.Document {
	return &paper.Document{
		Title: "Papers for the gas fitter", Subject: "Sorrel, a bus (invented)", Language: "en-GB", Made: "2026-11-25", Program: "lowvent test",
		Foot:     "Prepared by the owner from tape and plates. Not inspected. Not a certificate.",
		Enclosed: []paper.Enclosure{{Name: "sorrel.json", About: "the layout that this was made from", Data: []byte("{}\n")}},
		Parts: []paper.Part{
			{ID: "fitter", Title: "For the licensed fitter", Sections: []paper.Section{first(), plates(), testSheet()}},
			{ID: "owner", Title: "For the owner", Sections: []paper.Section{drawings(), findings(), {ID: "blank", Title: "Notes", NewPage: true, Blocks: []paper.Block{&paper.Lines{Label: "What was found", Count: 6}}}}},
		},
	}
}

func first() paper.Section {
	return paper.Section{ID: "first", Title: "Before you begin", NewPage: true, Blocks: []paper.Block{
		&paper.Box{Blocks: []paper.Block{
			&paper.Heading{Word: "DANGER", Text: "Gas is connected now"},
			&paper.Para{Text: "Only a licensed person may cut, join, connect, convert, test or open what carries gas.", Strong: true},
			&paper.List{Items: []string{"The cylinder valve is shut.", "Nobody sleeps in the bus."}, Boxes: true},
		}},
		&paper.Pairs{Rows: []paper.Pair{{Label: "Gas now", Value: "connected"}, {Label: "Licence number", Blank: true}, {Label: "Access", Value: "by the rear door, which opens outward"}}},
		&paper.List{Ordered: true, Items: []string{"Isolate.", "Look.", "Test."}},
		&paper.List{Ordered: true, Boxes: true, Items: []string{"Strength.", "Tightness."}},
		&paper.Lines{Label: "Who was here", Count: 2},
	}}
}

func plates() paper.Section {
	t := &paper.Table{Caption: "Data plates", Small: true, Columns: []paper.Column{
		{Title: "Appliance", Head: true, Share: 2}, {Title: "Maker's plate: kind of gas", Share: 2}, {Title: "Pressure", Share: 1.5},
		{Title: "Input", Share: 1.5}, {Title: "As the builder read it", Share: 3}, {Title: "", Share: 1}, {Title: "Read again", Share: 2}}}
	for n := range 40 {
		t.Rows = append(t.Rows, []paper.Cell{{Text: fmt.Sprintf("appliance-%d", n)}, {Blank: true}, {Blank: true}, {Text: "kW", Blank: true},
			{Text: "8,000 BTU/h at 11 inH2O"}, {Word: "NOTICE"}, {Text: "/appliances/hob/burners/rear-right/dropOut", Strong: true}})
	}
	return paper.Section{ID: "plates", Title: "Plates", Blocks: []paper.Block{&paper.Para{Text: "Copy from the plate, not from this paper."}, t}}
}

func testSheet() paper.Section {
	return paper.Section{ID: "tests", Title: "Tests, in the order of work", NewPage: true, Blocks: []paper.Block{
		&paper.Table{Columns: []paper.Column{{Title: "Test", Head: true}, {Title: "Found"}}, Rows: [][]paper.Cell{
			{{Text: "Lock-up", Strong: true}, {Blank: true}}, {{Word: "WARNING", Text: "let-by"}, {Text: "none & <none>"}}, {{}, {Blank: true}}}},
		&paper.Table{Columns: []paper.Column{{}, {}}, Rows: [][]paper.Cell{{{Text: "a"}, {Text: "b"}}}}}}
}

func findings() paper.Section {
	s := paper.Section{ID: "findings", Title: "Findings"}
	for i, word := range []string{"DANGER", "WARNING", "CAUTION", "NOTICE", "TRIAL"} {
		s.Blocks = append(s.Blocks, &paper.Heading{Word: word, Text: fmt.Sprintf("Finding %d", i)},
			&paper.Para{Word: word, Text: strings.Repeat(fmt.Sprintf("A shelf hangs %d mm over the hob. ", 300+i), 12)},
			&paper.Para{Word: word})
	}
	s.Blocks = append(s.Blocks, crowd())
	return s
}

// crowd is a table with more columns than a sheet has room for.
func crowd() *paper.Table {
	t := &paper.Table{Caption: "More than fits", Small: true, Rows: [][]paper.Cell{nil}}
	for n := range 14 {
		t.Columns = append(t.Columns, paper.Column{Title: "Manufacturer", Share: float64(n)})
		t.Rows[0] = append(t.Rows[0], paper.Cell{Text: "incomprehensibly", Word: map[bool]string{true: "NOTICE"}[n == 0]})
	}
	return t
}

func drawings() paper.Section {
	plan := plan()
	return paper.Section{ID: "drawings", Title: "Drawings", Blocks: []paper.Block{
		&paper.Para{Text: "Measure the printed drawing before you trust its scale."},
		&paper.Picture{Drawing: plan}, &paper.Picture{Drawing: plan}}}
}

// plan is a drawing to scale, 180 mm wide, with marks of every kind.
func plan() *draw.Drawing {
	line := draw.Pen{Width: 0.35}
	return &draw.Drawing{ID: "plan", Title: "Plan", Alt: "The locker stands behind the hob.", Width: 180, Height: 90, Scale: 40,
		Marks: []draw.Mark{
			&draw.Path{Points: []draw.Point{{X: 1, Y: 1}, {X: 179, Y: 1}, {X: 179, Y: 89}, {X: 1, Y: 89}}, Closed: true, Pen: draw.Pen{Width: 0.7}},
			&draw.Group{Of: "/lockers/skirt", Label: "locker skirt", Marks: []draw.Mark{
				&draw.Path{Points: []draw.Point{{X: 10, Y: 10}, {X: 50, Y: 10}, {X: 50, Y: 40}, {X: 10, Y: 40}}, Closed: true, Pen: line, Fill: draw.Pale},
				&draw.Text{At: draw.Point{X: 30, Y: 25}, Size: 3, Anchor: draw.Middle, Bold: true, Content: "locker skirt"}}},
			&draw.Circle{Centre: draw.Point{X: 120, Y: 30}, Radius: 8, Pen: draw.Pen{Width: 0.25, Dash: draw.Dashed, Ink: draw.Grey}},
			&draw.Text{At: draw.Point{X: 5, Y: 80}, Size: 3.5, Content: "WESTMARK"},
			&draw.Text{At: draw.Point{X: 175, Y: 80}, Size: 3.5, Anchor: draw.End, Content: "EASTMARK"},
			&draw.Text{At: draw.Point{X: 172, Y: 60}, Size: 3, Turn: -90, Content: "80 cm"},
			&draw.Path{Points: []draw.Point{{X: 174, Y: 30}, {X: 174, Y: 62}}, Pen: draw.Pen{Width: 0.25, Dash: draw.DashDot}}},
		Key: []draw.Explained{{Marks: []draw.Mark{&draw.Path{Points: []draw.Point{{X: 0, Y: 3}, {X: 12, Y: 3}}, Pen: draw.Pen{Width: 0.25, Dash: draw.Dashed}}}, Means: "a hob's burner"},
			{Marks: []draw.Mark{&draw.Circle{Centre: draw.Point{X: 6, Y: 3}, Radius: 2, Fill: draw.Grey}}, Means: "a low vent"}},
		Spans: []draw.Span{{From: draw.Point{X: 174, Y: 30}, To: draw.Point{X: 174, Y: 62}, Metres: 0.8, Text: "80 cm", Check: "clearance.above", Subject: "/appliances/hob"},
			{From: draw.Point{X: 50, Y: 40}, To: draw.Point{X: 80, Y: 80}, Metres: 1.25, Text: "1.25 m"}}}
}

// written is the HTML of a document.
func written(t *testing.T, d *paper.Document) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, d); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
