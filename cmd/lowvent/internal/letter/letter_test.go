package letter

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// TestWidthsOfTheFont: the advance widths stand in the font's own table of horizontal
// metrics (OpenType, table hmtx): the Go fonts have 2048 units to the em, and a space
// and a digit of 569 and 1139 of them (those of Helvetica, 0.278 and 0.556 em, to a
// unit; Adobe Font Metrics of Helvetica, from memory).
func TestWidthsOfTheFont(t *testing.T) {
	for text, ems := range map[string]float64{" ": 0.278, "0": 0.556, "00 0": 3*0.556 + 0.278, "": 0} {
		if got := Width(Regular, text, 10); math.Abs(got-10*ems) > 0.02*float64(len(text)+1)/2 {
			t.Errorf("%q is %g wide, want %g", text, got, 10*ems)
		}
	}
	if Width(Bold, "mile", 1) <= Width(Regular, "mile", 1) {
		t.Error("bold letters are no wider than regular ones")
	}
}

func TestWidthsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.String().Draw(t, "a"), rapid.String().Draw(t, "b")
		size := rapid.Float64Range(0.1, 100).Draw(t, "size")
		whole, parts := Width(Regular, a+b, size), Width(Regular, a, size)+Width(Regular, b, size)
		if math.Abs(whole-parts) > 1e-9*(1+whole) {
			t.Fatalf("%g in one, %g in two", whole, parts)
		}
	})
}

// TestSignsAtHand: what quantities, formulas and drawings are written with.
func TestSignsAtHand(t *testing.T) {
	for _, r := range "aZ09 ±×·²³°–“”≤≥√∞Ωμρηγπé" {
		if !has(Regular, r) || !has(Bold, r) {
			t.Errorf("no sign for %q", r)
		}
	}
	if has(Regular, '語') {
		t.Error("a sign for a character that the letters lack")
	}
}
