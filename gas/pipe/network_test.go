package pipe

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

// A van: 4 m of ½ in ACR from the regulator to a tee, 1.5 m of ⅜ in to the cooktop,
// 3 m of ⅜ in to the heater, which stands 0.5 m lower.
func van() []Segment {
	half, threeEighths := unit.Length(0.436*inch), unit.Length(0.311*inch)
	return []Segment{
		{Parent: FromSource, Material: CopperACR, Bore: half, Length: 4, Fittings: Fittings{Valve: 1, SweptBend: 4}},
		{Parent: 0, Material: CopperACR, Bore: threeEighths, Length: 1.5, Rise: 0.7, Fittings: Fittings{TeeThrough: 1, Valve: 1}, Load: 4690},
		{Parent: 0, Material: CopperACR, Bore: threeEighths, Length: 3, Rise: -0.5, Fittings: Fittings{TeeBranch: 1, Elbow90: 2, Valve: 1}, Load: 3500},
	}
}

func TestNetworkOfOneRun(t *testing.T) {
	s := supply(t)
	one := []Segment{{Parent: FromSource, Material: CopperK, Bore: 0.0102, Length: 5, Rise: 1.2, Fittings: Fittings{Elbow90: 3}, Load: 6000}}
	result := must[*Result](t)(Network(s, one))
	length := must[unit.Length](t)(EquivalentLength(5, 0.0102, one[0].Fittings))
	loss := must[Loss](t)(Darcy(s.Gas, s.Atmosphere+unit.AbsolutePressure(s.Outlet), unit.MassFlow(6000/float64(propane.GrossHeat)), 0.0102, 1.5e-6, length))
	head := must[unit.GaugePressure](t)(Head(s.Gas.Density, s.Air, 1.2))
	code := must[unit.GaugePressure](t)(CodeDrop(s.Code, 6000, 0.0102, length))
	r, sink := result.Segments[0], result.Sinks[0]
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"length", float64(r.Equivalent), float64(length)},
		{"drop", float64(r.Drop), float64(loss.Drop + head)},
		{"head", float64(r.Head), float64(head)},
		{"velocity", float64(r.Velocity), float64(loss.Velocity)},
		{"Reynolds", float64(r.Reynolds), float64(loss.Reynolds)},
		{"code", float64(r.CodeOwn), float64(code)},
		{"code over the longest", float64(r.CodeLongest), float64(code)},
		{"pressure", float64(sink.Pressure), float64(s.Outlet - loss.Drop - head)},
		{"Darcy", float64(sink.Darcy), float64(loss.Drop + head)},
		{"sum", float64(sink.CodeSum), float64(code)},
		{"outlet", float64(r.Outlet), float64(sink.Pressure)},
		{"longest", float64(result.Longest), float64(length)},
	} {
		near(t, c.what, c.got, c.want, 1e-3*math.Abs(float64(head))/math.Abs(c.want)+1e-12)
	}
	if result.WorstAt != 0 || result.Unknown != 0 || sink.NotKnown != nil {
		t.Errorf("%+v", result)
	}
}

