package layout

import (
	"reflect"
	"strings"
	"testing"

	"lowvent.example/schema/source"
)

// checkSpot holds a spot against the file: a value that was written is where
// it is, one that was left out is at its nearest written ancestor.
func checkSpot(t *testing.T, l *Layout, spot *Spot) {
	t.Helper()
	pointer, place := spot.Pointer(), spot.Place()
	written := l.Root().At(pointer)
	if spot.Written() != (written != nil) {
		t.Errorf("%s: written is %v", pointer, spot.Written())
	}
	want := written.Place()
	for up := pointer; written == nil; written = l.Root().At(up) {
		up = up[:strings.LastIndexByte(up, '/')]
		if near := l.Root().At(up); near != nil {
			want = head(near)
		}
	}
	want.Pointer = pointer
	if place != want {
		t.Errorf("%s: the place is %v, want %v", pointer, place, want)
	}
	if pointer != "" && !strings.HasSuffix(pointer, "/"+spot.Key()) {
		t.Errorf("%s: the key is %q", pointer, spot.Key())
	}
}

// TestEverySpot walks all that a layout can say in files that say everything,
// something and next to nothing.
func TestEverySpot(t *testing.T) {
	files := map[string]*Layout{
		"pontoon": good(t, pontoon),
		"cabin":   good(t, cabin),
		"bare":    mustLoad(t, `{ "format": "lowvent-layout/1" }`),
		"empty things": mustLoad(t, `{ "format": "lowvent-layout/1", "lockers": { "side": { "vents": { "low": {} }, "liner": {} } },
			"appliances": { "hob": { "use": { "supper": {} } } } }`),
	}
	for name, l := range files {
		t.Run(name, func(t *testing.T) {
			absent := 0
			visit := func(s Stated, _ reflect.Value) {
				checkSpot(t, l, s.Spot())
				if s.Known() != s.Spot().Written() {
					t.Errorf("%s: known is %v, written is %v", s.Spot().Pointer(), s.Known(), s.Spot().Written())
				}
				if !s.Known() {
					absent++
					if Describe(s.Spot().Pointer()) == "" {
						t.Errorf("%s is missing, and nothing says how to measure it", s.Spot().Pointer())
					}
				}
			}
			visitValues(reflect.ValueOf(l).Elem(), visit, func(spot *Spot, _ bool) { checkSpot(t, l, spot) })
			if absent == 0 {
				t.Error("nothing is missing in this file: the test says little")
			}
		})
	}
}

func TestAbsentNestedValue(t *testing.T) {
	l := mustLoad(t, "{\n \"format\": \"lowvent-layout/1\",\n \"lockers\": {\n  \"side\": { \"vents\": { \"low\": {} } }\n }\n}")
	low := l.Lockers.Get("side").Vents.Get("low")
	for _, c := range []struct {
		spot         *Spot
		pointer      string
		line, column int
	}{
		{low.Cover.Open.Spot(), "/lockers/side/vents/low/cover/open", 4, 24},
		{low.Cover.Spot(), "/lockers/side/vents/low/cover", 4, 24},
		{l.Lockers.Get("side").Surveyed.Complete.Spot(), "/lockers/side/surveyed/complete", 4, 3},
		{l.Climate.Coldest.Spot(), "/climate/coldest", 1, 1},
		{l.Regulators.Spot(), "/regulators", 1, 1},
		{l.Spot(), "", 1, 1},
	} {
		place := c.spot.Place()
		if c.spot.Pointer() != c.pointer || place.Pointer != c.pointer || place.Line() != c.line || place.Column() != c.column {
			t.Errorf("%s stands at %d:%d (%s), want %s at %d:%d", c.spot.Pointer(), place.Line(), place.Column(), place.Pointer, c.pointer, c.line, c.column)
		}
	}
}

// TestSpotOfNothing holds that a layout which no file made has no place, and
// does not fail.
func TestSpotOfNothing(t *testing.T) {
	var l Layout
	if l.Climate.Coldest.Spot().Place() != (source.Place{}) || l.File() != nil || l.Root() != nil || l.Find("lockers/side") != nil || l.FedBy("x") != nil {
		t.Error("the zero layout is somewhere")
	}
	if e := l.Climate.Coldest.Evidence(); e != (Evidence{Basis: BasisStated}) {
		t.Errorf("evidence %+v", e)
	}
}
