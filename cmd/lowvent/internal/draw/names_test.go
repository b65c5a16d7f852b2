package draw

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/schema/report"
)

// TestNamesLieOnTheirOwnGround: a name stands within the white that is laid under it, a
// number in the middle of its balloon, so that no line runs through the letters.
func TestNamesLieOnTheirOwnGround(t *testing.T) {
	names, numbers := 0, 0
	for _, d := range demos.All(t) {
		for _, g := range drawings(d) {
			for _, m := range g.Marks {
				of, is := m.(*Group)
				if !is {
					continue
				}
				var ground *Rectangle
				var balloon *Circle
				for _, each := range of.Marks {
					switch each := each.(type) {
					case *Path:
						if each.Closed && each.Fill == White && each.Pen.Width == 0 {
							r, _ := Extent([]Mark{each})
							ground = &r
						}
					case *Circle:
						if each.Fill == White && each.Radius >= balloonReach {
							balloon = each
						}
					case *Text:
						switch b := each.Bounds(); {
						case ground != nil:
							names++
							if !b.Within(ground.grown(0.06)) {
								t.Errorf("%s, %s: %q takes %v and stands on %v", d.Name, g.ID, each.Content, b, *ground)
							}
						case balloon != nil:
							numbers++
							if middle := b.centre(); middle.to(balloon.Centre) > 0.35 || b.wide() > 2*balloon.Radius {
								t.Errorf("%s, %s: %q takes %v in the balloon about %v", d.Name, g.ID, each.Content, b, balloon.Centre)
							}
						}
					}
				}
			}
		}
	}
	if names < 300 || numbers < 100 {
		t.Errorf("%d names and %d numbers: the test says little", names, numbers)
	}
}

// TestSpacesAreNamedInside: in a space with room its name and use stand within it, turned
// where it is narrow and long.
func TestSpacesAreNamedInside(t *testing.T) {
	for _, c := range []struct {
		wide, deep string
		turn       float64
	}{{"4 m", "2 m", 0}, {"2 m", "2 m", 0}, {"0.2 m", "3 m", -90}} {
		g := Plan(loaded(t, `"spaces": { "saloon": { "use": "living", "box": { "from": ["0 m", "0 m", "0 m"], "to": ["`+c.wide+`", "`+c.deep+`", "2 m"] } } }`), nil)
		of := groups(g.Marks)["/spaces/saloon"]
		outline, _ := Extent(of[0].Marks)
		texts := textsOf(of[1].Marks)
		if len(of) != 2 || len(texts) != 2 || texts[0].Content != "saloon" || texts[1].Content != "living" || !texts[0].Bold || texts[1].Bold {
			t.Fatalf("%s by %s: %d groups, %v", c.wide, c.deep, len(of), texts)
		}
		for _, text := range texts {
			if text.Turn != c.turn || !text.Bounds().Within(outline) {
				t.Errorf("%s by %s: %q takes %v of %v, turned by %v", c.wide, c.deep, text.Content, text.Bounds(), outline, text.Turn)
			}
		}
	}
}

// TestASpaceTooSmallForItsNameIsNamedBesideIt, with a leader to it.
func TestASpaceTooSmallForItsNameIsNamedBesideIt(t *testing.T) {
	g := Plan(loaded(t, `"spaces": { "saloon": { "box": { "from": ["0 m", "0 m", "0 m"], "to": ["4 m", "2 m", "2 m"] } }, "well": { "use": "technical", "box": { "from": ["4.2 m", "1 m", "0 m"], "to": ["4.3 m", "1.1 m", "0.3 m"] } } }`), nil)
	of := groups(g.Marks)["/spaces/well"]
	outline, _ := Extent(of[0].Marks)
	if len(of) != 2 {
		t.Fatalf("%d groups", len(of))
	}
	leader, is := of[1].Marks[0].(*Path)
	texts := textsOf(of[1].Marks)
	if !is || len(leader.Points) != 2 || leader.Points[1].to(outline.centre()) > outline.wide() || len(texts) != 2 || texts[0].Content != "well" || texts[0].Bounds().Overlaps(outline) {
		t.Errorf("named by %v beside %v", texts, outline)
	}
}