// The van: what the trunk carries, that each method has its own place, and the worst.
func TestNetworkOfAVan(t *testing.T) {
	s := supply(t)
	result := must[*Result](t)(Network(s, van()))
	if got := result.Segments[0].Power; got != 8190 {
		t.Errorf("the trunk carries %g W", float64(got))
	}
	near(t, "flow", float64(result.Segments[0].Flow), 8190/float64(propane.GrossHeat), 1e-12)
	if len(result.Sinks) != 2 || result.Sinks[0].Segment != 1 || result.Sinks[1].Segment != 2 {
		t.Fatalf("sinks: %+v", result.Sinks)
	}
	for _, sink := range result.Sinks {
		own, trunk := result.Segments[sink.Segment], result.Segments[0]
		near(t, "sum by the code", float64(sink.CodeSum), float64(own.CodeOwn+trunk.CodeOwn), 1e-12)
		near(t, "Darcy", float64(sink.Darcy), float64(own.Drop+trunk.Drop), 1e-9)
		near(t, "worst run on the way", float64(sink.CodeLongest), float64(max(own.CodeLongest, trunk.CodeLongest)), 1e-12)
		if sink.CodeSum > sink.CodeLongest {
			t.Errorf("%+v: the sum is over the longest-length figure", sink)
		}
	}
	if result.Longest != result.Sinks[1].Length || result.WorstAt != 0 {
		t.Errorf("longest %g m, worst %d", float64(result.Longest), result.WorstAt)
	}
	if result.Segments[1].Head <= 0 || result.Segments[2].Head >= 0 {
		t.Errorf("a climb gains or a fall loses: %g, %g Pa", float64(result.Segments[1].Head), float64(result.Segments[2].Head))
	}
	overLongest := must[unit.GaugePressure](t)(CodeDrop(s.Code, 4690, 0.311*inch, result.Longest))
	near(t, "cooktop, over the longest length", float64(result.Segments[1].CodeLongest), float64(overLongest), 1e-12)
}

// tree draws a tree of smooth runs; the parent of each comes before it.
func tree(t *rapid.T, most int) []Segment {
	n := rapid.IntRange(1, most).Draw(t, "segments")
	segments := make([]Segment, n)
	for i := range segments {
		label := fmt.Sprint(i)
		segments[i] = Segment{
			Parent:   rapid.IntRange(FromSource, i-1).Draw(t, "parent"+label),
			Material: rapid.SampledFrom([]Material{CopperK, SteelPipe, Polyethylene, StainlessTube}).Draw(t, "material"+label),
			Bore:     unit.Length(rapid.Float64Range(8e-3, 0.05).Draw(t, "bore"+label)),
			Length:   unit.Length(rapid.Float64Range(0, 6).Draw(t, "length"+label)),
			Fittings: Fittings{Elbow90: rapid.IntRange(0, 3).Draw(t, "elbows"+label), Valve: rapid.IntRange(0, 1).Draw(t, "valve"+label)},
			Load:     unit.GrossPower(rapid.Float64Range(0, 5000).Draw(t, "load"+label)),
		}
	}
	return segments
}

func draws(t *rapid.T, tb testing.TB, segments []Segment) *Result {
	result, err := Network(supply(tb), segments)
	if err != nil {
		t.Fatal(err)
	}
	return result
}

// What is drawn at the source is what the sinks take; pressures add up; the sum along
// the way is never over the longest-length figure.
func TestNetworkConserves(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		segments := tree(rt, 25)
		result := draws(rt, t, segments)
		source, loads := 0.0, 0.0
		for i, s := range segments {
			loads += float64(s.Load)
			if s.Parent == FromSource {
				source += float64(result.Segments[i].Power)
			}
		}
		if math.Abs(source-loads) > 1e-9*loads {
			rt.Fatalf("%g W at the source, %g W at the ends", source, loads)
		}
		for _, sink := range result.Sinks {
			if sink.NotKnown != nil {
				continue
			}
			if sink.CodeSum > sink.CodeLongest*(1+1e-12) {
				rt.Fatalf("%+v: the sum is over the longest-length figure", sink)
			}
			sum := 0.0
			for i := sink.Segment; i != FromSource; i = segments[i].Parent {
				sum += float64(result.Segments[i].Drop)
			}
			if math.Abs(sum-float64(sink.Darcy)) > 1e-6 {
				rt.Fatalf("drops sum to %g Pa, the sink lost %g", sum, float64(sink.Darcy))
			}
			if worst := result.Sinks[result.WorstAt]; sink.Worst() > worst.Worst() {
				rt.Fatalf("%+v is worse than %+v", sink, worst)
			}
		}
	})
}

