package demand

import (
	"math"

	"lowvent.example/schema/unit"
)

// rising carries a band through a formula that rises with its input.
func rising[In, Out unit.Quantity](in unit.Value[In], f func(float64) Out) unit.Value[Out] {
	return unit.Value[Out]{Nominal: f(float64(in.Nominal)), Low: f(float64(in.Low)), High: f(float64(in.High))}
}

// sum adds bands end by end.
func sum[Q unit.Quantity](values []unit.Value[Q]) (total unit.Value[Q]) {
	for _, v := range values {
		total.Nominal += v.Nominal
		total.Low += v.Low
		total.High += v.High
	}
	return total
}

// lasting is heat over load: shortest with the least heat and the greatest
// load. The load is heat in every period of the given length in s.
func lasting[Q unit.Quantity](heat unit.Value[unit.Energy], load unit.Value[Q], what string, period float64) (unit.Value[unit.Duration], error) {
	last := func(E unit.Energy, q Q) unit.Duration {
		return unit.Duration(float64(E) / float64(q) * period)
	}
	least := float64(load.Low)
	longest := last(heat.High, load.Low)
	if !(least > 0 && math.Abs(float64(longest)) <= math.MaxFloat64) {
		return unit.Value[unit.Duration]{}, &NoLoadError{What: what, Low: least}
	}
	return unit.Value[unit.Duration]{
		Nominal: last(heat.Nominal, load.Nominal),
		Low:     last(heat.Low, load.High),
		High:    longest,
	}, nil
}
