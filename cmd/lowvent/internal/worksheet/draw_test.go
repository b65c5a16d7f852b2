package worksheet

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/letter"
	"lowvent.example/cmd/lowvent/internal/starter"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

// shown is one drawing of a page, as its reader sees it.
type shown struct {
	title        string
	wide, high   float64
	rects        []rect
	words        []rect                // of what is written
	marks        map[string][2]float64 // the middle of each ring
	points       map[string][2]float64 // what the line from a ring leads to
	descriptions string
}

type rect struct {
	text                     string
	left, top, right, bottom float64
	broken                   bool
}

var codes = regexp.MustCompile(`^[A-Z]+[0-9]+$`)

// drawingsOf reads both drawings of a scene out of its page.
func drawingsOf(t *testing.T, scene string) []shown {
	t.Helper()
	var all []shown
	for _, svg := range read(t, scene).named("svg") {
		d := shown{title: svg.named("title")[0].Text, descriptions: svg.named("desc")[0].Text, marks: map[string][2]float64{}, points: map[string][2]float64{}}
		if _, err := fmt.Sscanf(svg.attr("viewBox"), "0 0 %g %g", &d.wide, &d.high); err != nil {
			t.Fatal(err)
		}
		var leader string
		for i := range svg.Children {
			e := &svg.Children[i]
			switch e.Name.Local {
			case "rect":
				x, y := number(t, e, "x"), number(t, e, "y")
				d.rects = append(d.rects, rect{"", x, y, x + number(t, e, "width"), y + number(t, e, "height"), e.attr("stroke-dasharray") != ""})
			case "path":
				leader = e.attr("d")
			case "text":
				d.text(t, e, leader)
			}
		}
		all = append(all, d)
	}
	return all
}

func number(t *testing.T, e *element, name string) float64 {
	t.Helper()
	n, err := strconv.ParseFloat(e.attr(name), 64)
	if err != nil {
		t.Fatalf("%s of a %s: %v", name, e.Name.Local, err)
	}
	return n
}

// text notes where a word stands; that of a mark stands in its ring.
func (d *shown) text(t *testing.T, e *element, leader string) {
	x, y, face := number(t, e, "x"), number(t, e, "y"), letter.Regular
	if e.attr("font-weight") == "bold" {
		face = letter.Bold
	}
	wide := letter.Width(face, e.Text, 15)
	if e.attr("text-anchor") == "middle" {
		x -= wide / 2
	}
	if codes.MatchString(e.Text) {
		middle := [2]float64{number(t, e, "x"), y - 5}
		d.marks[e.Text] = middle
		var px, py, lx, ly float64
		if _, err := fmt.Sscanf(strings.NewReplacer("M", "", "L", " ").Replace(leader), "%g %g %g %g", &px, &py, &lx, &ly); err != nil || math.Hypot(lx-middle[0], ly-middle[1]) > 0.2 {
			t.Errorf("%s: the ring of %s at %v has no line of its own: %s, %v", d.title, e.Text, middle, leader, err)
		}
		d.points[e.Text] = [2]float64{px, py}
		return
	}
	d.words = append(d.words, rect{e.Text, x, y - 11, x + wide, y + 3, false})
}

// TestNothingOfADrawingIsOverprinted: rings and words lie within it, and none over another.
func TestNothingOfADrawingIsOverprinted(t *testing.T) {
	const ring = 15
	for _, scene := range starter.Scenes() {
		for _, d := range drawingsOf(t, scene) {
			var all []rect
			for code, at := range d.marks {
				all = append(all, rect{code, at[0] - ring, at[1] - ring, at[0] + ring, at[1] + ring, false})
			}
			for i, one := range append(all, d.words...) {
				if one.left < 0 || one.top < 0 || one.right > d.wide || one.bottom > d.high {
					t.Errorf("%s: %+v runs over the edge of %g × %g", d.title, one, d.wide, d.high)
				}
				for _, other := range append(slices.Clone(all), d.words...)[:i] {
					if covers(one, other, ring) {
						t.Errorf("%s: %+v and %+v lie over one another", d.title, one, other)
					}
				}
			}
		}
	}
}

// covers tells whether two of them meet: rings are round.
func covers(a, b rect, ring float64) bool {
	switch round, other := codes.MatchString(a.text), codes.MatchString(b.text); {
	case round && other:
		return math.Hypot(a.left-b.left, a.top-b.top) < 2*ring
	case round:
		x, y := (a.left+a.right)/2, (a.top+a.bottom)/2
		return math.Hypot(max(b.left-x, 0, x-b.right), max(b.top-y, 0, y-b.bottom)) < ring
	case other:
		return covers(b, a, ring)
	}
	return min(a.right, b.right) > max(a.left, b.left) && min(a.bottom, b.bottom) > max(a.top, b.top)
}