// The order of the segments has no meaning.
func TestNetworkOrderIsIrrelevant(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		segments := tree(rt, 20)
		place := rapid.Permutation(indexes(len(segments))).Draw(rt, "places")
		shuffled := make([]Segment, len(segments))
		for i, s := range segments {
			if s.Parent != FromSource {
				s.Parent = place[s.Parent]
			}
			shuffled[place[i]] = s
		}
		a, b := draws(rt, t, segments), draws(rt, t, shuffled)
		for i := range segments {
			x, y := a.Segments[i], b.Segments[place[i]]
			if (x.NotKnown == nil) != (y.NotKnown == nil) {
				rt.Fatalf("%v and %v", x.NotKnown, y.NotKnown)
			}
			for _, pair := range [][2]unit.GaugePressure{{x.Drop, y.Drop}, {x.Outlet, y.Outlet}, {x.CodeOwn, y.CodeOwn}, {x.CodeLongest, y.CodeLongest}} {
				if math.Abs(float64(pair[0]-pair[1])) > 1e-9*(1+math.Abs(float64(pair[0]))) {
					rt.Fatalf("%+v and %+v", x, y)
				}
			}
		}
		if a.Unknown != b.Unknown || math.Abs(float64(a.Longest-b.Longest)) > 1e-9 {
			rt.Fatalf("%g m and %g m", float64(a.Longest), float64(b.Longest))
		}
	})
}

func indexes(n int) []int {
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	return all
}

// A run cut into pieces is one run: by the code exactly, and by Darcy too, whose
// isothermal form adds up in the squares of the pressure.
func TestNetworkChainsAddUp(t *testing.T) {
	for _, s := range []Supply{supply(t), firstStage(t)} {
		whole := Segment{Parent: FromSource, Material: SteelPipe, Bore: 0.0158, Length: 12, Fittings: Fittings{Elbow90: 6}, Load: 40e3}
		want := must[*Result](t)(Network(s, []Segment{whole})).Sinks[0]
		var chain []Segment
		for i := range 6 {
			piece := whole
			piece.Parent, piece.Length, piece.Fittings, piece.Load = i-1, 2, Fittings{Elbow90: 1}, 0
			chain = append(chain, piece)
		}
		chain[5].Load = 40e3
		got := must[*Result](t)(Network(s, chain))
		sink := got.Sinks[0]
		near(t, "Darcy", float64(sink.Darcy), float64(want.Darcy), 1e-9)
		near(t, "code sum", float64(sink.CodeSum), float64(want.CodeSum), 1e-9)
		near(t, "longest length", float64(sink.CodeLongest), float64(want.CodeLongest), 1e-9)
		near(t, "sum and longest of one way", float64(sink.CodeSum), float64(sink.CodeLongest), 1e-9)
	}
}

// At 1.5 psi and over the high-pressure form is used: the network gives what
// CodeHighOutlet gives.
func TestNetworkAtHighPressure(t *testing.T) {
	s := firstStage(t)
	segments := []Segment{{Parent: FromSource, Material: CopperK, Bore: 0.305 * inch, Length: 50 * foot, Load: 285 * kiloBTU}}
	sink := must[*Result](t)(Network(s, segments)).Sinks[0]
	inlet := s.Atmosphere + unit.AbsolutePressure(s.Outlet)
	outlet := must[unit.AbsolutePressure](t)(CodeHighOutlet(s.Code, 285*kiloBTU, 0.305*inch, 50*foot, inlet))
	near(t, "drop", float64(sink.CodeSum), float64(inlet-outlet), 1e-9)
	near(t, "drop over the longest", float64(sink.CodeLongest), float64(inlet-outlet), 1e-9)
}

