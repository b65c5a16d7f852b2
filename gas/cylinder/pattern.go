package cylinder

import (
	"math"
	"slices"

	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
)

// day is the length of a day in s.
const day = 86400.0

// Air is the temperature of the air about the vessels over a day:
//
//	T = T_cold + swing/2·(1 − cos 2π(t − t_dawn)/24 h)
//
// It repeats each day. Where nothing swings it is Coldest throughout. A cosine
// with its lowest at dawn is common practice, no source; true nights are longer
// than true noons are warm, and a cold spell of some days is not in it.
type Air struct {
	Coldest unit.Temperature           // K
	Swing   unit.TemperatureDifference // K, from the coldest to the warmest, 0 or more
	Dawn    unit.Duration              // s from midnight, when it is coldest
}

// At returns the air temperature in K at t in s from midnight of the first day.
func (a Air) At(t unit.Duration) unit.Temperature { return unit.Temperature(a.at(float64(t))) }

func (a Air) at(t float64) float64 {
	coldest, swing, dawn := float64(a.Coldest), float64(a.Swing), float64(a.Dawn)
	if swing == 0 {
		return coldest
	}
	return coldest + swing/2*(1-math.Cos(2*math.Pi/day*(t-dawn)))
}

// check reports a RangeError for a day that the propane properties do not reach.
func (a Air) check() error {
	if err := tempered("coldest air temperature", a.Coldest); err != nil {
		return err
	}
	most := float64(propane.GreatestTemperature) - float64(a.Coldest)
	if swing := float64(a.Swing); !(swing >= 0 && swing <= most) {
		return &propane.RangeError{Quantity: "swing of the air temperature", Value: swing, Low: 0, High: most, Unit: "K"}
	}
	return clock("time of dawn", a.Dawn)
}

// clock reports a RangeError for what is no time of a day.
func clock(what string, time unit.Duration) error {
	if t := float64(time); !(t >= 0 && t < day) {
		return &propane.RangeError{Quantity: what, Value: t, Low: 0, High: day, Unit: "s"}
	}
	return nil
}

// Spell is one use of the gas in a day; it repeats each day.
type Spell struct {
	Start unit.Duration // s from midnight, below 24 h
	Lasts unit.Duration // s, above 0, up to 24 h; it may go past midnight
	Draw  unit.MassFlow // kg/s, 0 or more
}

func (s Spell) check() error {
	if err := clock("start of a spell", s.Start); err != nil {
		return err
	}
	if t := float64(s.Lasts); !(t > 0 && t <= day) {
		return &propane.RangeError{Quantity: "length of a spell", Value: t, Low: 0, High: day, Unit: "s"}
	}
	return drawable(s.Draw)
}

// greatestDraw is 1 kg/s, 50 MW: far over what any vessel here feeds.
const greatestDraw = 1.0

func drawable(draw unit.MassFlow) error {
	if flow := float64(draw); !(flow >= 0 && flow <= greatestDraw) {
		return &propane.RangeError{Quantity: "draw", Value: flow, Low: 0, High: greatestDraw, Unit: "kg/s"}
	}
	return nil
}

// stretch is a part of the day with one draw, in kg/s; it lasts to the start of
// the next, the last one to midnight. Times in s.
type stretch struct{ start, end, flow float64 }

// stretches cuts a day where a spell starts or ends. Spells that overlap add up;
// one that goes past midnight also stands at the start of the day.
func stretches(spells []Spell) []stretch {
	edges := []float64{0, day}
	for _, s := range spells {
		end := float64(s.Start) + float64(s.Lasts)
		if end > day {
			end -= day
		}
		edges = append(edges, float64(s.Start), end)
	}
	slices.Sort(edges)
	var parts []stretch
	for i, start := range edges[:len(edges)-1] {
		if end := edges[i+1]; end > start {
			parts = append(parts, stretch{start, end, flowAt(spells, start+(end-start)/2)})
		}
	}
	return parts
}

// flowAt is the draw in kg/s at a time of the day in s.
func flowAt(spells []Spell, t float64) (sum float64) {
	for _, s := range spells {
		since := t - float64(s.Start)
		if since < 0 {
			since += day
		}
		if since < float64(s.Lasts) {
			sum += float64(s.Draw)
		}
	}
	return sum
}
