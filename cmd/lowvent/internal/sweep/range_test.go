package sweep

import (
	"encoding/json"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text string
		want Range
	}{
		{"/a/b=20 in..32 in", Range{"/a/b", "20 in", "32 in", UsualValues}},
		{"/a/b = 20 in .. 32 in / 40", Range{"/a/b", "20 in", "32 in", 40}},
		{"/a=20 in..32 in/40", Range{"/a", "20 in", "32 in", 40}},
		{"/a=1/4 in..1/2 in", Range{"/a", "1/4 in", "1/2 in", UsualValues}},
		{"/a=1/4 in..1 1/2 in/9", Range{"/a", "1/4 in", "1 1/2 in", 9}},
		{"/a=1000 BTU/h..2000 BTU/h", Range{"/a", "1000 BTU/h", "2000 BTU/h", UsualValues}},
		{"/a=1..5/3", Range{"/a", "1", "5", 3}},
		{"/a=.5 in...75 in", Range{"/a", ".5 in", ".75 in", UsualValues}},
		{"/a=-20 degC..10 degC", Range{"/a", "-20 degC", "10 degC", UsualValues}},
	} {
		if got, err := Parse(c.text); err != nil || got != c.want {
			t.Errorf("%s: %+v, %v", c.text, got, err)
		}
	}
	for _, c := range []struct{ text, says string }{
		{"", "is no sweep"}, {"/a", "is no sweep"}, {"a=1..2", "is no sweep"}, {"/a=1", `no ".."`}, {"/a=..2", "missing beside"}, {"/a=1..", "missing beside"},
		{"/a=1..2/1", "2 to 200"}, {"/a=1..2/201", "2 to 200"}, {"/a=1..2/99999999999999999999", "2 to 200"}, {"/a=1../5", "missing beside"},
	} {
		if got, err := Parse(c.text); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q: %+v, %v; want %q", c.text, got, err, c.says)
		}
	}
}

func TestScale(t *testing.T) {
	for _, c := range []struct {
		text, step, first, second, last string
		values                          int
	}{
		{"/tapeMeasures/a/is=20 in..32 in", "0.01 in", `"20 in"`, `"20.5 in"`, `"32 in"`, 25},
		{"/tapeMeasures/a/is=500 mm..32 in/2", "0.1 mm", `"500 mm"`, `"812.8 mm"`, `"812.8 mm"`, 2},
		{"/lockers/a/vents/b/gross=20 cm2..200 cm2/10", "0.1 cm2", `"20 cm2"`, `"40 cm2"`, `"200 cm2"`, 10},
		{"/cylinders/A/restraint/points=0..3", "1", "0", "1", "3", 4},
		{"/climate/coldest=-20 degC..10 degC/4", "0.01 degC", `"-20 degC"`, `"-10 degC"`, `"10 degC"`, 4},
		{"/combustibles/shelf/box/from/2=1.5 m..2 m/3", "0.0001 m", `"1.5 m"`, `"1.75 m"`, `"2 m"`, 3},
	} {
		r, err := Parse(c.text)
		if err != nil {
			t.Fatal(err)
		}
		s, err := r.Scale()
		if err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		first, second, last := s.JSON(s.At[0]), s.JSON(s.At[1]), s.JSON(s.At[len(s.At)-1])
		if s.Size() != c.step || first != c.first || second != c.second || last != c.last || len(s.At) != c.values {
			t.Errorf("%s: steps of %s, %s, %s to %s, %d values", c.text, s.Size(), first, second, last, len(s.At))
		}
	}
	for _, c := range []struct{ text, says string }{
		{"/title=1..2", "is no quantity"}, {"/tapeMeasures/a/is=1..2", "unit"}, {"/tapeMeasures/a/is=1 in..2 kg", "kg"}, {"/tapeMeasures/a/is=2 in..1 in", "goes up"},
		{"/tapeMeasures/a/is=1 in..25.4 mm", "goes up"}, {"/tapeMeasures/a/is=1 in ± 1 mm..2 in", "tolerance"}, {"/cylinders/A/restraint/points=0.5..3", "whole"},
		{"/nothing=1..2", "is no quantity"}, {"/tapeMeasures/a/is=1 ft..1.000000000001 ft", "step"},
	} {
		r, err := Parse(c.text)
		if err != nil {
			t.Fatal(err)
		}
		if s, err := r.Scale(); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %+v, %v; want %q", c.text, s, err, c.says)
		}
	}
}

// TestScaleRises: whatever the ends and the count, the values rise, both ends are among
// them to within a step, and each is written as JSON.
func TestScaleRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.IntRange(-5000, 5000).Draw(t, "low")
		unit := rapid.SampledFrom([]string{" mm", " in", " m", " ft"}).Draw(t, "unit")
		from, to := text(low)+unit, text(low+rapid.IntRange(1, 5000).Draw(t, "more"))+unit
		r := Range{"/tapeMeasures/a/is", from, to, rapid.IntRange(FewestValues, MostValues).Draw(t, "count")}
		s, err := r.Scale()
		if err != nil {
			t.Fatal(err)
		}
		if s.Text(s.At[0]) != from || s.Text(s.At[len(s.At)-1]) != to || len(s.At) != r.Count {
			t.Fatalf("%s to %s in %d: %d values from %s to %s", from, to, r.Count, len(s.At), s.Text(s.At[0]), s.Text(s.At[len(s.At)-1]))
		}
		for i := range s.At {
			if !json.Valid([]byte(s.JSON(s.At[i]))) || i > 0 && s.At[i] <= s.At[i-1] {
				t.Fatalf("value %d is %s", i, s.JSON(s.At[i]))
			}
		}
	})
}

func text(n int) string { b, _ := json.Marshal(n); return string(b) }

// FuzzParse: whatever the text, it is refused with words or gives a range that can be
// asked for its scale.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{"/tapeMeasures/a/is=20 in..32 in/40", "/cylinders/A/restraint/points=0..3", "/a=..", "=..", "/a=1....2/", "/climate/coldest=-20 degC..10 degC", "/a=1..2/0x9", "/tapeMeasures/a/is=0 m..999999999999 m"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r, err := Parse(text)
		if err != nil {
			if err.Error() == "" || r != (Range{}) {
				t.Fatalf("refused with %q and %+v", err, r)
			}
			return
		}
		s, err := r.Scale()
		if err == nil && (len(s.At) < FewestValues || len(s.At) > MostValues || s.SI(s.At[0]) >= s.SI(s.At[len(s.At)-1])) {
			t.Fatalf("%q: %d values from %v", text, len(s.At), s.SI(s.At[0]))
		}
	})
}
