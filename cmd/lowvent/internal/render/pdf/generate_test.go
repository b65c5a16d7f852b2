package pdf

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/paper"
)

// anyText draws what a file could bring onto paper: words, words wider than a column,
// signs that the letters lack, controls, bytes that are no text, nothing.
func anyText(longest int) *rapid.Generator[string] {
	piece := rapid.OneOf(
		rapid.StringMatching(`[a-zA-Z0-9]{1,12}`),
		rapid.StringMatching(`[A-Z]{1,4}[0-9]{0,3}`),
		rapid.StringMatching(`[a-zW/.-]{30,160}`),
		rapid.SampledFrom([]string{"\n", "\t", "\u00a0", "ρ₀·pₐ", "5⅓", "廚房", "e\u0301", "\x1b[31m", "\u202e", "\xff", "𝄞", "(a)\\", "?", "-"}),
	)
	return rapid.Custom(func(t *rapid.T) string {
		return strings.Join(rapid.SliceOfN(piece, 0, longest).Draw(t, "words"), " ")
	})
}

var anyWord = rapid.SampledFrom([]string{"", "", "", "DANGER", "WARNING", "CAUTION", "NOTICE", "ODD"})

func anyBlock(depth int) *rapid.Generator[paper.Block] {
	return rapid.Custom(func(t *rapid.T) paper.Block {
		kinds := 7
		if depth > 0 {
			kinds = 8
		}
		switch rapid.IntRange(1, kinds).Draw(t, "kind") {
		case 1:
			return &paper.Heading{Text: anyText(8).Draw(t, "heading"), Word: anyWord.Draw(t, "word")}
		case 2:
			return &paper.Para{Text: anyText(120).Draw(t, "text"), Strong: rapid.Bool().Draw(t, "strong"), Word: anyWord.Draw(t, "word")}
		case 3:
			return &paper.List{Items: rapid.SliceOfN(anyText(20), 0, 12).Draw(t, "items"), Ordered: rapid.Bool().Draw(t, "ordered"), Boxes: rapid.Bool().Draw(t, "boxes")}
		case 4:
			return anyTable(t)
		case 5:
			return &paper.Picture{Drawing: anyDrawing(t)}
		case 6:
			return anyPairs(t)
		case 7:
			return &paper.Lines{Label: anyText(4).Draw(t, "label"), Count: rapid.IntRange(0, 8).Draw(t, "count")}
		}
		return &paper.Box{Blocks: rapid.SliceOfN(anyBlock(depth-1), 0, 4).Draw(t, "inside")}
	})
}

func anyTable(t *rapid.T) *paper.Table {
	table := &paper.Table{Caption: anyText(6).Draw(t, "caption"), Small: rapid.Bool().Draw(t, "small")}
	for range rapid.IntRange(0, 8).Draw(t, "columns") {
		table.Columns = append(table.Columns, paper.Column{Title: anyText(3).Draw(t, "title"), Share: rapid.Float64Range(-1, 20).Draw(t, "share"), Head: rapid.Bool().Draw(t, "head")})
	}
	tall := rapid.IntRange(0, 9).Draw(t, "tall") // one row of ten may be taller than a page
	for n := range rapid.IntRange(0, 12).Draw(t, "rows") {
		words := 8
		if n == tall {
			words = 150
		}
		var row []paper.Cell
		for range table.Columns {
			row = append(row, paper.Cell{Text: anyText(words).Draw(t, "cell"), Word: anyWord.Draw(t, "word"), Strong: rapid.Bool().Draw(t, "strong"), Blank: rapid.Bool().Draw(t, "blank")})
		}
		table.Rows = append(table.Rows, row)
	}
	return table
}

func anyPairs(t *rapid.T) *paper.Pairs {
	pair := rapid.Custom(func(t *rapid.T) paper.Pair {
		return paper.Pair{Label: anyText(5).Draw(t, "label"), Value: anyText(40).Draw(t, "value"), Blank: rapid.Bool().Draw(t, "blank")}
	})
	return &paper.Pairs{Rows: rapid.SliceOfN(pair, 0, 6).Draw(t, "pairs")}
}

func anyDrawing(t *rapid.T) *draw.Drawing {
	side := rapid.Float64Range(1, 400)
	d := &draw.Drawing{ID: "d", Title: "d " + anyText(5).Draw(t, "title"), Alt: "a drawing", Width: side.Draw(t, "width"), Height: side.Draw(t, "height")}
	d.Scale = rapid.SampledFrom([]float64{0, 10, 50, 100}).Draw(t, "scale")
	d.Marks = []draw.Mark{&draw.Path{Points: []draw.Point{{}, {X: d.Width, Y: d.Height}}, Pen: draw.Pen{Width: 0.3}}}
	for range rapid.IntRange(0, 40).Draw(t, "key") {
		d.Key = append(d.Key, draw.Explained{Means: anyText(6).Draw(t, "means"), Marks: []draw.Mark{&draw.Circle{Centre: draw.Point{X: 6, Y: 3}, Radius: 2}}})
	}
	return d
}

// anyDocument draws a paper; each section ends in a text, so that no heading ends a part.
func anyDocument() *rapid.Generator[*paper.Document] {
	return rapid.Custom(func(t *rapid.T) *paper.Document {
		d := &paper.Document{Title: anyText(12).Draw(t, "title"), Subject: anyText(12).Draw(t, "subject"), Foot: anyText(3).Draw(t, "foot"), Made: "2026-11-25", Program: "lowvent"}
		for i := range rapid.IntRange(0, 3).Draw(t, "parts") {
			part := paper.Part{ID: fmt.Sprint("p", i), Title: anyText(5).Draw(t, "part")}
			for j := range rapid.IntRange(1, 3).Draw(t, "sections") {
				blocks := rapid.SliceOfN(anyBlock(3), 0, 5).Draw(t, "blocks")
				part.Sections = append(part.Sections, paper.Section{ID: fmt.Sprint("s", i, j), Title: anyText(5).Draw(t, "section"), NewPage: rapid.Bool().Draw(t, "new"), Blocks: append(blocks, &paper.Para{Text: "end"})})
			}
			d.Parts = append(d.Parts, part)
		}
		return d
	})
}
