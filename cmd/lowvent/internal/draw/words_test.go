package draw

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/cmd/lowvent/internal/letter"
	"lowvent.example/schema/report"
)

// TestTheWordsTellTheDrawing: what it shows, its scale, how many of each, and every
// distance that is dimensioned, with what is needed.
func TestTheWordsTellTheDrawing(t *testing.T) {
	d := demos.One(t, "sorrel-faulty")
	for _, g := range drawings(d) {
		for _, want := range []string{ratioText(g.Scale), "It shows ", "gas locker", "cylinder", "Distances that are not as needed: "} {
			if !strings.Contains(g.Alt, want) {
				t.Errorf("%s: the words lack %q", g.ID, want)
			}
		}
		for _, s := range g.Spans {
			if s.Check != "" && !strings.Contains(g.Alt, s.Text) && s.Text != "450 mm (17.72 in)" { // the second finding on one distance
				t.Errorf("%s: the words lack %s, which is dimensioned", g.ID, s.Text)
			}
		}
	}
	if g := Plan(d.Layout, d.Report); !strings.Contains(g.Alt, "7 spaces, 1 gas locker, 3 cylinders, 1 regulator, 2 changeovers") {
		t.Errorf("the count: %s", g.Alt)
	}
}

// TestTheGravestAndShortestFirst: distances come by word, then by length, and a drawing
// that leaves some out says how many.
func TestTheGravestAndShortestFirst(t *testing.T) {
	d := demos.One(t, "sorrel-faulty")
	all := distancesOf(d.Layout, d.Report)
	if len(all) < 15 {
		t.Fatalf("only %d distances", len(all))
	}
	if !slices.IsSortedFunc(all, func(a, b *distance) int {
		return cmp.Or(cmp.Compare(b.says[0].word.Rank(), a.says[0].word.Rank()), cmp.Compare(a.found, b.found))
	}) {
		t.Error("not the gravest first, then the shortest")
	}
	here, other := fromAbove(), fromSide("right")
	left := len(belonging(all, here, other)) - mostShown
	if left <= 0 {
		t.Fatal("the plan has room for all: the test says little")
	}
	want := fmt.Sprint(left, " more distances that are not as needed are not drawn here")
	if g := Plan(d.Layout, d.Report); !strings.Contains(textOn(g), want) {
		t.Errorf("%q does not stand on the plan", want)
	}
}

// TestEachDistanceIsShownOnce, in the plan or in the elevation.
func TestEachDistanceIsShownOnce(t *testing.T) {
	for _, d := range demos.All(t) {
		all := distancesOf(d.Layout, d.Report)
		plan, side := fromAbove(), fromSide("left")
		if got := len(belonging(all, plan, side)) + len(belonging(all, side, plan)); got != len(all) {
			t.Errorf("%s: %d distances, %d shown", d.Name, len(all), got)
		}
	}
}

// TestOnlyWhatIsNotMetIsDimensioned: a report without such findings, or none at all, gives
// no distance.
func TestOnlyWhatIsNotMetIsDimensioned(t *testing.T) {
	d := demos.One(t, "sorrel-faulty")
	within := *d.Report
	within.Findings = slices.Clone(within.Findings)
	for i := range within.Findings {
		within.Findings[i].Outcome = report.Within
	}
	if len(distancesOf(d.Layout, &within)) > 0 || len(distancesOf(d.Layout, nil)) > 0 || len(Plan(d.Layout, nil).Spans) > 0 {
		t.Error("a distance that no finding complains of")
	}
}

// TestNotesKeepTheirWidth: whatever the words, no line is wider than it may be, and nothing
// is lost but what is cut with a sign that it is.
func TestNotesKeepTheirWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.StringMatching(`[a-z\-]{1,60}`), 1, 40).Draw(t, "words")
		wide := rapid.Float64Range(20, 200).Draw(t, "wide")
		lines := wrap(strings.Join(words, " "), wide, small)
		for _, l := range lines {
			if letter.Width(letter.Regular, l, small) > wide {
				t.Fatalf("%q is wider than %v", l, wide)
			}
		}
		if got := strings.Join(lines, " "); !strings.Contains(got, "…") && got != strings.Join(words, " ") {
			t.Fatalf("%q came out as %q", words, got)
		}
	})
	long := wrapped([]string{strings.Repeat("alarm smoke, ", 400)}, 100)
	if len(long) != mostNoteLines || !strings.HasPrefix(long[len(long)-1], "… and more") {
		t.Errorf("%d lines, the last %q", len(long), long[len(long)-1])
	}
}

// TestFreeTextCanDoNoHarm: what a file says in words of its own comes out in letters alone.
func TestFreeTextCanDoNoHarm(t *testing.T) {
	g := lockerOf(t, aBox+`, "liner": { "material": "steel\u0007 & <tin>\n\u202etwice" }`, "")
	for _, text := range textsOf(g.Marks) {
		if !utf8.ValidString(text.Content) || strings.ContainsAny(text.Content, "\n\r\t\u0007\u202e") {
			t.Errorf("%q", text.Content)
		}
	}
	if !strings.Contains(textOn(g), "& <tin>") {
		t.Errorf("the material is lost: %s", textOn(g))
	}
}

// TestBlocksAreUntangled: trying again never makes the leaders worse, and never lays one
// block over another.
func TestBlocksAreUntangled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := &work{field: field{area: Rectangle{0, 0, 200, 120}}}
		var all []*dimensioned
		for range rapid.IntRange(1, 8).Draw(t, "blocks") {
			a := Point{rapid.Float64Range(40, 160).Draw(t, "x"), rapid.Float64Range(40, 80).Draw(t, "y")}
			x := &dimensioned{line: segment{a, a.plus(rapid.Float64Range(1, 20).Draw(t, "long"), 0)}}
			x.want = wanted{of: around(a, 1, 1), wide: rapid.Float64Range(20, 45).Draw(t, "wide"), high: 9, far: 110, along: &x.line}
			if r, _, ok := w.field.place(x.want); ok {
				x.place = r
				w.field.take(r)
				all = append(all, x)
			}
		}
		before := tangle(all)
		w.untangle(all)
		if after := tangle(all); after > before {
			t.Fatalf("%v, then %v", before, after)
		}
		for i, x := range all {
			for _, y := range all[:i] {
				if x.place.Overlaps(y.place) {
					t.Fatalf("%v lies over %v", x.place, y.place)
				}
			}
			if !x.place.Within(w.field.area) {
				t.Fatalf("%v lies beyond the paper", x.place)
			}
		}
		if len(w.field.leads) != len(all) || len(w.field.labels) != len(all) {
			t.Fatalf("%d blocks, %d leaders, %d places", len(all), len(w.field.leads), len(w.field.labels))
		}
	})
}
