package pool

import (
	order "cmp"
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"lowvent.example/schema/unit"
)

// anySpace draws rooms, openings between any of them, rings among them, drains, leaks
// and points. On a grid, levels coincide often.
func anySpace(grid float64) *rapid.Generator[Space] {
	return rapid.Custom(func(t *rapid.T) (s Space) {
		level := func(name string, low, high float64) unit.Length {
			if grid > 0 {
				return unit.Length(grid * float64(rapid.IntRange(int(math.Ceil(low/grid-1e-9)), int(math.Floor(high/grid+1e-9))).Draw(t, name)))
			}
			return unit.Length(rapid.Float64Range(low, high).Draw(t, name))
		}
		n := rapid.IntRange(1, 6).Draw(t, "rooms")
		for range n {
			s.Rooms = append(s.Rooms, Room{level("floor", -1, 0.5), level("top", 1, 2.5), unit.Area(rapid.Float64Range(0.5, 20).Draw(t, "area"))})
		}
		room := func() int { return rapid.IntRange(0, n-1).Draw(t, "room") }
		if n > 1 {
			for range rapid.IntRange(0, 2*n).Draw(t, "openings") {
				a := room()
				b := (a + rapid.IntRange(1, n-1).Draw(t, "onward")) % n
				s.Openings = append(s.Openings, Opening{a, b, level("sill", -0.5, 0.75), unit.Length(rapid.Float64Range(0.1, 2).Draw(t, "width"))})
			}
		}
		inside := func() (int, unit.Length) {
			r := room()
			return r, min(max(level("level", -1, 2.5), s.Rooms[r].Floor), s.Rooms[r].Top)
		}
		for range rapid.IntRange(0, 2).Draw(t, "drains") {
			r, z := inside()
			s.Drains = append(s.Drains, Drain{r, z, unit.VolumeFlow(rapid.Float64Range(0, 0.5).Draw(t, "carries"))})
		}
		for range rapid.IntRange(1, 3).Draw(t, "leaks") {
			r, z := inside()
			s.Leaks = append(s.Leaks, Leak{r, z, unit.VolumeFlow(rapid.Float64Range(0.01, 1).Draw(t, "gas"))})
		}
		for range rapid.IntRange(1, 8).Draw(t, "points") {
			r, z := inside()
			s.Points = append(s.Points, Point{r, z})
		}
		return s
	})
}

// TestNothingIsLost: what leaks lies in layers, is drained or pressed out, at any time;
// no room holds gas over its top; no layer stands over an open sill below which its
// neighbour still has room.
func TestNothingIsLost(t *testing.T) {
	for _, grid := range []float64{0, 0.25} {
		rapid.Check(t, func(t *rapid.T) {
			s := anySpace(grid).Draw(t, "space")
			until := unit.Duration(rapid.Float64Range(0, 500).Draw(t, "until"))
			x := unit.Ratio(rapid.Float64Range(0.01, 1).Draw(t, "x"))
			f := must[Filling](t)(s.Fill(Layer{Share: x}, until))
			balanced(t, s, f, until)
			for i, r := range s.Rooms {
				if f.Levels[i] < r.Floor || f.Levels[i] > r.Top {
					t.Fatalf("room %d: layer at %v", i, f.Levels[i])
				}
			}
			for _, o := range s.Openings {
				sill, a, b := s.sill(o), f.Levels[o.A], f.Levels[o.B]
				if high, low := float64(max(a, b)), float64(min(a, b)); high > sill+1e-9 && low < high-1e-9 && low < float64(min(s.Rooms[o.A].Top, s.Rooms[o.B].Top))-1e-9 {
					t.Fatalf("over a sill at %v stand %v and %v", sill, a, b)
				}
			}
		})
	}
}

// soonests are the times of Arrival.Soonest, forever for never.
func soonests(t failer, s Space, eachWay bool) (times []float64) {
	t.Helper()
	for _, a := range must[Filling](t)(s.Fill(Layer{0.1, 0.01, eachWay}, 1e6)).Arrivals {
		for _, m := range []Moment{a.Layer, a.Soonest()} {
			if m.Never {
				m.After = 1e6
			}
			times = append(times, float64(m.After))
		}
	}
	return times
}

