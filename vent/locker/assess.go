package locker

import (
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/flow"
)

// Held is what one leak does in a locker at one difference of temperature.
type Held struct {
	Difference unit.TemperatureDifference
	States     States     // mixed, while it leaks
	Richest    unit.Ratio // of the state started full
	Percent    unit.Ratio // Richest over the lower limit: 1 is 100 % of it
	Largest    Largest    // leak with the richest place at the limit held to
	Emptying   Arrival    // from the full state to there, after the leak has stopped
	FromFull   Arrival    // from full of gas to there, without a leak
}

// Assessment is what a leak does in a locker over the band of differences.
type Assessment struct {
	Blocked unit.Ratio // share of every opening that is stopped up
	Even    Held       // inside as warm as outside: the lower bound
	Worst   Held       // the difference with the richest state started full
	Two     bool       // two states are stable somewhere in the band
	Limit   unit.Ratio // mixed share at which the richest place is at the limit held to
	Flame   Arrival    // when the richest place is at the lower limit, as warm as outside
	// Head is what the gas stands with between the lowest and the highest opening
	// when mixed at Limit; Wind is the wind that stops it.
	Head unit.GaugePressure
	Wind unit.Speed
	// Layers are those of [Displacement], as warm inside as outside, by
	// [EntrainmentLow] and [EntrainmentHigh]: what lies where the gas collects if it
	// does not mix. HasLayers is false without a leak, without two openings at
	// different heights, or with the leak beyond the opening where the gas leaves.
	Layers    [2]Layer
	HasLayers bool
}

// Measure is what a locker is measured by.
type Measure struct {
	Lower  unit.Ratio // lower flammable limit by volume, such as 1.7 %
	Share  unit.Ratio // part of it that may be held, such as 25 %
	Factor unit.Ratio // how much richer the richest place is: [Near] or [Far]
}

// Quarter is the part of the lower limit up to which a space counts as ventilated.
// Source: HSE RR993 (2013), summary (read): the mean at 25 % of the lower limit.
const Quarter unit.Ratio = 0.25

// Band returns the differences of temperature, inside over outside in K, over which
// a locker is judged: sun on a locker, a warm dwelling behind it, a cold morning
// (common practice, no source).
func Band() []unit.TemperatureDifference {
	return []unit.TemperatureDifference{-2, 0, 2, 4, 6, 8, 10}
}

// Assess computes a locker over [Band], with every opening stopped up by a share of
// 0 to 1: 0 as it is, 0.5 half, 1 shut (leaves, snow, mud). The difference in the
// conditions is not used. Worst is the cautious figure: it starts full of gas.
//
// Valid for −48 to +60 °C outside, so that the band stays in the range of the air.
// Fails with *[propane.RangeError] there, as [New], and for limits, parts and factors
// that are not above 0, limits and parts over 1 or a factor below 1.
func Assess(c Conditions, by Measure, blocked unit.Ratio) (Assessment, error) {
	if err := by.valid(); err != nil {
		return Assessment{}, err
	}
	limit := unit.Ratio(float64(by.Lower) * float64(by.Share) / float64(by.Factor))
	openings := make([]flow.Opening, len(c.Openings))
	for i, o := range c.Openings {
		openings[i] = o.Blocked(blocked)
	}
	c.Openings = openings
	a := Assessment{Blocked: blocked, Limit: limit}
	for i, difference := range Band() {
		c.Difference = difference
		m, err := New(c)
		if err != nil {
			return Assessment{}, err
		}
		h, err := m.held(difference, limit, by)
		if err != nil {
			return Assessment{}, err
		}
		if difference == 0 {
			a.Even = h
			if err := m.evenly(&a, by); err != nil {
				return Assessment{}, err
			}
		}
		a.Two = a.Two || h.States.Two
		if i == 0 || h.worse(a.Worst) {
			a.Worst = h
		}
	}
	return a, nil
}

