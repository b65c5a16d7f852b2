package draw

import (
	"math"

	"lowvent.example/schema/unit"
)

// iceKelvin is 0 °C.
const iceKelvin = 273.15

// zeroOf is from where the steps of an axis count: temperatures from ice.
func zeroOf(k unit.Kind) float64 {
	if k == unit.KindTemperature {
		return iceKelvin
	}
	return 0
}

// stepOf is a step that divides a span into at most so many: 1, 2 or 5 times a power of
// ten, and for times the steps of the clock and the calendar.
func stepOf(k unit.Kind, span float64, most int) float64 {
	if k == unit.KindDuration {
		for _, step := range []float64{1, 5, 10, 30, 60, 300, 600, 900, 1800, 3600, 7200, 4 * 3600, 6 * 3600, 43200, 86400, 2 * 86400, 5 * 86400, 10 * 86400} {
			if span/step <= float64(most) {
				return step
			}
		}
	}
	power := math.Pow(10, math.Floor(math.Log10(span/float64(most))))
	for _, n := range []float64{1, 2, 5} {
		if span/(n*power) <= float64(most)+1e-9 {
			return n * power
		}
	}
	return 10 * power
}

// ticks are the whole steps from low to high.
func ticks(low, high, step, zero float64) []float64 {
	var all []float64
	for i := math.Ceil((low-zero)/step - 1e-6); zero+i*step <= high+step*1e-6; i++ {
		all = append(all, zero+i*step)
	}
	return all
}