// TestNeverLater: parted by widths nothing is sooner than each way. More gas,
// less floor, a lower point, a further leak make nothing later.
func TestNeverLater(t *testing.T) {
	for _, grid := range []float64{0, 0.25} {
		rapid.Check(t, func(t *rapid.T) {
			s := anySpace(grid).Draw(t, "space")
			k := rapid.Float64Range(0.05, 1).Draw(t, "k")
			i := rapid.IntRange(0, 5).Draw(t, "i")
			base, parted := soonests(t, s, true), soonests(t, s, false)
			for j := range base {
				if base[j] > parted[j]*(1+1e-9)+1e-9 {
					t.Fatalf("answer %d at %v each way, parted at %v", j, base[j], parted[j])
				}
			}
			copied := func() Space {
				return Space{slices.Clone(s.Rooms), s.Openings, s.Drains, slices.Clone(s.Leaks), slices.Clone(s.Points)}
			}
			more, smaller, lower, further, drained := copied(), copied(), copied(), copied(), copied()
			more.Leaks[i%len(s.Leaks)].Gas = unit.VolumeFlow(float64(s.Leaks[i%len(s.Leaks)].Gas) / k)
			smaller.Rooms[i%len(s.Rooms)].Area = unit.Area(float64(s.Rooms[i%len(s.Rooms)].Area) * k)
			for j, p := range s.Points {
				floor := s.Rooms[p.Room].Floor
				lower.Points[j].Level = max(floor, p.Level-unit.Length(float64(p.Level-floor)*k))
			}
			r := i % len(s.Rooms)
			further.Leaks = append(further.Leaks, Leak{r, s.Rooms[r].Floor, 0.3})
			drained.Drains = append(slices.Clone(s.Drains), Drain{r, s.Rooms[r].Floor, 1})
			for name, changed := range map[string]Space{"more gas": more, "smaller floor": smaller, "lower point": lower, "a further leak": further, "a drain, given no credit": drained} {
				for j, got := range soonests(t, changed, true) {
					if got > base[j]*(1+1e-9)+1e-9 {
						t.Fatalf("%s: answer %d at %v, before %v", name, j, got, base[j])
					}
				}
			}
		})
	}
}

// TestFillHasNoUnits: lengths by k, so areas by k² and flows by k³, leave all times as
// they are; flows by k alone divide them by k.
func TestFillHasNoUnits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySpace(0).Draw(t, "space")
		k := rapid.SampledFrom([]float64{0.25, 0.5, 2, 4}).Draw(t, "k") // powers of two round to nothing
		scaled := Space{Openings: slices.Clone(s.Openings)}
		quick := Space{Rooms: s.Rooms, Openings: s.Openings, Points: s.Points}
		for _, r := range s.Rooms {
			scaled.Rooms = append(scaled.Rooms, Room{r.Floor * unit.Length(k), r.Top * unit.Length(k), unit.Area(float64(r.Area) * k * k)})
		}
		for i, o := range s.Openings {
			scaled.Openings[i].Sill = unit.Length(float64(o.Sill) * k)
		}
		for _, d := range s.Drains {
			scaled.Drains = append(scaled.Drains, Drain{d.Room, unit.Length(float64(d.Level) * k), unit.VolumeFlow(float64(d.Carries) * k * k * k)})
			quick.Drains = append(quick.Drains, Drain{d.Room, d.Level, unit.VolumeFlow(float64(d.Carries) * k)})
		}
		for _, l := range s.Leaks {
			scaled.Leaks = append(scaled.Leaks, Leak{l.Room, unit.Length(float64(l.Level) * k), unit.VolumeFlow(float64(l.Gas) * k * k * k)})
			quick.Leaks = append(quick.Leaks, Leak{l.Room, l.Level, unit.VolumeFlow(float64(l.Gas) * k)})
		}
		for _, p := range s.Points {
			scaled.Points = append(scaled.Points, Point{p.Room, unit.Length(float64(p.Level) * k)})
		}
		base := must[Filling](t)(s.Fill(Layer{Share: 0.1}, 1e4))
		if diff := cmp.Diff(base.Arrivals, must[Filling](t)(scaled.Fill(Layer{Share: 0.1}, 1e4)).Arrivals, closely); diff != "" {
			t.Fatalf("lengths by %v:\n%s", k, diff)
		}
		hurried := must[Filling](t)(quick.Fill(Layer{Share: 0.1}, unit.Duration(1e4/k))).Arrivals
		for i, a := range base.Arrivals {
			a.Layer.After = unit.Duration(float64(a.Layer.After) / k)
			if diff := cmp.Diff(a.Layer, hurried[i].Layer, closely); diff != "" {
				t.Fatalf("flows by %v:\n%s", k, diff)
			}
		}
	})
}

