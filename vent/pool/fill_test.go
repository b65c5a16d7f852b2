package pool

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/unit"
)

// The tests take 1 m³/s of pure gas where times are to be read off by eye: a room of
// 10 m² fills at 0.1 m/s.

func at(seconds float64) Moment { return Moment{After: unit.Duration(seconds)} }

// closely lets two figures differ by rounding.
var closely = cmp.Options{
	cmp.Comparer(func(a, b unit.Length) bool { return math.Abs(float64(a-b)) <= 1e-12 }),
	cmp.Comparer(func(a, b unit.Volume) bool { return math.Abs(float64(a-b)) <= 1e-9 }),
	cmp.Comparer(func(a, b unit.Duration) bool { return math.Abs(float64(a-b)) <= 1e-9*(1+math.Abs(float64(a))) }),
}

func fill(t failer, s Space, until unit.Duration) Filling {
	t.Helper()
	return must[Filling](t)(s.Fill(Layer{Share: 1}, until))
}

// layers are the times of Arrival.Layer.
func layers(f Filling) (times []Moment) {
	for _, a := range f.Arrivals {
		times = append(times, a.Layer)
	}
	return times
}

// byHand is a filling that was worked out by hand, with when gas comes to its points and
// where it stands in the end.
type byHand struct {
	space  Space
	layers []Moment
	levels []unit.Length
	until  unit.Duration
}

var never = Moment{Never: true}

