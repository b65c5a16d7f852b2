package check

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// counted makes the figure h + d of a cylinder and counts its computations.
func counted(n *atomic.Int64) *Figure[unit.Length, *layout.Cylinder] {
	return &Figure[unit.Length, *layout.Cylinder]{ID: "tiny.sum", Title: "height and diameter", Calc: func(s *Sheet, c *layout.Cylinder) unit.Length {
		n.Add(1)
		h, d := Measure(s, "h", &c.Height), Measure(s, "d", &c.Diameter)
		return Step(s, "x", Formula{Text: "x = h + d"}, func() unit.Length { return unit.Length(float64(h) + float64(d)) })
	}}
}

// TestAFigureIsComputedOnce a subject and a run, for any number of checks,
// workers and pages that show it.
func TestAFigureIsComputedOnce(t *testing.T) {
	l, codes := load(t, `/cylinders/b/height = "1 m ± 1 cm"`), books(t, tall)
	for _, workers := range []int{1, 2, 16} {
		var n atomic.Int64
		figure := counted(&n)
		var set Set
		for i := range 7 {
			c := asks(func(s *Sheet, c *layout.Cylinder) Ruling {
				return AtLeast(s, Fig(s, "x", figure, c), Limit(s, "h_need", code.ClearanceAbove, nil))
			})
			c.ID = fmt.Sprint("tiny.check-", i)
			set.Checks = append(set.Checks, c)
		}
		set.Figures = []Shown{Show(figure, cylindersOf)}
		out, err := Run(context.Background(), set, l, codes, Options{On: judged, Workers: workers})
		if err != nil {
			t.Fatal(err)
		}
		if n.Load() != 1+3 { // a exactly, b at both ends of its band as well
			t.Errorf("%d workers: computed %d times", workers, n.Load())
		}
		if len(out.Findings) != 14 || len(out.Figures) != 2 {
			t.Errorf("%d findings, %d figures", len(out.Findings), len(out.Figures))
		}
		again, err := Run(context.Background(), set, l, codes, Options{On: judged, Workers: workers})
		if err != nil || n.Load() != 2*(1+3) {
			t.Errorf("a second run shares figures with the first: %d, %v", n.Load(), err)
		}
		if diff := cmp.Diff(out, again); diff != "" {
			t.Error(diff)
		}
	}
}

// TestAFigureCarriesItsBand to whoever takes it: the worst end decides, in both
// senses, and the working shows the value taken and the band.
func TestAFigureCarriesItsBand(t *testing.T) {
	var n atomic.Int64
	figure := counted(&n)
	l := load(t, `/cylinders/a/height = "0.40 m ± 1 cm"`, `/cylinders/a/diameter = "0.2 m ± 5 mm"`)
	take := func(hold func(*Sheet, unit.Length) Ruling) report.Finding {
		c := asksOfA(func(s *Sheet, c *layout.Cylinder) Ruling { return hold(s, Fig(s, "x", figure, c)) })
		out, err := Run(context.Background(), Set{Checks: []Check{c}}, l, books(t, tall, low), Options{On: judged, Working: true})
		if err != nil {
			t.Fatal(err)
		}
		return out.Findings[0]
	}
	least := take(func(s *Sheet, x unit.Length) Ruling {
		return AtLeast(s, x, Limit(s, "h_need", code.ClearanceAbove, nil))
	})
	is(t, least, report.NotMet, "")
	most := take(func(s *Sheet, x unit.Length) Ruling {
		return AtMost(s, x, Limit(s, "h_max", code.LockerLowVentEdge, nil))
	})
	is(t, most, report.NotMet, "")
	for f, want := range map[*report.Finding]float64{&least: 0.585, &most: 0.615} {
		p := f.Parts[0]
		if got := *p.Found.SI; math.Abs(got-want) > 1e-12 {
			t.Errorf("judged at %v, want %v", got, want)
		}
		i := slices.IndexFunc(p.Working, func(l report.Line) bool { return l.Role == "figure" })
		line := p.Working[i]
		if line.Symbol != "x" || line.What != "height and diameter" || math.Abs(*line.Value.SI-want) > 1e-12 ||
			math.Abs(*line.Value.Low-0.585) > 1e-12 || math.Abs(*line.Value.High-0.615) > 1e-12 || !strings.Contains(line.Value.Text, ", of ") {
			t.Errorf("the working shows %+v %+v", line, line.Value)
		}
	}
}