// The high-pressure form begins at 1.5 psi itself.
func TestNetworkFormsMeet(t *testing.T) {
	at := func(outlet unit.GaugePressure) (sum, low unit.GaugePressure) {
		s := firstStage(t)
		s.Outlet = outlet
		sink := must[*Result](t)(Network(s, []Segment{{Parent: FromSource, Material: CopperK, Bore: 0.01, Length: 10, Load: 9000}})).Sinks[0]
		return sink.CodeSum, must[unit.GaugePressure](t)(CodeDrop(s.Code, 9000, 0.01, 10))
	}
	if sum, low := at(HighPressureFrom); math.Abs(float64(sum/low)-1) < 0.01 {
		t.Errorf("at 1.5 psi: %g Pa, the low-pressure form gives %g", float64(sum), float64(low))
	}
	below, low := at(HighPressureFrom * (1 - 1e-9))
	near(t, "just under 1.5 psi", float64(below), float64(low), 1e-12)
}

// More of anything, anywhere, never makes a sink lose less. (Height is left out: gas
// under less pressure is lighter and a climb then costs less of it.)
func TestNetworkIsMonotone(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		segments := tree(rt, 12)
		before := draws(rt, t, segments)
		worse := append([]Segment(nil), segments...)
		i := rapid.IntRange(0, len(worse)-1).Draw(rt, "which")
		switch rapid.IntRange(0, 3).Draw(rt, "what") {
		case 0:
			worse[i].Length += 2
		case 1:
			worse[i].Bore *= 0.9
			worse[i].Length += segments[i].Bore * unit.Length(segments[i].Fittings.bores()) * 0.1 // the fittings shrink with the bore
		case 2:
			worse[i].Fittings.Elbow90++
		case 3:
			worse[i].Load += 700
		}
		after := draws(rt, t, worse)
		at := map[int]SinkResult{}
		for _, s := range after.Sinks {
			at[s.Segment] = s
		}
		for _, s := range before.Sinks {
			w, still := at[s.Segment]
			if !still {
				rt.Fatalf("sink %d is gone", s.Segment)
			}
			if w.NotKnown != nil {
				continue
			}
			if s.NotKnown != nil || w.Darcy < s.Darcy-1e-7 || w.CodeSum < s.CodeSum-1e-7 || w.CodeLongest < s.CodeLongest-1e-7 {
				rt.Fatalf("%+v became %+v", s, w)
			}
		}
	})
}

// No load, no drop; only height.
func TestNetworkWithoutLoad(t *testing.T) {
	idle := van()
	for i := range idle {
		idle[i].Load, idle[i].Rise = 0, 0
	}
	result := must[*Result](t)(Network(supply(t), idle))
	for _, s := range result.Sinks {
		if s.Darcy != 0 || s.CodeSum != 0 || s.CodeLongest != 0 || s.Pressure != supply(t).Outlet {
			t.Errorf("%+v", s)
		}
	}
	empty := must[*Result](t)(Network(supply(t), nil))
	if len(empty.Sinks) != 0 || empty.WorstAt != -1 {
		t.Errorf("%+v", empty)
	}
}

// A load at a run that goes on is a sink of its own.
func TestNetworkLoadOnTheWay(t *testing.T) {
	segments := []Segment{
		{Parent: FromSource, Material: CopperK, Bore: 0.0102, Length: 2, Load: 2000},
		{Parent: 0, Material: CopperK, Bore: 0.0102, Length: 2, Load: 3000},
	}
	result := must[*Result](t)(Network(supply(t), segments))
	if len(result.Sinks) != 2 || result.Segments[0].Power != 5000 || result.Sinks[0].Darcy >= result.Sinks[1].Darcy {
		t.Errorf("%+v", result)
	}
}