// TestOrderDoesNotMatter: the rooms in another order, openings turned round and in
// another order give the same times.
func TestOrderDoesNotMatter(t *testing.T) {
	for _, grid := range []float64{0, 0.25} {
		rapid.Check(t, func(t *rapid.T) {
			s := anySpace(grid).Draw(t, "space")
			place := rapid.Permutation(slices.Collect(func(yield func(int) bool) {
				for i := range s.Rooms {
					if !yield(i) {
						return
					}
				}
			})).Draw(t, "places")
			turned := Space{Rooms: make([]Room, len(s.Rooms))}
			for i, r := range s.Rooms {
				turned.Rooms[place[i]] = r
			}
			for _, o := range slices.Backward(s.Openings) {
				turned.Openings = append(turned.Openings, Opening{place[o.B], place[o.A], o.Sill, o.Width})
			}
			for _, d := range slices.Backward(s.Drains) {
				turned.Drains = append(turned.Drains, Drain{place[d.Room], d.Level, d.Carries})
			}
			for _, l := range slices.Backward(s.Leaks) {
				turned.Leaks = append(turned.Leaks, Leak{place[l.Room], l.Level, l.Gas})
			}
			for _, p := range s.Points {
				turned.Points = append(turned.Points, Point{place[p.Room], p.Level})
			}
			way := rapid.Bool().Draw(t, "each way")
			a, b := soonests(t, s, way), soonests(t, turned, way)
			for i := range a {
				if math.Abs(a[i]-b[i]) > 1e-9*a[i]+1e-9 {
					t.Fatalf("answer %d: %v, in another order %v", i, a[i], b[i])
				}
			}
		})
	}
}

// TestSymmetricRooms: what lies alike on both sides is reached alike.
func TestSymmetricRooms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		wing := Room{unit.Length(draw("floor", -1, 0.2)), 2, unit.Area(draw("area", 0.5, 20))}
		sill, z := unit.Length(draw("sill", -1, 0.5)), unit.Length(draw("z", 0.2, 2))
		s := Space{
			Rooms:    []Room{wing, {0, 2, 8}, wing},
			Openings: []Opening{{0, 1, sill, 0.6}, {1, 2, sill, 0.6}},
			Leaks:    []Leak{{1, 0.5, unit.VolumeFlow(draw("gas", 1e-6, 1))}},
			Points:   []Point{{0, z}, {2, z}},
		}
		f := must[Filling](t)(s.Fill(Layer{Share: 0.017}, 1e12))
		if diff := cmp.Diff(f.Arrivals[0], f.Arrivals[1], closely); diff != "" || f.Arrivals[0].Layer.Never {
			t.Fatalf("the wings differ, or are never reached:\n%s", diff)
		}
	})
}