// TestBoldIsWhatAFitterLooksForFirst: spaces, lockers and appliances.
func TestBoldIsWhatAFitterLooksForFirst(t *testing.T) {
	l := loaded(t, `"lockers": { "k": { `+aBox+` } }, "appliances": { "hob": { "at": ["5 m", "1 m", "1 m"] } }, "cylinders": { "a": { "at": ["1.3 m", "0.2 m", "0 m"] } }, "alarms": { "gas": { "at": ["6 m", "1 m", "0 m"] } }, "regulators": { "r": { "at": ["3 m", "1 m", "1 m"] } }`)
	for pointer, bold := range map[string]bool{"/lockers/k": true, "/appliances/hob": true, "/cylinders/a": false, "/alarms/gas": false, "/regulators/r": false} {
		for _, g := range []*Drawing{Plan(l, nil), Elevation(l, nil)} {
			of := groups(g.Marks)[pointer]
			if texts := textsOf(of[len(of)-1].Marks); len(texts) != 1 || texts[0].Bold != bold {
				t.Errorf("%s, %s: named by %v", g.ID, pointer, texts)
			}
		}
	}
}

// TestWhichShutoffsAreDrawn: valves that somebody can shut, and those of which the file does
// not say what they are; not what shuts by itself.
func TestWhichShutoffsAreDrawn(t *testing.T) {
	for kind, drawn := range map[string]bool{"": true, `"kind": "manual-valve", `: true, `"kind": "solenoid", `: true, `"kind": "excess-flow", `: false, `"kind": "hose-rupture-valve", `: false, `"kind": "cylinder-valve", `: false} {
		l := loaded(t, `"junctions": { "j": {} }, "appliances": { "z": {} }, "lines": { "x": { "from": "junctions/j", "to": "appliances/z", "route": [["0 m", "0 m", "0 m"], ["2 m", "0 m", "0 m"]], "shutoffs": { "v": { `+kind+`"at": ["1 m", "0 m", "0 m"] } } } }`)
		g := Plan(l, nil)
		if got := len(groups(g.Marks)["/lines/x/shutoffs/v"]) > 0; got != drawn || strings.Contains(g.Alt, "1 shut-off") != drawn {
			t.Errorf("%q: drawn %v: %s", kind, got, g.Alt)
		}
	}
	l := loaded(t, `"junctions": { "j": { "at": ["0 m", "0 m", "0 m"] } }, "appliances": { "z": {} }, "lines": { "x": { "from": "junctions/j", "to": "appliances/z", "shutoffs": { "v": { "kind": "manual-valve" } } } }`)
	if g := Plan(l, nil); !strings.Contains(g.Alt, "shut-off v of line x") {
		t.Errorf("a valve without a place is not told: %s", g.Alt)
	}
	for reach, want := range map[string]string{"": "shut-off v of line x: manual valve, from where it is reached is not known", `, "reachedFrom": "outside"`: "shut-off v of line x: manual valve, reached from outside"} {
		l := loaded(t, `"junctions": { "j": {} }, "appliances": { "z": {} }, "lines": { "x": { "from": "junctions/j", "to": "appliances/z", "shutoffs": { "v": { "kind": "manual-valve", "at": ["1 m", "0 m", "0 m"]`+reach+` } } } }`)
		if got := sceneOf(l).byItem["/lines/x/shutoffs/v"].means; got != want {
			t.Errorf("%q: %q, want %q", reach, got, want)
		}
	}
}

// TestDangersInALockerAreMarked beside their thing in its own drawing too.
func TestDangersInALockerAreMarked(t *testing.T) {
	l := loaded(t, `"lockers": { "k": { `+aBox+` } }, "cylinders": { "a": { "in": "lockers/k", "at": ["1.3 m", "0.2 m", "0 m"], "diameter": "0.3 m", "height": "0.5 m" }, "b": { "in": "lockers/k", "at": ["1.5 m", "0.4 m", "0 m"] } }`)
	f := &report.FileReport{Findings: []report.Finding{{Check: "cylinder.upright", Subject: "/cylinders/a", Word: report.Danger, Outcome: report.NotMet}, {Check: "cylinder.valve", Subject: "/cylinders/b", Word: report.Warning, Outcome: report.NotMet}}}
	g := Locker(l, f, l.Lockers.All()[0])
	if n := tags(g.Marks, "/cylinders/a"); n != 2 { // in the plan and in the section
		t.Errorf("cylinder a is marked %d times", n)
	}
	if n := tags(g.Marks, "/cylinders/b"); n != 0 || strings.Count(g.Alt, "cylinder a (cylinder.upright)") != 1 {
		t.Errorf("cylinder b is marked %d times: %s", n, g.Alt)
	}
}