// TestWhatIsMissingAtOneCornerOfAFigure is missing for the figure: a value that
// only a branch takes is no zero.
func TestWhatIsMissingAtOneCornerOfAFigure(t *testing.T) {
	figure := &Figure[unit.Length, *layout.Cylinder]{ID: "tiny.branch", Title: "branch", Calc: func(s *Sheet, c *layout.Cylinder) unit.Length {
		h := Measure(s, "h", &c.Height)
		if h > 1 {
			return Measure(s, "d", &c.Diameter)
		}
		return h
	}}
	codes := books(t, low)
	clause := func(s *Sheet, c *layout.Cylinder) Ruling {
		return AtMost(s, Fig(s, "x", figure, c), Limit(s, "h_max", code.LockerLowVentEdge, nil))
	}
	is(t, judge(t, load(t, `/cylinders/a/height = "0.6 m"`, `delete /cylinders/a/diameter`), codes, clause), report.Within, "")
	l := load(t, `/cylinders/a/height = "0.5 m to 1.1 m"`, `/cylinders/a/diameter = "0.3 m"`)
	is(t, judge(t, l, codes, clause), report.NotMet, "") // 0.8 m as written
	l = load(t, `/cylinders/a/height = "0.1 m to 1.1 m"`, `/cylinders/a/diameter = "0.3 m"`)
	is(t, judge(t, l, codes, clause), report.Within, "")
	l = load(t, `/cylinders/a/height = "0.1 m to 1.1 m"`, `delete /cylinders/a/diameter`)
	f := judge(t, l, codes, clause)
	is(t, f, report.NotKnown, report.MissingInput)
	if got := pointersOf(f.Parts[0].Missing); !slices.Equal(got, []string{"/cylinders/a/diameter"}) {
		t.Errorf("missing %v", got)
	}
}

func TestAFigureOfTooManyBands(t *testing.T) {
	for n, want := range map[int]report.Outcome{maxCorners: report.Within, maxCorners + 1: report.NotKnown} {
		figure := &Figure[unit.Length, *layout.Cylinder]{ID: "tiny.many", Title: "the sum of many", Calc: func(s *Sheet, c *layout.Cylinder) unit.Length {
			var sum unit.Length
			for i := range n {
				sum += Band(s, "x", fmt.Sprint("value ", i), unit.Value[unit.Length]{Low: 1, Nominal: 2, High: 3})
			}
			return sum
		}}
		c := asksOfA(func(s *Sheet, c *layout.Cylinder) Ruling {
			return AtLeast(s, Fig(s, "x", figure, c), Limit(s, "h_need", code.ClearanceAbove, nil))
		})
		out, err := Run(context.Background(), Set{Checks: []Check{c}, Figures: []Shown{Show(figure, cylindersOf)}}, load(t), books(t, tall), Options{On: judged})
		if err != nil {
			t.Fatal(err)
		}
		if out.Findings[0].Outcome != want {
			t.Errorf("%d bands: %s", n, out.Findings[0].Outcome)
		}
		known := out.Figures[0].Value != nil
		if known != (n == maxCorners) {
			t.Errorf("%d bands: shown as known: %v", n, known)
		}
		if known && (*out.Figures[0].Value.Low != 10 || *out.Figures[0].Value.High != 30 || *out.Figures[0].Value.SI != 20) {
			t.Errorf("%+v", out.Figures[0].Value)
		}
		if !known && !strings.Contains(out.Findings[0].Parts[0].Missing[0].What, "the sum of many") {
			t.Errorf("%+v", out.Findings[0].Parts[0].Missing)
		}
	}
}

