package layout

import (
	"testing"

	"lowvent.example/schema/source"
)

func TestTapeBetween(t *testing.T) {
	l, faults := Load(source.NewFile("x.json", []byte(`{ "format": "lowvent-layout/1", "cylinders": { "a": {}, "b": {}, "c": {} }, "tapeMeasures": {
		"one": { "from": "cylinders/b", "to": "cylinders/a", "is": "1 m" }, "two": { "from": "cylinders/a", "to": "cylinders/b", "is": "2 m" } } }`)))
	if faults != nil {
		t.Fatal(faults)
	}
	for _, ends := range [][2]Ref{{"cylinders/a", "cylinders/b"}, {"cylinders/b", "cylinders/a"}} {
		if got := l.TapeBetween(ends[0], ends[1]); got == nil || got.ID() != "one" {
			t.Errorf("from %s to %s: %v", ends[0], ends[1], got)
		}
	}
	if got := l.TapeBetween("cylinders/a", "cylinders/c"); got != nil {
		t.Errorf("where none was taken: %s", got.ID())
	}
}