// A hose has no table: it and what lies behind it are not known, by a typed error, while
// the rest is; its length counts for the farthest sink.
func TestNetworkHoseIsNotKnown(t *testing.T) {
	segments := append(van(), Segment{Parent: 0, Material: Hose, Length: 9, Load: 1000}, Segment{Parent: 3, Material: CopperK, Bore: 0.0102, Length: 1, Load: 500})
	result := must[*Result](t)(Network(supply(t), segments))
	for _, i := range []int{3, 4} {
		var none *NoTableError
		if err := result.Segments[i].NotKnown; !errors.As(err, &none) || none.Segment != 3 || none.What != "hose" || none.Error() == "" {
			t.Errorf("segment %d: %v", i, err)
		}
		r := result.Segments[i]
		if r.Power == 0 || r.Equivalent == 0 || r.Drop != 0 || r.Outlet != 0 || r.CodeOwn != 0 || r.CodeLongest != 0 {
			t.Errorf("segment %d: %+v", i, r)
		}
	}
	if result.Unknown != 2 || len(result.Sinks) != 4 || result.Sinks[3].NotKnown == nil || result.Sinks[3].Pressure != 0 {
		t.Errorf("%+v", result.Sinks)
	}
	if result.Sinks[result.WorstAt].NotKnown != nil || result.Sinks[0].NotKnown != nil {
		t.Errorf("worst %d: %+v", result.WorstAt, result.Sinks)
	}
	if want := result.Segments[0].Equivalent + 10; math.Abs(float64(result.Longest-want)) > 1e-12 {
		t.Errorf("longest %g m, want %g", float64(result.Longest), float64(want))
	}
	alone := must[*Result](t)(Network(supply(t), []Segment{{Parent: FromSource, Material: Hose, Length: 1, Load: 1}}))
	if alone.WorstAt != -1 || alone.Unknown != 1 {
		t.Errorf("%+v", alone)
	}
}

// Corrugated tube: the drop of the table, in both methods, up to its end.
func TestNetworkCorrugated(t *testing.T) {
	s := supply(t)
	one := func(ehd int, length, kBTU float64) SinkResult {
		return must[*Result](t)(Network(s, []Segment{{Parent: FromSource, Material: Corrugated, EHD: ehd, Length: unit.Length(length * foot),
			Load: unit.GrossPower(kBTU * kiloBTU), Fittings: Fittings{Elbow90: 4}}})).Sinks[0]
	}
	for _, c := range []struct {
		ehd          int
		length, kBTU float64
		inches       float64 // w.c.
	}{
		{13, 20, 34, 0.5}, {13, 10, 34, 0.25}, {13, 20, 33, 0.5}, {13, 20, 30, 0.4}, {13, 10, 0, 0}, {25, 60, 126, 0.5}, {25, 30, 102, 0.5 * 30 / 90}, {25, 9, 1, 0.05},
	} {
		sink := one(c.ehd, c.length, c.kBTU)
		if sink.NotKnown != nil {
			t.Fatal(sink.NotKnown)
		}
		for _, drop := range []unit.GaugePressure{sink.Darcy, sink.CodeSum, sink.CodeLongest} {
			if math.Abs(float64(drop)/inchOfWater-c.inches) > 1e-9 {
				t.Errorf("EHD %d, %g ft, %g kBTU/h: %g in, want %g", c.ehd, c.length, c.kBTU, float64(drop)/inchOfWater, c.inches)
			}
		}
	}
	var none *NoTableError
	if err := one(13, 3, 73).NotKnown; !errors.As(err, &none) {
		t.Errorf("beyond the table: %v", err)
	}
	if err := one(14, 3, 1).NotKnown; !errors.As(err, &none) {
		t.Errorf("no such designation: %v", err)
	}
	s = firstStage(t)
	if err := one(25, 10, 10).NotKnown; !errors.As(err, &none) {
		t.Errorf("at 10 psi: %v", err)
	}
}