// TestOneRoomIsTheClosedForm holds the network against LayerTime.
func TestOneRoomIsTheClosedForm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		A, z := rapid.Float64Range(0.1, 100).Draw(t, "A"), rapid.Float64Range(0, 2).Draw(t, "z")
		q, x := rapid.Float64Range(1e-7, 1).Draw(t, "q"), rapid.Float64Range(1e-3, 1).Draw(t, "x")
		s := Space{Rooms: []Room{{0.3, 2.3, unit.Area(A)}}, Leaks: []Leak{{0, 0.3, unit.VolumeFlow(q)}}, Points: []Point{{0, unit.Length(0.3 + z)}}}
		got := must[Filling](t)(s.Fill(Layer{Share: unit.Ratio(x)}, 1e12)).Arrivals[0]
		want := must[unit.Duration](t)(LayerTime(unit.Area(A), s.Points[0].Level-0.3, unit.Ratio(x), unit.VolumeFlow(q)))
		near(t, "layer", float64(got.Layer.After), float64(want), 1e-9)
		near(t, "alone", float64(got.Alone.After), float64(want), 1e-9)
	})
}

// poured fills a space in small steps, moving gas over every sill until nothing moves:
// the same balance without events, flows or pools.
func poured(s Space, step float64, steps int) (levels []float64, reached []float64) {
	levels, reached = make([]float64, len(s.Rooms)), lasting(len(s.Points))
	wet := make([]bool, len(s.Rooms))
	for i, r := range s.Rooms {
		levels[i] = float64(r.Floor)
	}
	openings := slices.Clone(s.Openings)
	slices.SortFunc(openings, func(a, b Opening) int { return order.Compare(s.sill(a), s.sill(b)) })
	add := func(room int, volume float64) {
		levels[room] += volume / float64(s.Rooms[room].Area)
		wet[room] = wet[room] || volume > 0
	}
	for n := 1; n <= steps; n++ {
		for _, l := range s.Leaks {
			add(l.Room, float64(l.Gas)*step)
		}
		for moved := true; moved; {
			moved = false
			for _, o := range openings { // the lowest first, or gas splashes over a higher sill
				a, b := o.A, o.B
				if levels[a] < levels[b] {
					a, b = b, a
				}
				A, B, sill := float64(s.Rooms[a].Area), float64(s.Rooms[b].Area), s.sill(o)
				even := (levels[a]*A + levels[b]*B) / (A + B)
				if over := (levels[a] - max(sill, even)) * A; over > 1e-9*step {
					add(a, -over)
					add(b, over)
					moved = true
					break
				}
			}
		}
		for i, p := range s.Points {
			if wet[p.Room] && levels[p.Room] >= float64(p.Level)-1e-7 {
				reached[i] = min(reached[i], float64(n)*step)
			}
		}
	}
	return levels, reached
}

// TestFillAgainstPouring holds the events against small steps. Levels are drawn so
// that no two sills of a pool lie alike: there the widths decide, of which pouring
// knows nothing.
func TestFillAgainstPouring(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySpace(0.001).Draw(t, "space")
		s.Drains = nil
		for i := range s.Rooms { // high ceilings, no two floors or sills alike
			s.Rooms[i].Top = 500
			s.Rooms[i].Floor += unit.Length(float64(i) * 1.7e-3)
		}
		for i := range s.Openings {
			s.Openings[i].Sill += unit.Length(float64(i+1) * 1.3e-4)
		}
		for i, p := range s.Points {
			s.Points[i].Level = max(p.Level, s.Rooms[p.Room].Floor)
		}
		for i, l := range s.Leaks {
			s.Leaks[i].Level = max(l.Level, s.Rooms[l.Room].Floor)
		}
		const step, steps = 0.05, 400
		distinct := map[float64]bool{}
		for _, o := range s.Openings {
			if distinct[s.sill(o)] {
				return // two ways over one floor
			}
			distinct[s.sill(o)] = true
		}
		levels, reached := poured(s, step, steps)
		f := must[Filling](t)(s.Fill(Layer{Share: 1}, step*steps))
		for i, want := range levels {
			if math.Abs(float64(f.Levels[i])-want) > 1e-5 {
				t.Fatalf("room %d: layer at %v, poured to %v", i, f.Levels[i], want)
			}
		}
		for i, want := range reached {
			got := f.Arrivals[i].Layer
			if want < forever && (got.Never || math.Abs(float64(got.After)-want) > 1.5*step) {
				t.Fatalf("point %d: %+v, poured %v s", i, got, want)
			}
			if want == forever && !got.Never && float64(got.After) < step*(steps-1.5) {
				t.Fatalf("point %d: %+v, never when poured", i, got)
			}
		}
	})
}

