package html

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/paper"
)

// of is a page with these blocks alone.
func of(t *testing.T, blocks ...paper.Block) *node {
	t.Helper()
	return read(t, &paper.Document{Title: "T", Parts: []paper.Part{{ID: "p", Title: "P", Sections: []paper.Section{{ID: "s", Title: "S", Blocks: blocks}}}}}).first(t, "main")
}

func TestTableSaysWhatItsCellsBelongTo(t *testing.T) {
	table := of(t, &paper.Table{Caption: "Loads", Small: true, Columns: []paper.Column{{Title: "Appliance", Head: true, Share: 3}, {Title: "Input", Share: 1}, {}},
		Rows: [][]paper.Cell{{{Text: "hob"}, {Blank: true}, {Word: "DANGER", Text: "a", Strong: true}}, {{}, {Text: "b"}, {}}}}).first(t, "table")
	var got []string
	for _, n := range table.all("caption", "th", "td") {
		got = append(got, strings.TrimSpace(n.name+" "+n.attrs["scope"]+" "+n.words()))
	}
	want := []string{"caption  Loads", "th col Appliance", "th col Input", "td", "th row hob", "td", "td  DANGER a", "td", "td  b", "td"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	var widths []string
	for _, c := range table.all("col") {
		widths = append(widths, c.attrs["class"])
	}
	if diff := cmp.Diff([]string{"w750", "w250", "w0"}, widths); diff != "" {
		t.Error(diff)
	}
	if len(table.all("thead")) != 1 || len(table.classed("small")) != 1 {
		t.Error("no head that a printer repeats, or no small letters")
	}
}

func TestTableWithoutTitlesOrShares(t *testing.T) {
	page := of(t, &paper.Table{Columns: []paper.Column{{}, {}}, Rows: [][]paper.Cell{{{Text: "a"}, {Text: "b"}}}})
	if len(page.all("thead", "col", "caption")) > 0 {
		t.Error("a head, widths or a caption out of nothing")
	}
	if frame := page.classed("scroll"); len(frame) != 1 || frame[0].attrs["aria-label"] != "S" || frame[0].attrs["tabindex"] != "0" {
		t.Error("the frame that scrolls can't be reached with keys, or has no name")
	}
}

// TestLeastWidth: on a narrow screen a table keeps the width at which no word of its
// titles breaks, and gives up where that would be wider than a sheet.
func TestLeastWidth(t *testing.T) {
	column := func(title string, share float64) paper.Column { return paper.Column{Title: title, Share: share} }
	for _, c := range []struct {
		columns []paper.Column
		row     []paper.Cell
		want    int
	}{
		{[]paper.Column{column("", 0)}, nil, 4},
		{[]paper.Column{column("a b c d e f", 1), column("", 1)}, nil, 8},
		{[]paper.Column{column("Manufacturer", 0)}, nil, 10},
		{[]paper.Column{column("", 0)}, []paper.Cell{{Word: "WARNING"}}, 7},
		{make([]paper.Column, 13), nil, mostWide},
	} {
		table := &paper.Table{Columns: c.columns}
		if c.row != nil {
			table.Rows = [][]paper.Cell{c.row}
		}
		if got := leastWidth(table); got != c.want {
			t.Errorf("%v: %d em, want %d", c.columns, got, c.want)
		}
	}
	crowd := of(t, &paper.Table{Columns: make([]paper.Column, 13)})
	if len(crowd.classed("crowded")) != 1 {
		t.Error("a table that is too wide may not break its titles")
	}
}

func TestBlanksAreSaidAloud(t *testing.T) {
	page := of(t, &paper.Pairs{Rows: []paper.Pair{{Label: "Licence", Blank: true}, {Label: "Gas", Value: "off"}}},
		&paper.Table{Columns: []paper.Column{{Title: "a"}}, Rows: [][]paper.Cell{{{Blank: true, Text: "kW"}}, {{Text: "x"}}}}, &paper.Lines{Label: "Notes", Count: 3})
	var got []string
	page.each(func(n *node) {
		if label := n.attrs["aria-label"]; n.attrs["role"] == "img" {
			got = append(got, fmt.Sprintf("%s %s, %d", n.name, label, len(n.below)))
		}
	})
	if diff := cmp.Diff([]string{"span blank to fill in, 0", "span blank to fill in, 0", "div 3 empty lines to write on, 3"}, got); diff != "" {
		t.Error(diff)
	}
	sheet := read(t, sample()).first(t, "style").words()
	for _, each := range []string{"td.blank,th.blank{height:8mm}", "dd .blank{display:block;min-height:8mm}", ".lines div{height:8mm;"} {
		if !strings.Contains(sheet, each) {
			t.Errorf("room for a hand: %q is not in the style sheet", each)
		}
	}
}

func TestLists(t *testing.T) {
	page := of(t, &paper.List{Items: []string{"a"}}, &paper.List{Items: []string{"b"}, Ordered: true}, &paper.List{Items: []string{"c"}, Boxes: true}, &paper.List{Items: []string{"d"}, Boxes: true, Ordered: true})
	var got []string
	for _, l := range page.all("ul", "ol") {
		got = append(got, l.name+" "+l.attrs["class"]+" "+l.words())
	}
	if diff := cmp.Diff([]string{"ul  a", "ol  b", "ul boxes c", "ol boxes d"}, got); diff != "" {
		t.Error(diff)
	}
}

func TestBoxHoldsItsBlocks(t *testing.T) {
	boxes := of(t, &paper.Box{Blocks: []paper.Block{&paper.Para{Text: "a"}, &paper.Box{Blocks: []paper.Block{&paper.Para{Text: "b", Strong: true}}}}}).classed("box")
	if len(boxes) != 2 || boxes[0].words() != "a b" || boxes[1].words() != "b" || len(boxes[1].all("strong")) != 1 {
		t.Errorf("%v", boxes)
	}
}

// TestPicture: a drawing has its words, a caption and its legend, and one that comes twice
// has two sets of ids.
func TestPicture(t *testing.T) {
	figures := of(t, &paper.Picture{Drawing: plan()}, &paper.Picture{Drawing: plan()}).all("figure")
	if len(figures) != 2 {
		t.Fatalf("%d figures", len(figures))
	}
	for i, want := range []string{"drawing.plan.title", "drawing.plan_2e_2.title"} {
		f := figures[i]
		if got := f.first(t, "title").attrs["id"]; got != want {
			t.Errorf("the id is %q, want %q", got, want)
		}
		if f.first(t, "figcaption").words() != "Plan Scale 1:25 when printed at 100 %." || f.first(t, "desc").words() != "The locker stands behind the hob." {
			t.Error("the drawing has no caption or no description")
		}
		legend := f.classed("legend")
		if len(legend) != 1 || legend[0].words() != "a hob's burner a low vent" || len(legend[0].all("svg")) != 2 {
			t.Error("the legend does not explain each symbol")
		}
	}
	bare := plan()
	bare.Key = nil
	if len(of(t, &paper.Picture{Drawing: bare}).classed("legend")) > 0 {
		t.Error("a legend of nothing")
	}
}

// TestWordsAreReadable: a signal word always stands there as a word, in the colours that
// ANSI Z535.1 pairs, and its letters stand out from their ground by 4.5 to 1, the least
// that WCAG 2.2, 1.4.3 allows (from memory, as is the formula of relative luminance).
func TestWordsAreReadable(t *testing.T) {
	pairs := map[string][2]draw.Ink{"danger": {draw.Red, draw.White}, "warning": {draw.Orange, draw.Black}, "caution": {draw.Yellow, draw.Black}, "notice": {draw.Blue, draw.White}}
	sheet := read(t, sample()).first(t, "style").words()
	for class, inks := range pairs {
		page := of(t, &paper.Para{Word: strings.ToUpper(class), Text: "a"})
		if words := page.classed(class); len(words) != 1 || words[0].name != "strong" || words[0].words() != strings.ToUpper(class) {
			t.Errorf("%s: the word is not there as a word", class)
		}
		rule := regexp.MustCompile(`\.` + class + `{background:#(\w{6});color:#(\w{6})}`).FindStringSubmatch(sheet)
		if rule == nil {
			t.Fatalf("%s has no colours", class)
		}
		ground, letters := rgb(t, rule[1]), rgb(t, rule[2])
		if ground != ofInk(inks[0]) || letters != ofInk(inks[1]) {
			t.Errorf("%s: %v on %v", class, letters, ground)
		}
		if c := contrast(ground, letters); c < 4.5 {
			t.Errorf("%s: contrast %.2f", class, c)
		}
	}
	if other := of(t, &paper.Para{Word: "TRIAL"}).classed("word"); len(other) != 1 || other[0].attrs["class"] != "word" {
		t.Error("a word of ours borrows a signal word's colours")
	}
}

// contrast is the contrast ratio of WCAG 2.2 between two colours, 1 to 21.
func contrast(a, b [3]uint8) float64 {
	one, two := luminance(a), luminance(b)
	return (max(one, two) + 0.05) / (min(one, two) + 0.05)
}

func luminance(c [3]uint8) (sum float64) {
	for i, share := range []float64{0.2126, 0.7152, 0.0722} {
		v := float64(c[i]) / 255
		if v <= 0.04045 {
			v /= 12.92
		} else {
			v = math.Pow((v+0.055)/1.055, 2.4)
		}
		sum += share * v
	}
	return sum
}

func TestContrastOfBlackAndWhite(t *testing.T) {
	if c := contrast([3]uint8{}, [3]uint8{255, 255, 255}); math.Abs(c-21) > 1e-9 {
		t.Errorf("%v, want 21 to 1", c)
	}
}

func ofInk(i draw.Ink) [3]uint8 {
	red, green, blue := i.RGB()
	return [3]uint8{red, green, blue}
}

func rgb(t *testing.T, hex string) (c [3]uint8) {
	t.Helper()
	v, err := strconv.ParseUint(hex, 16, 32)
	if err != nil {
		t.Fatal(err)
	}
	return [3]uint8{uint8(v >> 16), uint8(v >> 8), uint8(v)}
}

// TestFootHeight: a longer foot gets more lines, and each printed page leaves them free.
func TestFootHeight(t *testing.T) {
	for words, want := range map[int]int{0: 9, 10: 9, 20: 13, 40: 21} {
		if got := footHeight(strings.Repeat("prepared ", words)); got != want {
			t.Errorf("%d words: %d mm, want %d", words, got, want)
		}
	}
}