var fillingsByHand = map[string]byHand{
	"one room": {
		Space{Rooms: []Room{{0, 2, 10}}, Leaks: []Leak{{0, 0, 1}}, Points: []Point{{0, 0}, {0, 0.5}, {0, 2}}},
		[]Moment{{}, at(5), at(20)}, []unit.Length{2}, 100,
	},
	"one room, stopped": {
		Space{Rooms: []Room{{0, 2, 10}}, Leaks: []Leak{{0, 0, 1}}, Points: []Point{{0, 0.5}, {0, 1}, {0, 1.1}}},
		[]Moment{at(5), at(10), never}, []unit.Length{1}, 10,
	},
	"no door sill: one pool": {
		Space{Rooms: []Room{{0, 2, 10}, {0, 2, 30}}, Openings: []Opening{{1, 0, -1, 1}}, Leaks: []Leak{{0, 0, 1}}, Points: []Point{{0, 0.5}, {1, 0.5}, {1, 0}}},
		[]Moment{at(20), at(20), {}}, []unit.Length{1, 1}, 40,
	},
	"over a sill, and then both": {
		Space{Rooms: []Room{{0, 2, 10}, {0, 2, 30}}, Openings: []Opening{{0, 1, 0.1, 1}}, Leaks: []Leak{{0, 0, 1}}, Points: []Point{{0, 0.1}, {0, 0.2}, {1, 0}, {1, 0.05}, {1, 0.2}}},
		[]Moment{at(1), at(8), at(1), at(2.5), at(8)}, []unit.Length{0.2, 0.2}, 8,
	},
	"down a step": {
		Space{Rooms: []Room{{0.5, 2, 10}, {0, 2, 10}}, Openings: []Opening{{0, 1, 0, 1}}, Leaks: []Leak{{0, 1, 1}}, Points: []Point{{0, 0.5}, {0, 0.6}, {1, 0.1}, {1, 0.6}}},
		[]Moment{{}, at(7), at(1), at(7)}, []unit.Length{0.7, 0.7}, 9,
	},
	"through the hatch of a bay, its deck 0.1 m thick": {
		Space{Rooms: []Room{{0, 2, 10}, {-1, -0.1, 10}}, Openings: []Opening{{0, 1, 0, 1}}, Leaks: []Leak{{0, 1, 1}}, Points: []Point{{0, 0}, {0, 0.1}, {1, -0.1}}},
		[]Moment{{}, at(10), at(9)}, []unit.Length{0.1, -0.1}, 10,
	},
	"a leak in the bay": {
		Space{Rooms: []Room{{0, 2, 10}, {-1, -0.1, 10}}, Openings: []Opening{{0, 1, 0, 1}}, Leaks: []Leak{{1, -0.5, 1}}, Points: []Point{{0, 0}, {0, 0.1}, {1, -0.6}}},
		[]Moment{at(9), at(10), at(4)}, []unit.Length{0.1, -0.1}, 10,
	},
	"three in a row, the last through the second": {
		Space{Rooms: []Room{{0, 2, 10}, {0, 2, 10}, {0, 2, 10}}, Openings: []Opening{{0, 1, 0.3, 1}, {1, 2, 0.2, 1}}, Leaks: []Leak{{0, 0, 1}}, Points: []Point{{1, 0.2}, {2, 0}, {2, 0.2}, {0, 0.4}}},
		[]Moment{at(5), at(5), at(7), at(12)}, []unit.Length{0.4, 0.4, 0.4}, 12,
	},
	"two sills at one level part the gas by their widths": {
		Space{Rooms: []Room{{0, 2, 10}, {0, 2, 10}, {0, 2, 10}}, Openings: []Opening{{0, 1, 0.1, 3}, {0, 2, 0.1, 1}}, Leaks: []Leak{{0, 0, 1}}, Points: []Point{{1, 0.075}, {2, 0.025}, {1, 0.1}, {2, 0.1}}},
		[]Moment{at(2), at(2), at(1 + 1.0/0.75), at(3)}, []unit.Length{0.2, 0.2, 0.2}, 6,
	},
	"a ring of doorways": {
		Space{Rooms: []Room{{0, 2, 10}, {0, 2, 10}, {0, 2, 10}}, Openings: []Opening{{0, 1, 0.1, 1}, {1, 2, 0.1, 1}, {2, 0, 0.1, 1}}, Leaks: []Leak{{0, 0, 1}}, Points: []Point{{1, 0.1}, {2, 0.1}, {0, 0.2}}},
		[]Moment{at(3), at(3), at(6)}, []unit.Length{0.2, 0.2, 0.2}, 6,
	},
	"a drain that carries part": {
		Space{Rooms: []Room{{0, 2, 10}}, Drains: []Drain{{0, 0.1, 0.75}}, Leaks: []Leak{{0, 0, 1}}, Points: []Point{{0, 0.1}, {0, 0.2}}},
		[]Moment{at(1), at(5)}, []unit.Length{0.2}, 5,
	},
	"a drain that carries all": {
		Space{Rooms: []Room{{0, 2, 10}}, Drains: []Drain{{0, 0.1, 2}}, Leaks: []Leak{{0, 0, 1}}, Points: []Point{{0, 0.1}, {0, 0.2}}},
		[]Moment{at(1), never}, []unit.Length{0.1}, 500,
	},
	"a floor drain in the lower room": {
		Space{Rooms: []Room{{0, 2, 10}, {-1, 2, 10}}, Openings: []Opening{{0, 1, 0.1, 1}}, Drains: []Drain{{1, -1, 1}}, Leaks: []Leak{{0, 0, 1}}, Points: []Point{{0, 0.1}, {0, 0.2}, {1, -1}, {1, -0.9}}},
		[]Moment{at(1), never, at(1), never}, []unit.Length{0.1, -1}, 500,
	},
	"a drain above goes on working once both stand level": {
		Space{Rooms: []Room{{0, 2, 10}, {0, 2, 10}}, Openings: []Opening{{0, 1, 0.2, 1}}, Drains: []Drain{{0, 0, 0.25}}, Leaks: []Leak{{0, 0, 1}}, Points: []Point{{0, 0.2}, {1, 0.2}, {0, 0.3}}},
		[]Moment{at(2 / 0.75), at(4 / 0.75), at(6 / 0.75)}, []unit.Length{0.3, 0.3}, 8,
	},
	"nothing leaks": {
		Space{Rooms: []Room{{0, 2, 10}, {0, 2, 10}}, Openings: []Opening{{0, 1, 0, 1}}, Points: []Point{{0, 0}, {1, 1}}},
		[]Moment{never, never}, []unit.Length{0, 0}, 500,
	},
	"another room apart": {
		Space{Rooms: []Room{{0, 2, 10}, {0, 2, 10}}, Leaks: []Leak{{0, 0, 1}}, Points: []Point{{0, 0.1}, {1, 0}}},
		[]Moment{at(1), never}, []unit.Length{2, 0}, 500,
	},
	"full below a low ceiling, then higher next door": {
		Space{Rooms: []Room{{0, 0.5, 10}, {0, 2, 10}}, Openings: []Opening{{0, 1, 0, 1}}, Leaks: []Leak{{0, 0, 1}}, Points: []Point{{0, 0.5}, {1, 1}}},
		[]Moment{at(10), at(15)}, []unit.Length{0.5, 1}, 15,
	},
	"two leaks meet": {
		Space{Rooms: []Room{{0, 2, 10}, {0, 2, 10}}, Openings: []Opening{{0, 1, 0.2, 1}}, Leaks: []Leak{{0, 0, 1}, {1, 0, 1}}, Points: []Point{{0, 0.2}, {1, 0.2}, {0, 0.3}, {1, 0.3}}},
		[]Moment{at(2), at(2), at(3), at(3)}, []unit.Length{0.3, 0.3}, 3,
	},
}