// stairs is a house of n rooms, each a step lower than the last and joined to it over
// a sill, with a shorter way every ten rooms, a point in each.
func stairs(n int) (s Space) {
	for i := range n {
		floor := unit.Length(float64(n-i) * 0.1)
		s.Rooms = append(s.Rooms, Room{floor, floor + 2, unit.Area(5 + i%7)})
		s.Points = append(s.Points, Point{i, floor + 0.04})
		if i > 0 {
			s.Openings = append(s.Openings, Opening{i - 1, i, floor + 0.15, 0.6})
		}
		if i >= 10 && i%10 == 0 {
			s.Openings = append(s.Openings, Opening{i - 10, i, floor + 1.2, 0.6})
		}
	}
	s.Leaks = []Leak{{0, s.Rooms[0].Floor + 0.9, 1e-3}}
	return s
}

// TestTheStairsFill so that the benchmark measures something.
func TestTheStairsFill(t *testing.T) {
	s := stairs(200)
	f := must[Filling](t)(s.Fill(Layer{Share: 0.017}, 1e9))
	last := 0.0
	for i, a := range f.Arrivals {
		if a.Layer.Never || float64(a.Layer.After) < last {
			t.Fatalf("room %d: %+v after %v s", i, a, last)
		}
		last = float64(a.Layer.After)
	}
	balanced(t, s, f, 1e9)
}

func BenchmarkFill(b *testing.B) {
	for _, n := range []int{10, 100, 1000} {
		b.Run(fmt.Sprint(n, " rooms"), func(b *testing.B) {
			s := stairs(n)
			b.ReportAllocs()
			for b.Loop() {
				if _, err := s.Fill(Layer{Share: 0.017}, 1e9); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// TestExtremesEnd: at the ends of what is valid the filling ends, and every figure is a
// number within its bounds.
func TestExtremesEnd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anySpace(0.25).Draw(t, "space")
		of := func(name string, values ...float64) float64 { return rapid.SampledFrom(values).Draw(t, name) }
		for i := range s.Rooms {
			s.Rooms[i].Area = unit.Area(of("area", least, 1, mostArea))
		}
		for i := range s.Openings {
			s.Openings[i].Width = unit.Length(of("width", least, 1, mostLength))
		}
		for i := range s.Drains {
			s.Drains[i].Carries = unit.VolumeFlow(of("carries", 0, 1e-12, mostFlow))
		}
		for i := range s.Leaks {
			s.Leaks[i].Gas = unit.VolumeFlow(of("gas", leastFlow, 1, mostFlow))
		}
		layer := Layer{unit.Ratio(of("share", leastShare, 0.017, 1)), unit.Length(of("stand", 0, 0.1, mostLength)), rapid.Bool().Draw(t, "each way")}
		until := of("until", 0, 1e-9, 1, 1e6, mostTime)
		f := must[Filling](t)(s.Fill(layer, unit.Duration(until)))
		for i, z := range f.Levels {
			if !(z >= s.Rooms[i].Floor && z <= s.Rooms[i].Top) {
				t.Fatalf("room %d: layer at %v", i, z)
			}
		}
		for _, a := range f.Arrivals {
			for _, m := range []Moment{a.Stream, a.Alone, a.Layer} {
				if !(float64(m.After) >= 0 && float64(m.After) <= until) || (m.Never && m.After != 0) {
					t.Fatalf("%+v until %v", m, until)
				}
			}
		}
		for _, v := range []unit.Volume{f.Held, f.Drained, f.PressedOut} {
			if !(v >= 0 && float64(v) <= math.MaxFloat64) {
				t.Fatalf("%+v", f)
			}
		}
	})
}