// TestFiguresAsShown: with a value, with a band, with what is missing, with what
// is silent, and with lists that are not stated complete.
func TestFiguresAsShown(t *testing.T) {
	var n atomic.Int64
	show := func(t *testing.T, f Shown, edits ...string) report.Figure {
		out, err := Run(context.Background(), Set{Figures: []Shown{f}}, load(t, edits...), books(t, tall), Options{On: judged, Working: true})
		if err != nil {
			t.Fatal(err)
		}
		return out.Figures[0]
	}
	sum := Show(counted(&n), cylindersOf)
	plain := show(t, sum)
	if plain.ID != "tiny.sum" || plain.Subject != "/cylinders/a" || plain.Label != "cylinder a" || plain.Title != "height and diameter" {
		t.Errorf("%+v", plain)
	}
	if math.Abs(*plain.Value.SI-0.9096) > 1e-12 || plain.Value.Low != nil || len(plain.Working) != 3 || plain.Missing != nil || plain.Note != "" {
		t.Errorf("%+v", plain)
	}
	banded := show(t, sum, `/cylinders/a/height = "0.40 m ± 1 cm"`)
	if got := banded.Value; math.Abs(*got.SI-0.7) > 1e-12 || math.Abs(*got.Low-0.69) > 1e-12 || math.Abs(*got.High-0.71) > 1e-12 || got.Text != "690 mm (27.17 in) to 710 mm (27.95 in)" {
		t.Errorf("%+v", got)
	}
	if read := banded.Working[0].Value; math.Abs(*read.SI-0.4) > 1e-12 {
		t.Errorf("the working begins with %v, want the height as written", *read.SI)
	}
	missing := show(t, sum, `delete /cylinders/a/height`)
	if missing.Value != nil || !slices.Equal(pointersOf(missing.Missing), []string{"/cylinders/a/height"}) {
		t.Errorf("%+v", missing)
	}
	silent := show(t, ShowDwelling(&Figure[unit.Length, *layout.Layout]{ID: "tiny.silent", Calc: func(s *Sheet, l *layout.Layout) unit.Length {
		return Limit(s, "x", code.VentToOpening, nil).At()
	}}))
	if silent.Value != nil || silent.Note != code.VentToOpening.Asks || silent.Subject != "" {
		t.Errorf("%+v", silent)
	}
	open := show(t, ShowDwelling(&Figure[unit.Length, *layout.Layout]{ID: "tiny.open", Calc: func(s *Sheet, l *layout.Layout) unit.Length {
		Inventory(s, layout.InventoryListLines)
		return 2
	}}))
	if open.Value == nil || *open.Value.SI != 2 || !slices.Equal(pointersOf(open.Missing), []string{"/surveyedBy/complete"}) || open.Note == "" {
		t.Errorf("%+v", open)
	}
}

// TestAFigureOfAFigure carries the inner band on, and what is missing.
func TestAFigureOfAFigure(t *testing.T) {
	var n atomic.Int64
	inner := counted(&n)
	outer := &Figure[unit.Length, *layout.Layout]{ID: "tiny.outer", Title: "all", Calc: func(s *Sheet, l *layout.Layout) unit.Length {
		var sum float64
		for _, c := range List(s, &l.Cylinders) {
			sum += float64(Fig(s, Symbol("x", c.ID()), inner, c))
		}
		return Step(s, "y", Formula{Text: "y = x_a + x_b"}, func() unit.Length { return unit.Length(sum) })
	}}
	out, err := Run(context.Background(), Set{Figures: []Shown{ShowDwelling(outer)}}, load(t, `/cylinders/a/height = "0.40 m ± 1 cm"`), books(t, tall), Options{On: judged})
	if err != nil {
		t.Fatal(err)
	}
	v := out.Figures[0].Value
	if math.Abs(*v.Low-1.69) > 1e-12 || math.Abs(*v.High-1.71) > 1e-12 || math.Abs(*v.SI-1.7) > 1e-12 {
		t.Errorf("%v to %v", *v.Low, *v.High)
	}
	if n.Load() != 4 {
		t.Errorf("the inner figure was computed %d times", n.Load())
	}
}

// TestDetailStaysOutOfAnOrdinaryReport, and the set that it was taken from keeps it.
func TestDetailStaysOutOfAnOrdinaryReport(t *testing.T) {
	var n atomic.Int64
	plain, detail := Show(counted(&n), cylindersOf), Detail(Show(counted(&n), cylindersOf))
	detail.ID = "tiny.detail"
	set := Set{Checks: []Check{asks(func(s *Sheet, c *layout.Cylinder) Ruling { return NotApplicable(s, "none") })}, Figures: []Shown{plain, detail}}
	short := set.WithoutDetail()
	if len(short.Checks) != 1 || len(short.Figures) != 1 || short.Figures[0].ID != plain.ID || len(set.Figures) != 2 || set.Figures[1].ID != "tiny.detail" {
		t.Errorf("%d checks, figures %v; of %v", len(short.Checks), short.Figures, set.Figures)
	}
}