func TestFillByHand(t *testing.T) {
	for name, c := range fillingsByHand {
		got := fill(t, c.space, c.until)
		if diff := cmp.Diff(c.layers, layers(got), closely); diff != "" {
			t.Errorf("%s, times:\n%s", name, diff)
		}
		if diff := cmp.Diff(c.levels, got.Levels, closely); diff != "" {
			t.Errorf("%s, levels:\n%s", name, diff)
		}
		balanced(t, c.space, got, c.until)
	}
}

// balanced holds that what has leaked is where the filling says.
func balanced(t failer, s Space, f Filling, until unit.Duration) {
	t.Helper()
	leaked := 0.0
	for _, l := range s.Leaks {
		leaked += float64(l.Gas) * float64(until)
	}
	if got := float64(f.Held + f.Drained + f.PressedOut); math.Abs(got-leaked) > 1e-9*leaked+1e-11 {
		t.Errorf("held, drained and pressed out are %v m³, leaked %v m³", got, leaked)
	}
	if f.Held < 0 || f.Drained < 0 || f.PressedOut < 0 {
		t.Errorf("%+v", f)
	}
}

// TestWhereTheGasGoes: into layers, the drain, and out of a room that is full.
func TestWhereTheGasGoes(t *testing.T) {
	s := Space{Rooms: []Room{{0, 2, 10}}, Drains: []Drain{{0, 1, 0.5}}, Leaks: []Leak{{0, 0, 1}}}
	want := Filling{Arrivals: []Arrival{}, Levels: []unit.Length{2}, Held: 20, Drained: 45, PressedOut: 35}
	if diff := cmp.Diff(want, fill(t, s, 100), closely); diff != "" {
		t.Error(diff)
	}
}

// TestWaysOfLying tells the stream from the layer and the doors shut from open.
func TestWaysOfLying(t *testing.T) {
	s := Space{
		Rooms: []Room{{0, 2, 10}, {-1, 2, 10}}, Openings: []Opening{{0, 1, 0.1, 1}}, Leaks: []Leak{{0, 0.9, 1}},
		Points: []Point{{0, 0.5}, {0, 1}, {1, 0.1}, {1, 0.2}, {0, 0.9}},
	}
	got := fill(t, s, 1000)
	want := []Arrival{
		{Stream: at(0), Alone: at(5), Layer: at(1 + 11 + 8)},   // below the leak
		{Stream: never, Alone: at(10), Layer: at(1 + 11 + 18)}, // above it
		{Stream: at(1), Alone: never, Layer: at(12)},           // below the sill, in the other room
		{Stream: never, Alone: never, Layer: at(14)},           // above the sill there
		{Stream: at(0), Alone: at(9), Layer: at(1 + 11 + 16)},  // just as high as the leak
	}
	if diff := cmp.Diff(want, got.Arrivals, closely); diff != "" {
		t.Error(diff)
	}
	var soonest []Moment
	for _, a := range got.Arrivals {
		soonest = append(soonest, a.Soonest())
	}
	if diff := cmp.Diff([]Moment{at(0), at(10), at(1), at(14), at(0)}, soonest, closely); diff != "" {
		t.Error(diff)
	}
}

