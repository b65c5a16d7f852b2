package unit

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// exactly prints as shown does, in rationals throughout.
func exactly(info *kindInfo, scales []scale, si float64, more int) string {
	s := suiting(scales, si)
	unit := find(info.units, s.unit)
	v := unit.from(si)
	return withUnit(plain(v, s.places(v)+more), unit)
}

// TestQuickPrintsWhatRationalsPrint compares the two ways for every kind, on
// figures of every size, on texts read from files, and one step beside them.
func TestQuickPrintsWhatRationalsPrint(t *testing.T) {
	quick := 0
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(Kinds()).Draw(t, "kind")
		info := k.info()
		digits := rapid.IntRange(-99999, 99999).Draw(t, "digits")
		si := float64(digits) * math.Pow(10, float64(rapid.IntRange(-9, 6).Draw(t, "power")))
		if unit := rapid.SampledFrom(info.units).Draw(t, "unit"); rapid.Bool().Draw(t, "in a unit") {
			si = si * float64(unit.num) / float64(unit.den)
		}
		for range rapid.IntRange(0, 2).Draw(t, "steps") {
			si = math.Nextafter(si, math.Inf(1))
		}
		more := rapid.IntRange(0, 3).Draw(t, "more")
		for _, scales := range [][]scale{info.metric, info.us} {
			if len(scales) == 0 {
				continue
			}
			got := shown(info, scales, si, si, more)
			if want := exactly(info, scales, si, more); got != want {
				t.Fatalf("%s %v: %q in floats, %q in rationals", k, si, got, want)
			}
			s := suiting(scales, si)
			if _, ok := s.quick(find(info.units, s.unit), si, more); ok {
				quick++
			}
		}
	})
	if quick == 0 {
		t.Error("no figure was printed the quick way")
	}
}