// TestTheSpacesAreDrawnAsTheyLie: the proportions of each space are those of the file, on
// one scale, the front on the left; in the plan the left side on top, in the elevation the
// floor below.
func TestTheSpacesAreDrawnAsTheyLie(t *testing.T) {
	for _, scene := range starter.Scenes() {
		l, faults := layout.Load(source.NewFile(scene, starter.Layout(scene)))
		if faults != nil {
			t.Fatal(faults)
		}
		for i, d := range drawingsOf(t, scene) {
			var solid []rect
			for _, r := range d.rects {
				if !r.broken {
					solid = append(solid, r)
				}
			}
			if len(d.rects) != len(solid)+1 {
				t.Errorf("%s: %d outlines in broken lines, want the locker's", d.title, len(d.rects)-len(solid))
			}
			n, scale := 0, 0.0
			for _, space := range l.Spaces.All() {
				from, _ := space.Box.From.Get()
				to, known := space.Box.To.Get()
				if !known {
					continue
				}
				down := []int{1, 2}[i]
				wide, high := float64(to[0].Nominal-from[0].Nominal), float64(to[down].Nominal-from[down].Nominal)
				if scale == 0 {
					scale = (solid[n].right - solid[n].left) / wide
				}
				r := solid[n]
				if math.Abs(r.right-r.left-scale*wide) > 0.3 || math.Abs(r.bottom-r.top-scale*high) > 0.3 {
					t.Errorf("%s: %s is drawn %g × %g, want %g × %g at %g a metre", d.title, space.ID(), r.right-r.left, r.bottom-r.top, scale*wide, scale*high, scale)
				}
				first := solid[0]
				begun, _ := l.Spaces.All()[0].Box.From.Get()
				if x := scale * float64(from[0].Nominal-begun[0].Nominal); math.Abs(r.left-first.left-x) > 0.3 {
					t.Errorf("%s: %s begins %g right of the first, want %g", d.title, space.ID(), r.left-first.left, x)
				}
				if y := scale * float64(from[down].Nominal-begun[down].Nominal); down == 1 && math.Abs(r.top-first.top-y) > 0.3 || down == 2 && math.Abs(first.bottom-r.bottom-y) > 0.3 {
					t.Errorf("%s: %s does not lie %g from the first, the other way", d.title, space.ID(), y)
				}
				if !slices.ContainsFunc(d.words, func(w rect) bool {
					return w.text == space.ID() && w.left >= r.left && w.bottom <= r.bottom && w.top >= r.top
				}) {
					t.Errorf("%s: the name of %s does not stand in it", d.title, space.ID())
				}
				n++
			}
			if n == 0 || n != len(solid) {
				t.Errorf("%s: %d spaces, and %d outlines", d.title, n, len(solid))
			}
		}
	}
}

// TestTheMarksOfACornerAreAtIt: the two corners of the first space's box are marked at the
// corners of its outline, on both drawings, and told in words.
func TestTheMarksOfACornerAreAtIt(t *testing.T) {
	for _, scene := range starter.Scenes() {
		rows := rowsOf(t, scene)
		for i, d := range drawingsOf(t, scene) {
			corners := 0
			for code, at := range d.points {
				template := rows[code].asked.Template
				if !strings.Contains(d.descriptions, code+" ") {
					t.Errorf("%s: %s is not told in words", d.title, code)
				}
				near, far := template == "/spaces/*/box/from", template == "/spaces/*/box/to"
				if !near && !far {
					continue
				}
				corners++
				if !slices.ContainsFunc(d.rects, func(r rect) bool {
					x, y := r.left, r.top
					if far {
						x, y = r.right, r.bottom
					}
					if i == 1 { // z runs up the paper
						y = r.top + r.bottom - y
					}
					return math.Hypot(at[0]-x, at[1]-y) < 0.3
				}) {
					t.Errorf("%s: %s, the corner %s, leads to %v", d.title, code, template, at)
				}
			}
			if corners < 2 {
				t.Errorf("%s: %d corners of spaces are marked", d.title, corners)
			}
			if want := map[int]string{0: "Plan, seen from above of a " + scene, 1: "Side elevation, seen from the left of a " + scene}[i]; d.title != want {
				t.Errorf("drawing %d is %q, want %q", i, d.title, want)
			}
		}
	}
}