// TestEachWay: gas that goes down both of two equal steps fills either room as if it
// got all; where the ways meet again it is not counted twice; no drain works.
func TestEachWay(t *testing.T) {
	s := Space{
		Rooms:    []Room{{3, 5, 10}, {2, 5, 10}, {2, 5, 10}, {0, 5, 10}},
		Openings: []Opening{{0, 1, 3, 1}, {0, 2, 3, 1}, {1, 3, 2.1, 1}, {2, 3, 2.1, 1}},
		Drains:   []Drain{{3, 0, 0.5}},
		Leaks:    []Leak{{0, 3, 1}},
		Points:   []Point{{1, 2.1}, {2, 2.1}, {3, 0.5}},
	}
	each := must[Filling](t)(s.Fill(Layer{Share: 1, EachWay: true}, 11))
	if diff := cmp.Diff([]Moment{at(1), at(1), at(6)}, layers(each), closely); diff != "" {
		t.Error(diff)
	}
	if each.Drained != 0 || each.Held <= 11 {
		t.Errorf("each way holds %v m³ of 11 and drains %v m³", each.Held, each.Drained)
	}
	parted := fill(t, s, 13)
	if diff := cmp.Diff([]Moment{at(2), at(2), at(12)}, layers(parted), closely); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([2]unit.Volume{7.5, 5.5}, [2]unit.Volume{parted.Held, parted.Drained}, closely); diff != "" {
		t.Error(diff)
	}
}

// TestStand: a point counts as reached early by the stand of the layer, in the layer
// alone as well; never below the floor.
func TestStand(t *testing.T) {
	s := Space{Rooms: []Room{{0, 2, 10}}, Leaks: []Leak{{0, 0, 1}}, Points: []Point{{0, 0.5}, {0, 0.1}}}
	got := must[Filling](t)(s.Fill(Layer{Share: 1, Stand: 0.2}, 100))
	if diff := cmp.Diff([]Moment{at(3), at(0)}, layers(got), closely); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]Moment{at(3), at(0)}, []Moment{got.Arrivals[0].Alone, got.Arrivals[1].Alone}, closely); diff != "" {
		t.Error(diff)
	}
}

// TestAlarmBehindASill: undiluted gas runs out of the room over a sill below the
// sensor, and the answer is never.
func TestAlarmBehindASill(t *testing.T) {
	s := Space{
		Rooms: []Room{{0, 2, 10}, {-1, 2, 1000}}, Openings: []Opening{{0, 1, 0.05, 0.6}},
		Leaks: []Leak{{0, 0.9, 1e-4}}, Points: []Point{{0, 0.12}, {1, 0.1}},
	}
	for _, when := range layers(fill(t, s, week)) {
		if !when.Never {
			t.Errorf("heard after %v s", when.After)
		}
	}
}

// TestTheVanInRooms: cabin and berth without a sill are one room of their area, for
// any leak and share; the berth raised by a step lets the cabin fill first.
func TestTheVanInRooms(t *testing.T) {
	q := van(t)
	s := Space{
		Rooms: []Room{{0, 1.95, 5.00 * 2.25}, {0, 1.95, 1.90 * 2.25}}, Openings: []Opening{{0, 1, 0, 0.8}},
		Leaks: []Leak{{0, 0.88, q}}, Points: []Point{{0, 0.05}, {1, 0.05}},
	}
	flat := must[Filling](t)(s.Fill(Layer{Share: 0.017}, week))
	want := float64(must[unit.Duration](t)(LayerTime(6.90*2.25, 0.05, 0.017, q)))
	for _, m := range layers(flat) {
		near(t, "one room by formula", float64(m.After), want, 1e-12)
	}
	cabin := must[unit.Duration](t)(Soonest(5.00*2.25, 0, 0.05, 0.017, q))
	near(t, "doors shut", float64(flat.Arrivals[0].Alone.After), float64(cabin), 1e-12)
	s.Rooms[1].Floor = 0.3
	s.Points[1].Level = 0.35
	step := must[Filling](t)(s.Fill(Layer{Share: 0.017}, week))
	near(t, "below the step", float64(step.Arrivals[0].Layer.After), float64(cabin), 1e-12)
	over := float64(must[unit.Duration](t)(LayerTime(5.00*2.25, 0.35, 0.017, q))) + float64(must[unit.Duration](t)(LayerTime(1.90*2.25, 0.05, 0.017, q)))
	near(t, "over the step", float64(step.Arrivals[1].Layer.After), over, 1e-9)
}
