package unit

import (
	"math"
	"testing"
)

// FuzzParse feeds any bytes to every kind: nothing panics, what is accepted is
// sound, what is refused is refused helpfully, and the pattern agrees.
func FuzzParse(f *testing.F) {
	for _, text := range seedTexts() {
		f.Add(text)
	}
	res := patterns(f)
	f.Fuzz(func(t *testing.T, text string) {
		for _, k := range Kinds() {
			if why := disagreement(res[k], k, text); why != "" {
				t.Errorf("%s %q %s", k, text, why)
			}
			r, err := ParseKind(k, text)
			why := ""
			if err != nil {
				why = checkRefusal(k, text, err)
			} else {
				why = checkReading(k, text, r)
			}
			if why != "" {
				t.Errorf("%s %q %s", k, text, why)
			}
		}
	})
}

// FuzzWrite feeds any number and any model: nothing panics, and a text that is
// written is on its side.
func FuzzWrite(f *testing.F) {
	for _, si := range []float64{0, 0.6096, -12.5, 273.15, 1e-300, math.MaxFloat64, math.NaN(), math.Inf(-1)} {
		f.Add(si, "24 in")
		f.Add(si, "")
	}
	f.Fuzz(func(t *testing.T, si float64, like string) {
		for _, k := range Kinds() {
			TextOf(k, si)
			TextApart(k, si, math.Nextafter(si, 0))
			if text := WriteAtLeast(k, si, like); text != "" {
				if r, err := ParseKind(k, text); err != nil || !(r.Nominal >= si) {
					t.Errorf("%s at least %v like %q: %q = %v, %v", k, si, like, text, r.Nominal, err)
				}
			}
			if text := WriteAtMost(k, si, like); text != "" {
				if r, err := ParseKind(k, text); err != nil || !(r.Nominal <= si) {
					t.Errorf("%s at most %v like %q: %q = %v, %v", k, si, like, text, r.Nominal, err)
				}
			}
		}
	})
}

// FuzzDate feeds any bytes to the readers of dates and times of day.
func FuzzDate(f *testing.F) {
	for _, text := range []string{"2031", "2031-05", "2032-02-29", "2031-02-29", "0000", "07:30", "24:00", "\xff\xff:\xff\xff"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if d, err := ParseDate(text); err == nil {
			if d.String() != text || d.Last().order(d.First()) < 0 || d.IsZero() {
				t.Errorf("%q reads %v", text, d)
			}
		} else if err.Error() == "" {
			t.Errorf("%q is refused without a word", text)
		}
		if c, err := ParseClockTime(text); err == nil && c.String() != text {
			t.Errorf("%q reads %v", text, c)
		}
	})
}
