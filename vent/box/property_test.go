package box

import (
	"fmt"
	"math"
	"testing"

	"lowvent.example/schema/unit"
	"pgregory.net/rapid"
)

// Coordinates are drawn on a grid of 1/512 m, which float64 holds exactly and
// which is a whole number of nanometres: sums and mirrors are then exact.
const grid = 1.0 / 512

func drawLength(t *rapid.T, name string, most int) float64 {
	return float64(rapid.IntRange(-most, most).Draw(t, name)) * grid
}

// drawBox draws a box whose coordinates have tolerances of up to the given
// number of grid steps.
func drawBox(t *rapid.T, name string, steps int) Box {
	var b Box
	for _, p := range []*Point{&b.From, &b.To} {
		for i, c := range p.coordinates() {
			label := fmt.Sprintf("%s %c", name, axes[i])
			*c = about(drawLength(t, label, 3000), float64(rapid.IntRange(0, steps).Draw(t, label+" ±"))*grid)
		}
	}
	return b
}

// moved maps every coordinate of b.
func moved(b Box, f func(axis int, x unit.Value[unit.Length]) unit.Value[unit.Length]) Box {
	for _, p := range []*Point{&b.From, &b.To} {
		for i, c := range p.coordinates() {
			*c = f(i, *c)
		}
	}
	return b
}

// within draws an exact box inside the bands of b.
func within(t *rapid.T, name string, b Box) Box {
	return moved(b, func(i int, v unit.Value[unit.Length]) unit.Value[unit.Length] {
		low, high := float64(v.Low), float64(v.High)
		return exact(rapid.OneOf(rapid.Just(low), rapid.Just(high), rapid.Float64Range(low, high)).Draw(t, name))
	})
}

// answers gathers every answer about two boxes and a point of the second.
func answers(a, b Box) map[string]Answer {
	m := map[string]Answer{"Meet": Meet(a, b), "Above": Above(a, b), "Encloses": Encloses(a, b)}
	for _, w := range []Wall{Left, Right, Front, Rear, Floor, Ceiling} {
		m["OnWall "+string(w)] = OnWall(a, b.From, w, 0.05)
	}
	return m
}

// Whatever the coordinates are inside their bands, each figure is inside its
// band and a Yes or a No stays.
func TestBandsHoldEveryCase(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawBox(t, "a", 60), drawBox(t, "b", 60)
		p, q := within(t, "in a", a), within(t, "in b", b)
		bands, cases := results(a, b), results(p, q)
		for what, r := range bands {
			if !(r[0] <= r[1] && r[1] <= r[2]) {
				t.Fatalf("%s = %v is no band", what, r)
			}
			if c := cases[what]; c[1] < r[0] || c[1] > r[2] {
				t.Fatalf("%s = %v, but one case gives %g", what, r, c[1])
			}
		}
		exactly := answers(p, q)
		for what, answer := range answers(a, b) {
			if answer != Unsure && answer != exactly[what] {
				t.Fatalf("%s = %v, but one case gives %v", what, answer, exactly[what])
			}
			if exactly[what] == Unsure {
				t.Fatalf("%s is unsure about exact boxes", what)
			}
		}
	})
}

// The ends of a distance's band are reached, not only safe: some case inside
// the coordinates' bands gives each.
func TestBandsAreTight(t *testing.T) {
	pull := func(b Box, from, to func(unit.Value[unit.Length]) unit.Length) Box {
		b.From = moved(At(b.From), func(_ int, v unit.Value[unit.Length]) unit.Value[unit.Length] { return unit.Exactly(from(v)) }).From
		b.To = moved(At(b.To), func(_ int, v unit.Value[unit.Length]) unit.Value[unit.Length] { return unit.Exactly(to(v)) }).From
		return b
	}
	low := func(v unit.Value[unit.Length]) unit.Length { return v.Low }
	high := func(v unit.Value[unit.Length]) unit.Length { return v.High }
	rapid.Check(t, func(t *rapid.T) {
		a, _ := NewBox(drawBox(t, "a", 0).From, drawBox(t, "a to", 0).From)
		b, _ := NewBox(drawBox(t, "b", 0).From, drawBox(t, "b to", 0).From)
		a, b = loose(a, 0), loose(b, 0.25)
		if grown := Gap(a, pull(b, low, high)).Nominal; Gap(a, b).Low != grown {
			t.Fatalf("least distance %v, the grown box gives %v", Gap(a, b).Low, grown)
		}
		if Height(b).Low > 0 && FloorArea(b).Low > 0 {
			if shrunk := Gap(a, pull(b, high, low)).Nominal; math.Abs(float64(Gap(a, b).High-shrunk)) > 2e-9 {
				t.Fatalf("greatest distance %v, the shrunk box gives %v", Gap(a, b).High, shrunk)
			}
		}
	})
}

func TestDistanceProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := drawBox(t, "a", 20), drawBox(t, "b", 20), drawBox(t, "c", 20)
		if Gap(a, b) != Gap(b, a) || PlanGap(a, b) != PlanGap(b, a) || VerticalGap(a, b) != VerticalGap(b, a) ||
			Overlap(a, b) != Overlap(b, a) || PlanOverlap(a, b) != PlanOverlap(b, a) || Meet(a, b) != Meet(b, a) {
			t.Fatal("not symmetric")
		}
		gap, plan, vertical := three(Gap(a, b)), three(PlanGap(a, b)), three(VerticalGap(a, b))
		for i := range gap {
			if gap[i] < plan[i] || gap[i] < vertical[i] || gap[i] > plan[i]+vertical[i]+2e-9 {
				t.Fatalf("gap %v, plan %v, vertical %v", gap, plan, vertical)
			}
		}
		low := float64(max(Rise(a, b).Nominal, Rise(b, a).Nominal, 0))
		if float64(VerticalGap(a, b).Nominal) != low {
			t.Fatalf("vertical gap %v, rises %v and %v", vertical, Rise(a, b), Rise(b, a))
		}
		// From a to c by way of b: two gaps and the way through b.
		diagonal := math.Sqrt(math.Pow(extent(b, 0), 2) + math.Pow(extent(b, 1), 2) + math.Pow(extent(b, 2), 2))
		if direct := float64(Gap(a, c).Nominal); direct > gap[1]+diagonal+float64(Gap(b, c).Nominal)+1e-8 {
			t.Fatalf("%g directly, %g + %g + %g by way of b", direct, gap[1], diagonal, float64(Gap(b, c).Nominal))
		}
	})
}

// extent is the nominal length of b along an axis.
func extent(b Box, axis int) float64 {
	return math.Abs(float64(b.To.coordinates()[axis].Nominal - b.From.coordinates()[axis].Nominal))
}

// A gap of 0 and touching are one thing, and only boxes that meet overlap.
func TestGapIsZeroWhenBoxesMeet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawBox(t, "a", 0), drawBox(t, "b", 0)
		if rapid.Bool().Draw(t, "push together") {
			b = moved(b, func(i int, v unit.Value[unit.Length]) unit.Value[unit.Length] {
				shift := float64(a.To.coordinates()[i].Nominal - b.From.coordinates()[i].Nominal)
				return exact(float64(v.Nominal) + shift)
			})
		}
		gap, meet, overlap := Gap(a, b).Nominal, Meet(a, b), Overlap(a, b).Nominal
		if (gap == 0) != (meet == Yes) {
			t.Fatalf("gap %v, meet %v", gap, meet)
		}
		if overlap > 0 && gap != 0 {
			t.Fatalf("gap %v, overlap %v", gap, overlap)
		}
		if Encloses(a, b) == Yes && (gap != 0 || Overlap(a, b) != Volume(b)) {
			t.Fatalf("enclosed, but gap %v and overlap %v of %v", gap, overlap, Volume(b))
		}
		if overlap > Volume(a).Nominal || overlap > Volume(b).Nominal || PlanOverlap(a, b).Nominal > FloorArea(a).Nominal {
			t.Fatal("more in common than there is")
		}
		if Encloses(a, a) != Yes || Meet(a, a) != Yes || Gap(a, a).Nominal != 0 {
			t.Fatal("a box is not where it is")
		}
	})
}

