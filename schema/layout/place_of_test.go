package layout

import (
	"reflect"
	"testing"
)

// TestPlaceAndPosition holds, for every thing of the contract, that its place
// and its position are found exactly where the contract asks for them.
func TestPlaceAndPosition(t *testing.T) {
	placed, positioned := 0, 0
	for object := range contract() {
		value := reflect.New(object)
		thing, ok := value.Interface().(Item)
		if !ok {
			continue
		}
		var want *Given[Ref]
		if f := shapeOf(object).field("in"); f != nil {
			want = value.Elem().FieldByIndex(f.index).Addr().Interface().(*Given[Ref])
			placed++
		}
		if got := PlaceOf(thing); got != want {
			t.Errorf("%s: the key for its place is %p, want %p", object.Name(), got, want)
		}
		_, has := object.FieldByName("Position")
		if has {
			positioned++
		}
		if got := PositionOf(thing); (got != nil) != has {
			t.Errorf("%s: its position is %p", object.Name(), got)
		}
	}
	if placed < 15 || positioned < 15 {
		t.Errorf("only %d things with a place, %d with a position", placed, positioned)
	}
	if PlaceOf(nil) != nil || PositionOf(nil) != nil {
		t.Error("nothing stands somewhere")
	}
}

// TestWholeLayoutIsASubject holds that a check can speak of the dwelling as a
// whole, at the file's first brace.
func TestWholeLayoutIsASubject(t *testing.T) {
	var subject Item = mustLoad(t, `{ "format": "lowvent-layout/1" }`)
	if subject.ID() != "" || subject.Label() != "the dwelling" || subject.Spot().Pointer() != "" {
		t.Errorf("%q %q %q", subject.ID(), subject.Label(), subject.Spot().Pointer())
	}
}