// A load that cannot pass is a finding of its own kind, and all behind it inherits it.
func TestNetworkExhausted(t *testing.T) {
	for _, s := range []Supply{supply(t), firstStage(t)} {
		segments := []Segment{
			{Parent: FromSource, Material: CopperACR, Bore: 3e-3, Length: 50},
			{Parent: 0, Material: CopperACR, Bore: 3e-3, Length: 50, Load: 200e3},
		}
		result := must[*Result](t)(Network(s, segments))
		var none *ExhaustedError
		if err := result.Sinks[0].NotKnown; !errors.As(err, &none) || none.Segment != 0 || none.Error() == "" {
			t.Errorf("error %v, want an ExhaustedError", err)
		}
		if result.Unknown != 1 {
			t.Errorf("%+v", result)
		}
	}
	// Corrugated tube of 3 km at the load of its shortest row, and a climb behind it.
	tall := []Segment{{Parent: FromSource, Material: Corrugated, EHD: 13, Length: 3000, Load: 72 * kiloBTU}, {Parent: 0, Material: CopperK, Bore: 0.01, Rise: 1000}}
	var spent *ExhaustedError
	if err := must[*Result](t)(Network(supply(t), tall)).Segments[1].NotKnown; !errors.As(err, &spent) || spent.Method != tableMethod {
		t.Errorf("error %v, want an ExhaustedError of the table", err)
	}
	// By the code alone: the high-pressure form runs out before Darcy does.
	s := firstStage(t)
	s.Code.Cr = 5
	result := must[*Result](t)(Network(s, []Segment{{Parent: FromSource, Material: CopperK, Bore: 0.305 * inch, Length: 60, Load: 300 * kiloBTU}}))
	var none *ExhaustedError
	if err := result.Sinks[0].NotKnown; !errors.As(err, &none) || none.Method != codeMethod {
		t.Errorf("error %v, want one of the code equation", err)
	}
}

// A material that is not listed has no roughness: not known, never smooth.
func TestNetworkUnlistedMaterial(t *testing.T) {
	result := must[*Result](t)(Network(supply(t), []Segment{{Parent: FromSource, Material: "cheese", Bore: 0.01, Length: 1, Load: 1}}))
	var none *NoTableError
	if err := result.Sinks[0].NotKnown; !errors.As(err, &none) || none.What != "cheese" {
		t.Errorf("error %v", err)
	}
}

func TestNetworkRefusesWhatIsNoTree(t *testing.T) {
	pipe := func(parents ...int) []Segment {
		var s []Segment
		for _, p := range parents {
			s = append(s, Segment{Parent: p, Material: CopperK, Bore: 0.01, Length: 1})
		}
		return s
	}
	for what, segments := range map[string][]Segment{
		"own parent":          pipe(0),
		"ring of two":         pipe(1, 0),
		"ring below a tree":   pipe(-1, 2, 3, 1),
		"dangling":            pipe(-1, 7),
		"one past the end":    pipe(-1, 2),
		"below FromSource":    pipe(-2),
		"least integer":       pipe(math.MinInt),
		"greatest integer":    pipe(math.MaxInt),
		"ring with a branch":  pipe(1, 0, 0),
		"source and own ring": pipe(-1, 1),
	} {
		_, err := Network(supply(t), segments)
		var broken *TreeError
		if !errors.As(err, &broken) || broken.Error() == "" {
			t.Errorf("%s: error %v, want a TreeError", what, err)
		}
		if what == "source and own ring" && broken.Segment != 1 {
			t.Errorf("segment %d is named, 1 is its own parent", broken.Segment)
		}
		if _, err := SolveSizes(supply(t), segments, 100); !errors.As(err, &broken) {
			t.Errorf("%s, sizes: error %v, want a TreeError", what, err)
		}
	}
}