// Moving the origin changes no distance and no size.
func TestMovingTheOrigin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawBox(t, "a", 20), drawBox(t, "b", 20)
		shift := [3]float64{drawLength(t, "dx", 3000), drawLength(t, "dy", 3000), drawLength(t, "dz", 3000)}
		by := func(i int, v unit.Value[unit.Length]) unit.Value[unit.Length] {
			d := unit.Length(shift[i])
			return unit.Value[unit.Length]{Nominal: v.Nominal + d, Low: v.Low + d, High: v.High + d}
		}
		before, after := results(a, b), results(moved(a, by), moved(b, by))
		for what := range before {
			if what == "LowestPoint" || what == "HighestPoint" {
				for i := range after[what] {
					if after[what][i] != before[what][i]+shift[2] {
						t.Fatalf("%s: %v moved by %g is %v", what, before[what], shift[2], after[what])
					}
				}
			} else if before[what] != after[what] {
				t.Fatalf("%s: %v, then %v", what, before[what], after[what])
			}
		}
		same(t, answers(a, b), answers(moved(a, by), moved(b, by)), func(w Wall) Wall { return w })
	})
}

// A dwelling and its mirror image have the same distances and sizes, with left
// and right, or front and rear, exchanged.
func TestMirror(t *testing.T) {
	swap := map[int]map[Wall]Wall{
		0: {Front: Rear, Rear: Front},
		1: {Left: Right, Right: Left},
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawBox(t, "a", 20), drawBox(t, "b", 20)
		axis := rapid.IntRange(0, 1).Draw(t, "axis")
		width := unit.Length(drawLength(t, "width", 3000))
		flip := func(i int, v unit.Value[unit.Length]) unit.Value[unit.Length] {
			if i != axis {
				return v
			}
			return unit.Value[unit.Length]{Nominal: width - v.Nominal, Low: width - v.High, High: width - v.Low}
		}
		before, after := results(a, b), results(moved(a, flip), moved(b, flip))
		for what := range before {
			if before[what] != after[what] {
				t.Fatalf("%s: %v, mirrored %v", what, before[what], after[what])
			}
		}
		same(t, answers(a, b), answers(moved(a, flip), moved(b, flip)), func(w Wall) Wall {
			if other, ok := swap[axis][w]; ok {
				return other
			}
			return w
		})
	})
}

// same compares two sets of answers, the walls of the second renamed.
func same(t *rapid.T, before, after map[string]Answer, rename func(Wall) Wall) {
	for what, answer := range before {
		twin := what
		if len(what) > len("OnWall ") && what[:7] == "OnWall " {
			twin = "OnWall " + string(rename(Wall(what[7:])))
		}
		if after[twin] != answer {
			t.Fatalf("%s: %v, then %v", what, answer, after[twin])
		}
	}
}

// The order of the corners changes nothing, and NewBox keeps every figure.
func TestOrderOfCorners(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawBox(t, "a", 20), drawBox(t, "b", 20)
		turned := Box{From: a.To, To: a.From}
		ordered, _ := NewBox(a.From, a.To)
		if again, err := NewBox(ordered.From, ordered.To); err != nil || again != ordered {
			t.Fatalf("ordering twice: %v", err)
		}
		for what, r := range results(a, b) {
			if results(turned, b)[what] != r || results(ordered, b)[what] != r {
				t.Fatalf("%s: %v depends on the order of corners", what, r)
			}
		}
	})
}

// A wider tolerance never makes an answer surer or a band narrower.
func TestWideningTolerance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawBox(t, "a", 20), drawBox(t, "b", 20)
		more := float64(rapid.IntRange(0, 40).Draw(t, "more")) * grid
		widen := func(_ int, v unit.Value[unit.Length]) unit.Value[unit.Length] {
			d := unit.Length(more)
			return unit.Value[unit.Length]{Nominal: v.Nominal, Low: v.Low - d, High: v.High + d}
		}
		wider := results(moved(a, widen), b)
		for what, r := range results(a, b) {
			if w := wider[what]; w[0] > r[0] || w[1] != r[1] || w[2] < r[2] {
				t.Fatalf("%s: %v, with more tolerance %v", what, r, w)
			}
		}
		for what, answer := range answers(moved(a, widen), b) {
			if answer != Unsure && answer != answers(a, b)[what] {
				t.Fatalf("%s: %v, with more tolerance %v", what, answers(a, b)[what], answer)
			}
		}
	})
}
