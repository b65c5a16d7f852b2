package vent_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"lowvent.example/schema/check"
	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
	"lowvent.example/vent"
)

// crowded is the demonstration bus with so many things more: a third of them openings,
// a third ignition sources, a third things that can burn, spread over a field round it.
func crowded(b *testing.B, things int) *layout.Layout {
	b.Helper()
	var openings, sparks, fuel []string
	for i := range things / 3 {
		x, y := 6+i%100, 4+i/100
		place := fmt.Sprintf(`["%d m", "%d m", "0.5 m"]`, x, y)
		openings = append(openings, fmt.Sprintf(`"o%d": { "kind": "window", "of": "open-air", "at": %s }`, i, place))
		sparks = append(sparks, fmt.Sprintf(`"s%d": { "kind": "socket", "in": "open-air", "protection": "none", "at": %s }`, i, place))
		fuel = append(fuel, fmt.Sprintf(`"c%d": { "kind": "curtain", "in": "spaces/studio", "surface": "fabric", "moves": false, "at": %s }`, i, place))
	}
	var edits []source.Edit
	for key, members := range map[string][]string{"/openings": openings, "/ignitionSources": sparks, "/combustibles": fuel} {
		edits = append(edits, source.Edit{Pointer: key, Value: "{" + strings.Join(members, ", ") + "}"})
	}
	edits = append(edits, source.Edit{Pointer: "/tapeMeasures", Value: "{}"})
	bench, err := checktest.NewBench("..")
	if err != nil {
		b.Fatal(err)
	}
	l, err := bench.Layout(checktest.DefaultBase, edits)
	if err != nil {
		b.Fatal(err)
	}
	return l
}

// BenchmarkCrowded judges a dwelling among very many things. The time grows with their
// number and no faster.
func BenchmarkCrowded(b *testing.B) {
	for _, things := range []int{100, 1000, 10000} {
		l := crowded(b, things)
		codes, err := code.Use("us-mobile-structure")
		if err != nil {
			b.Fatal(err)
		}
		b.Run(fmt.Sprint(things), func(b *testing.B) {
			for b.Loop() {
				if _, err := check.Run(context.Background(), vent.Checks(), l, codes, check.Options{On: checktest.Day, Workers: 2}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