// TestADistanceOfALockerHasBothEndsInIt: one that goes out of what is drawn is left out.
func TestADistanceOfALockerHasBothEndsInIt(t *testing.T) {
	in := solid{place{0, 0, 0}, place{1, 1, 1}}
	at := func(x float64) solid { return spot(place{x, 0.5, 0.5}) }
	for _, c := range []struct {
		a, b float64
		want int
	}{{0.2, 0.8, 1}, {0.2, 1.8, 0}, {1.8, 0.2, 0}, {1.5, 1.8, 0}, {0, 1, 1}} {
		if got := within([]*distance{{a: at(c.a), b: at(c.b)}}, in); len(got) != c.want {
			t.Errorf("from %v to %v: %d", c.a, c.b, len(got))
		}
	}
}

// TestADistanceAgreesToHalfAPerCent with what the report found, short or long; what is
// farther off is shown by no line.
func TestADistanceAgreesToHalfAPerCent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		long := rapid.Float64Range(0.02, 20).Draw(t, "long")
		a, b := spot(place{}), spot(place{long, 0, 0})
		for share, want := range map[float64]bool{1: true, 1.004: true, 0.996: true, 1.006: false, 0.994: false, 1.5: false} {
			if _, ok := measureOf(a, b, long*share); ok != want {
				t.Fatalf("%v m apart, and %v found: taken for one: %v", long, long*share, ok)
			}
		}
	})
}

// TestAreasThatRectanglesShare, by counting: it hangs on neither's order.
func TestAreasThatRectanglesShare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) Rectangle {
			x, y := rapid.IntRange(0, 12).Draw(t, name+" x"), rapid.IntRange(0, 12).Draw(t, name+" y")
			return Rectangle{float64(x), float64(y), float64(x + rapid.IntRange(1, 9).Draw(t, name+" wide")), float64(y + rapid.IntRange(1, 9).Draw(t, name+" high"))}
		}
		a, b := draw("a"), draw("b")
		cells := 0.0
		for x := range 24 {
			for y := range 24 {
				if p := (Point{float64(x) + 0.5, float64(y) + 0.5}); p.within(a) && p.within(b) {
					cells++
				}
			}
		}
		if a.shared(b) != cells || b.shared(a) != cells || a.Overlaps(b) != (cells > 0) {
			t.Fatalf("%v and %v share %v, counted %v", a, b, a.shared(b), cells)
		}
	})
}

// TestWhatAChartSpans: the course, zero where it is near, and the levels that do not lie far
// beyond; far ones only where the whole is wanted.
func TestWhatAChartSpans(t *testing.T) {
	course := [][][2]float64{{{0, 100}, {10, 140}}}
	for _, c := range []struct {
		levels    []float64
		whole     bool
		low, high float64
	}{
		{nil, false, 100, 140}, {[]float64{160}, false, 100, 160}, {[]float64{90}, false, 90, 140}, {[]float64{199}, false, 100, 199}, {[]float64{300}, false, 100, 140}, {[]float64{300}, true, 0, 300},
		{[]float64{21}, false, 0, 140}, {[]float64{10}, false, 100, 140}, {[]float64{-10}, true, -10, 140}, {[]float64{60}, false, 0, 140},
	} {
		g := &graph{courses: course, whole: c.whole}
		for _, at := range c.levels {
			g.against = append(g.against, levelLine{Level: report.Level{At: at}})
		}
		g.extent()
		if math.Abs(g.low-c.low) > 1e-9 || math.Abs(g.high-c.high) > 1e-9 || g.left != 0 || g.right != 10 {
			t.Errorf("levels %v, whole %v: from %v to %v, want %v to %v", c.levels, c.whole, g.low, g.high, c.low, c.high)
		}
	}
}
