package svg

import (
	"bytes"
	"encoding/xml"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/draw"
)

// element is an element as a parser reads it.
type element struct {
	XMLName  xml.Name
	Attrs    []xml.Attr `xml:",any,attr"`
	Text     string     `xml:",chardata"`
	Children []element  `xml:",any"`
}

func (e *element) attr(name string) string {
	for _, a := range e.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// all is every element of a kind, itself and below, in order.
func (e *element) all(name string) []*element {
	var found []*element
	if e.XMLName.Local == name {
		found = append(found, e)
	}
	for i := range e.Children {
		found = append(found, e.Children[i].all(name)...)
	}
	return found
}

// one is the only element of a kind.
func (e *element) one(t *testing.T, name string) *element {
	t.Helper()
	found := e.all(name)
	if len(found) != 1 {
		t.Fatalf("%d elements %s, want 1", len(found), name)
	}
	return found[0]
}

func parsed(t interface{ Fatal(...any) }, d *draw.Drawing) *element {
	var b bytes.Buffer
	if err := Write(&b, d); err != nil {
		t.Fatal(err)
	}
	var e element
	if err := xml.Unmarshal(b.Bytes(), &e); err != nil {
		t.Fatal(b.String(), err)
	}
	return &e
}

func drawing(marks ...draw.Mark) *draw.Drawing {
	return &draw.Drawing{ID: "plan", Title: "Plan", Alt: "a locker", Width: 100, Height: 50.5, Scale: 40, Marks: marks}
}

// wanted compares attributes; an empty one must be lacking.
func wanted(t *testing.T, e *element, want map[string]string) {
	t.Helper()
	for name, value := range want {
		if got := e.attr(name); got != value {
			t.Errorf("%s of <%s>: %q, want %q", name, e.XMLName.Local, got, value)
		}
	}
}

func TestSheet(t *testing.T) {
	e := parsed(t, drawing())
	wanted(t, e, map[string]string{"viewBox": "0 0 100 50.5", "width": "100mm", "height": "50.5mm", "role": "img", "data-scale": "40"})
	var named []string
	for _, each := range []string{"title", "desc"} {
		named = append(named, e.one(t, each).attr("id"))
	}
	if got := e.attr("aria-labelledby"); got != strings.Join(named, " ") || named[0] == named[1] {
		t.Errorf("labelled by %q, ids %q", got, named)
	}
	if e.one(t, "title").Text != "Plan" || e.one(t, "desc").Text != "a locker" {
		t.Error("the words for those who can't see the drawing are not in it")
	}
	if unscaled := parsed(t, &draw.Drawing{Width: 1, Height: 1}); unscaled.attr("data-scale") != "" {
		t.Error("a drawing that is not to scale claims a scale")
	}
}

func TestPath(t *testing.T) {
	corners := []draw.Point{{X: 1, Y: 2}, {X: 3.00049, Y: -0.0001}, {X: 5, Y: 6.12345}}
	open := parsed(t, drawing(&draw.Path{Points: corners, Pen: draw.Pen{Width: 0.25, Dash: draw.DashDot}})).one(t, "path")
	wanted(t, open, map[string]string{"d": "M1 2L3 0L5 6.123", "fill": "none", "stroke": "#000000", "stroke-width": "0.25", "stroke-dasharray": "3 0.9 0.4 0.9"})
	area := parsed(t, drawing(&draw.Path{Points: corners[:1], Closed: true, Fill: draw.Pale})).one(t, "path")
	wanted(t, area, map[string]string{"d": "M1 2Z", "fill": "#e4e4e4", "stroke": "", "stroke-dasharray": ""})
	both := parsed(t, drawing(&draw.Path{Points: corners[:2], Fill: draw.Black, Pen: draw.Pen{Width: 1, Ink: draw.White}})).one(t, "path")
	wanted(t, both, map[string]string{"fill": "#000000", "stroke": "#ffffff", "stroke-dasharray": ""})
}

func TestCircle(t *testing.T) {
	c := parsed(t, drawing(&draw.Circle{Centre: draw.Point{X: 1.5, Y: 2}, Radius: 3, Fill: draw.Red, Pen: draw.Pen{Width: 0.5, Dash: draw.Dotted}})).one(t, "circle")
	wanted(t, c, map[string]string{"cx": "1.5", "cy": "2", "r": "3", "fill": "#c8102e", "stroke": "#000000", "stroke-dasharray": "0.4 0.9"})
}

func TestText(t *testing.T) {
	plain := &draw.Text{At: draw.Point{X: 1, Y: 2}, Size: 3, Content: "1 < 2 & \"3\""}
	e := parsed(t, drawing(plain)).one(t, "text")
	wanted(t, e, map[string]string{"x": "1", "y": "2", "font-size": "3", "fill": "#000000", "text-anchor": "", "transform": "", "font-weight": "", "lengthAdjust": "spacingAndGlyphs"})
	if wide, err := strconv.ParseFloat(e.attr("textLength"), 64); err != nil || math.Abs(wide-plain.Wide()) > 0.001 || e.Text != plain.Content {
		t.Errorf("%q is %s wide, want %v (%v)", e.Text, e.attr("textLength"), plain.Wide(), err)
	}
	turned := parsed(t, drawing(&draw.Text{At: draw.Point{X: 1, Y: 2}, Size: 3, Turn: -90, Bold: true, Anchor: draw.Middle, Ink: draw.Grey, Content: "a"})).one(t, "text")
	wanted(t, turned, map[string]string{"text-anchor": "middle", "transform": "rotate(-90 1 2)", "font-weight": "bold", "fill": "#545454"})
	wanted(t, parsed(t, drawing(&draw.Text{Size: 3, Anchor: draw.End})).one(t, "text"), map[string]string{"text-anchor": "end", "textLength": ""})
}

func TestGroup(t *testing.T) {
	e := parsed(t, drawing(&draw.Group{Of: "/lockers/skirt", Label: "locker skirt", Marks: []draw.Mark{&draw.Circle{}, &draw.Group{Of: "/a"}}}))
	outer := e.all("g")[0]
	if outer.attr("data-of") != "/lockers/skirt" || outer.one(t, "title").Text != "locker skirt" || len(outer.all("circle")) != 1 || len(outer.all("g")) != 2 {
		t.Errorf("%+v", outer)
	}
}

// TestSpansMeasure: the line of a span is as long on paper as its metres and the scale of
// the drawing say, and is not painted.
func TestSpansMeasure(t *testing.T) {
	d := drawing()
	d.Spans = []draw.Span{{From: draw.Point{X: 1, Y: 2}, To: draw.Point{X: 31, Y: 42}, Metres: 1.25, Text: "1.25 m", Check: "clearance.above", Subject: "/a~1b"}}
	line := parsed(t, d).one(t, "line")
	wanted(t, line, map[string]string{"class": "span", "stroke": "none", "fill": "none", "data-metres": "1.25", "data-text": "1.25 m", "data-check": "clearance.above", "data-subject": "/a~1b"})
	at := func(name string) float64 {
		v, err := strconv.ParseFloat(line.attr(name), 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	if long := math.Hypot(at("x1")-at("x2"), at("y1")-at("y2")); math.Abs(long-1.25*40) > 1e-9 {
		t.Errorf("%v mm", long)
	}
}

func TestKey(t *testing.T) {
	var b bytes.Buffer
	if err := Key(&b, &draw.Explained{Marks: []draw.Mark{&draw.Circle{Radius: 2}}, Means: "a vent"}); err != nil {
		t.Fatal(err)
	}
	var e element
	if err := xml.Unmarshal(b.Bytes(), &e); err != nil {
		t.Fatal(err)
	}
	wanted(t, &e, map[string]string{"width": "12mm", "height": "6mm", "aria-hidden": "true", "role": ""})
	e.one(t, "circle")
}

// TestNoNumberIsRefused: a drawing with a place that is nowhere is not written at all.
func TestNoNumberIsRefused(t *testing.T) {
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		for _, m := range []draw.Mark{&draw.Path{Points: []draw.Point{{X: bad}}}, &draw.Circle{Radius: bad}, &draw.Text{Size: bad, Content: "a"}, &draw.Group{Marks: []draw.Mark{&draw.Circle{Radius: bad}}}} {
			var b bytes.Buffer
			if err := Write(&b, drawing(m)); err == nil || !strings.Contains(err.Error(), `"plan"`) || b.Len() > 0 {
				t.Errorf("%#v: %v, %d bytes written", m, err, b.Len())
			}
		}
	}
	if err := Key(&bytes.Buffer{}, &draw.Explained{Means: "a vent", Marks: []draw.Mark{&draw.Circle{Radius: math.NaN()}}}); err == nil {
		t.Error("a symbol that is nowhere was written")
	}
}

// TestAnyDrawingIsWellFormed: whatever is drawn, and whatever its texts hold, the marks
// come out one by one in their order, with numbers of no more than three decimals.
func TestAnyDrawingIsWellFormed(t *testing.T) {
	number := rapid.Float64Range(-500, 500)
	words := rapid.OneOf(rapid.String(), rapid.Just(`</svg><script>x</script>"'&`))
	point := rapid.Custom(func(t *rapid.T) draw.Point { return draw.Point{X: number.Draw(t, "x"), Y: number.Draw(t, "y")} })
	mark := rapid.OneOf(
		rapid.Map(rapid.SliceOfN(point, 1, 5), func(p []draw.Point) draw.Mark { return &draw.Path{Points: p, Fill: draw.Pale} }),
		rapid.Map(point, func(p draw.Point) draw.Mark { return &draw.Circle{Centre: p, Radius: 2} }),
		rapid.Custom(func(t *rapid.T) draw.Mark {
			return &draw.Text{At: point.Draw(t, "at"), Size: 3, Turn: number.Draw(t, "turn"), Content: words.Draw(t, "content")}
		}))
	short := regexp.MustCompile(`^(-?(0|[1-9][0-9]*)(\.[0-9]{0,2}[1-9])?[ MLZ]?)*$`)
	rapid.Check(t, func(t *rapid.T) {
		marks := rapid.SliceOfN(mark, 0, 6).Draw(t, "marks")
		d := &draw.Drawing{ID: words.Draw(t, "id"), Title: words.Draw(t, "title"), Alt: words.Draw(t, "alt"), Width: 100, Height: 50, Marks: marks}
		e := parsed(t, d)
		var got []string
		for _, child := range e.Children {
			got = append(got, child.XMLName.Local)
			for _, name := range []string{"d", "cx", "cy", "x", "y"} {
				if value := strings.TrimPrefix(child.attr(name), "M"); !short.MatchString(value) || strings.Contains(value, "-0 ") || value == "-0" {
					t.Fatalf("%s: %q", name, value)
				}
			}
		}
		if want := append([]string{"title", "desc"}, kinds(marks)...); !slices.Equal(got, want) {
			t.Fatalf("%v, want %v", got, want)
		}
	})
}

func kinds(marks []draw.Mark) []string {
	var all []string
	for _, m := range marks {
		switch m.(type) {
		case *draw.Path:
			all = append(all, "path")
		case *draw.Circle:
			all = append(all, "circle")
		case *draw.Text:
			all = append(all, "text")
		}
	}
	return all
}