func TestNetworkRefusesValues(t *testing.T) {
	good := van()
	for _, bad := range nonsense {
		for what, change := range map[string]func(*Segment, *Supply){
			"bore":      func(s *Segment, _ *Supply) { s.Bore = unit.Length(bad) },
			"length":    func(s *Segment, _ *Supply) { s.Length = unit.Length(bad) },
			"load":      func(s *Segment, _ *Supply) { s.Load = unit.GrossPower(bad) },
			"rise":      func(s *Segment, _ *Supply) { s.Rise = unit.Length(bad * 1e12) },
			"outlet":    func(_ *Segment, s *Supply) { s.Outlet = unit.GaugePressure(bad) },
			"outside":   func(_ *Segment, s *Supply) { s.Atmosphere = unit.AbsolutePressure(bad) },
			"air":       func(_ *Segment, s *Supply) { s.Air = unit.Density(bad) },
			"density":   func(_ *Segment, s *Supply) { s.Gas.Density = unit.Density(bad) },
			"viscosity": func(_ *Segment, s *Supply) { s.Gas.Viscosity = unit.Viscosity(bad) },
			"gas":       func(_ *Segment, s *Supply) { s.Code.Cr = unit.Ratio(bad) },
		} {
			segments, from := append([]Segment(nil), good...), supply(t)
			if what == "rise" && bad == -1e-9 {
				continue // −1 km is a rise
			}
			change(&segments[1], &from)
			_, err := Network(from, segments)
			outOfRange(t, fmt.Sprint(what, " ", bad), err)
			_, err = SolveSizes(from, segments, 100)
			if what != "bore" { // SolveSizes chooses the bore
				outOfRange(t, fmt.Sprint("sizes, ", what, " ", bad), err)
			}
		}
	}
	good[2].Fittings.Valve = -1
	_, err := Network(supply(t), good)
	var at *SegmentError
	if !errors.As(err, &at) || at.Segment != 2 || at.Error() == "" {
		t.Errorf("error %v, want one that names segment 2", err)
	}
}

// A chain of 200 000 runs neither overflows nor slows to a crawl, whichever end comes
// first in the slice.
func TestNetworkDeepChain(t *testing.T) {
	const n = 200_000
	down, up := make([]Segment, n), make([]Segment, n)
	for i := range n {
		down[i] = Segment{Parent: i - 1, Material: CopperL, Bore: 0.05, Length: 0.01}
		up[i] = Segment{Parent: i + 1, Material: CopperL, Bore: 0.05, Length: 0.01}
	}
	up[n-1].Parent = FromSource
	down[n-1].Load, up[0].Load = 5000, 5000
	a, b := must[*Result](t)(Network(supply(t), down)), must[*Result](t)(Network(supply(t), up))
	near(t, "Darcy, from either end", float64(a.Sinks[0].Darcy), float64(b.Sinks[0].Darcy), 1e-9)
	near(t, "length", float64(a.Longest), n*0.01, 1e-9)
}

// The same input gives the same result, to the bit.
func TestNetworkIsRepeatable(t *testing.T) {
	a, b := must[*Result](t)(Network(supply(t), van())), must[*Result](t)(Network(supply(t), van()))
	if diff := cmp.Diff(a, b); diff != "" {
		t.Error(diff)
	}
}

// bush is a tree of 10 000 runs in which each has two below it, chain one way of as many.
func bush(n int) []Segment {
	segments := make([]Segment, n)
	for i := range segments {
		segments[i] = Segment{Parent: (i+1)/2 - 1, Material: SteelPipe, Bore: 0.1, Length: 0.5, Fittings: Fittings{TeeBranch: 1}, Load: 50}
	}
	return segments
}

func BenchmarkNetworkBush(b *testing.B) { benchmarkNetwork(b, bush(10_000)) }

func BenchmarkNetworkChain(b *testing.B) {
	segments := bush(10_000)
	for i := range segments {
		segments[i].Parent, segments[i].Length = i-1, 0.01
	}
	benchmarkNetwork(b, segments)
}

func benchmarkNetwork(b *testing.B, segments []Segment) {
	s := supply(b)
	b.ReportAllocs()
	for b.Loop() {
		result, err := Network(s, segments)
		if err != nil || result.Unknown > 0 {
			b.Fatal(err, result.Unknown)
		}
	}
}
