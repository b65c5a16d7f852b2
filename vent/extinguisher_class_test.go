package vent

import "testing"

func TestForBurningFat(t *testing.T) {
	for printed, want := range map[string]bool{
		"1-A:10-B:C": true, "10-B:C": true, "ABC": true, "BC": true, "34B": true, "13A 89B C": true, "B": true, "A, B, C, E": true, "5-B": true, "ABF": true,
		"2-A": false, "fire blanket, EN 1869": false, "Fire Blanket, BS EN 1869": false, "BLANKET": false, "": false, "CAB": false, "b": false, "class K": false,
	} {
		if got := forBurningFat(printed); got != want {
			t.Errorf("%q names class B: %v, want %v", printed, got, want)
		}
	}
}
