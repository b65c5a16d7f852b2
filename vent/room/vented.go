package room

import (
	"errors"

	"lowvent.example/gas/air"
	"lowvent.example/gas/propane"
	"lowvent.example/schema/unit"
	"lowvent.example/vent/flow"
)

// MildDifference is the most that a room may be warmer than outside in the mild
// case of [Worst]: 3 K. With next to no difference openings pass next to nothing,
// and still weather at the warmth of the room is no rare thing.
//
// Source: our own choice, on the cautious side.
const MildDifference unit.TemperatureDifference = 3

// Draws is what fans and flues move, in m³/s at the temperature inside: the
// rivals of a burner for the air of its room.
type Draws struct {
	Extract unit.VolumeFlow // fans that blow out
	Flues   unit.VolumeFlow // what open flues, stoves and fireplaces draw
	Supply  unit.VolumeFlow // fans that blow outside air in
}

// Net returns what they draw out of the room together, in m³/s; below 0 they blow
// in:
//
//	q = q_extract + q_flues − q_supply
func (d Draws) Net() unit.VolumeFlow { return d.Extract + d.Flues - d.Supply }

func (d Draws) valid() error {
	return firstOf(
		propane.Within("flow of extract fans", float64(d.Extract), 0, 50, "m³/s"),
		propane.Within("draw of flues", float64(d.Flues), 0, 50, "m³/s"),
		propane.Within("flow of supply fans", float64(d.Supply), 0, 50, "m³/s"),
	)
}

// Vented returns the room with the fresh air that its openings give at its
// temperatures, in still air, while the draws run; the pressure inside over
// outside, in Pa, at the height that the openings are measured from comes with
// it. What supply fans blow in counts as fresh air, and everything that comes in
// through an opening. Pass only openings that nobody can shut; without any free
// area the fresh air is 0, whatever fans there are.
//
// Valid as [Steady], from −50 to +70 °C, as [flow.Balance], and for draws of 0 to
// 50 m³/s, else *[propane.RangeError] or an error of gas/air.
//
// Error size: that of the coefficients, 10 % to either side; still air and dry air
// of one composition err low on the flow, the cautious side. An opening into a
// locker or an undercroft lets in no fresh air: leave it out.
//
// Source: [flow.Balance].
func Vented(r Room, openings []flow.Opening, d Draws) (Room, unit.GaugePressure, error) {
	r.Fresh = 0
	if err := firstOf(r.valid(), d.valid()); err != nil {
		return Room{}, 0, err
	}
	inside, err := air.Density(r.Pressure, r.Inside)
	if err != nil {
		return Room{}, 0, err
	}
	outside, err := air.Density(r.Pressure, r.Outside)
	if err != nil {
		return Room{}, 0, err
	}
	warming := float64(r.Inside) / float64(r.Outside)
	sides := flow.Sides{Inside: inside, Outside: outside, Expansion: unit.Ratio(warming)}
	passed, err := flow.Balance(openings, sides, -d.Net())
	if none := (*flow.NoOpeningError)(nil); errors.As(err, &none) {
		return r, 0, nil
	}
	if err != nil {
		return Room{}, 0, err
	}
	r.Fresh = passed.In + unit.VolumeFlow(float64(d.Supply)/warming)
	return r, passed.Pressure, nil
}

// Bound is the worse of two outcomes, each peak on its own.
type Bound struct {
	Outcome
	// Mild and Coldest are the outcomes of the two cases. Where water settles is
	// judged on each with its own temperatures, see [Settle]: the one with less water
	// may be the one with the colder glass.
	Mild, Coldest Outcome
	// Whether it is the coldest case that gave the peak; the mild one where both
	// are alike.
	CarbonDioxideCold, OxygenCold, WaterCold, ExhaustedCold bool
}

// Worst follows a use in the mild case, where inside and outside differ by
// [MildDifference] at most, and in the coldest, and returns the worse of each. In
// the cold the openings pass more but the air lets more water settle; neither
// case bounds the other for all species. End is that of the case with the
// highest carbon dioxide.
//
// Valid as [Follow]; a mild case with a larger difference is a
// *[propane.RangeError].
//
// Source: our own rule, on the cautious side.
func Worst(mild, coldest Room, use Use) (Bound, error) {
	difference := float64(mild.Inside) - float64(mild.Outside)
	most := float64(MildDifference) + 1e-9
	if err := propane.Within("difference between inside and outside in the mild case", difference, -most, most, "K"); err != nil {
		return Bound{}, err
	}
	a, err := Follow(mild, use)
	if err != nil {
		return Bound{}, err
	}
	b, err := Follow(coldest, use)
	if err != nil {
		return Bound{}, err
	}
	return worse(a, b), nil
}

func worse(mild, cold Outcome) Bound {
	w := Bound{Outcome: mild, Mild: mild, Coldest: cold}
	if cold.CarbonDioxide.Air.Dry().CarbonDioxide > mild.CarbonDioxide.Air.Dry().CarbonDioxide {
		w.CarbonDioxide, w.End, w.CarbonDioxideCold = cold.CarbonDioxide, cold.End, true
	}
	if cold.Oxygen.Air.Oxygen < mild.Oxygen.Air.Oxygen {
		w.Oxygen, w.OxygenCold = cold.Oxygen, true
	}
	if cold.Water.Air.Water > mild.Water.Air.Water {
		w.Water, w.WaterCold = cold.Water, true
	}
	w.Exhausted = mild.Exhausted || cold.Exhausted
	w.ExhaustedCold = cold.Exhausted && !mild.Exhausted
	return w
}