// worse orders by the state started full, then by the time to clear.
func (h Held) worse(than Held) bool {
	switch {
	case h.States.Full != than.States.Full:
		return h.States.Full > than.States.Full
	case h.FromFull.Never != than.FromFull.Never:
		return h.FromFull.Never
	}
	return h.FromFull.Time > than.FromFull.Time
}

func (m *Model) held(difference unit.TemperatureDifference, limit unit.Ratio, by Measure) (h Held, err error) {
	h.Difference = difference
	if h.States, err = m.Steady(); err != nil {
		return Held{}, err
	}
	h.Richest = Richest(h.States.Full, by.Factor)
	h.Percent = unit.Ratio(float64(h.Richest) / float64(by.Lower))
	if h.Largest, err = m.LargestLeak(limit); err != nil {
		return Held{}, err
	}
	if h.Emptying, err = m.Clears(h.States.Full, limit); err != nil {
		return Held{}, err
	}
	h.FromFull, err = m.Clears(1, limit)
	return h, err
}

// evenly works out what is told only where inside is as warm as outside.
func (m *Model) evenly(a *Assessment, by Measure) (err error) {
	a.Flame = Arrival{Never: true}
	if m.leak > 0 {
		if a.Flame, err = m.Reaches(unit.Ratio(float64(by.Lower) / float64(by.Factor))); err != nil {
			return err
		}
	}
	low, high := m.reach()
	if high <= low {
		return nil
	}
	if err = m.layers(a, low, high); err != nil {
		return err
	}
	inside := unit.Density(m.air + float64(a.Limit)*(m.gas-m.air))
	if a.Head, err = flow.Head(inside, unit.Density(m.outside), high-low); err != nil {
		return err
	}
	a.Wind, err = flow.WindSpeed(a.Head, 1, unit.Density(m.outside))
	return err
}

// layers works out the layer for both constants. Of several openings it takes those
// at the lowest and the highest level: what lies between is left out, to the side of
// a richer layer.
func (m *Model) layers(a *Assessment, low, high unit.Length) error {
	height := m.source - low
	if !m.gasSinks {
		height = high - m.source
	}
	bottom, top := m.areaAt(low), m.areaAt(high)
	if m.leak <= 0 || height <= 0 || bottom <= 0 || top <= 0 {
		return nil
	}
	effective, err := flow.EffectiveArea(top, bottom, 1)
	if err != nil {
		return err
	}
	for i, alpha := range [2]unit.Ratio{EntrainmentLow, EntrainmentHigh} {
		a.Layers[i], err = Displacement(effective, height, unit.VolumeFlow(m.leak), unit.Density(m.gas), unit.Density(m.air), alpha)
		if err != nil {
			return err
		}
	}
	a.HasLayers = true
	return nil
}

// areaAt is what the free openings at a level pass, area times coefficient.
func (m *Model) areaAt(level unit.Length) unit.Area {
	sum := 0.0
	for _, o := range m.open {
		if o.Middle == level {
			sum += float64(o.Area) * float64(o.Coefficient)
		}
	}
	return unit.Area(sum)
}

// reach is from the lowest to the highest free opening: middles, or the edges of a
// single one.
func (m *Model) reach() (low, high unit.Length) {
	n := 0
	for _, o := range m.open {
		if o.Area <= 0 {
			continue
		}
		if n++; n == 1 {
			low, high = o.Middle, o.Middle
		}
		low, high = min(low, o.Middle), max(high, o.Middle)
	}
	for _, o := range m.open {
		if o.Area > 0 && n == 1 {
			return o.Bottom(), o.Top()
		}
	}
	return low, high
}

func (by Measure) valid() error {
	return first(
		propane.Above("lower flammable limit", float64(by.Lower), 0, 1, "m³/m³"),
		propane.Above("part of the lower limit", float64(by.Share), 0, 1, "1"),
		propane.Within("factor of the richest place", float64(by.Factor), 1, 10, "1"))
}
