package pdf

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/draw"
	"lowvent.example/cmd/lowvent/internal/letter"
)

func TestShares(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		share := rapid.SliceOfN(rapid.Float64Range(0.01, 100), 1, 12).Draw(t, "shares")
		least := make([]float64, len(share))
		for i := range least {
			least[i] = rapid.Float64Range(0, 180/float64(len(share))).Draw(t, "least")
		}
		sum := 0.0
		for i, wide := range shared(180, share, least) {
			sum += wide
			if wide < least[i]-1e-9 {
				t.Fatalf("column %d gets %g and needs %g", i, wide, least[i])
			}
		}
		if math.Abs(sum-180) > 1e-6 {
			t.Fatalf("the columns are %g wide together", sum)
		}
	})
	if got := shared(100, []float64{1, 3}, []float64{0, 0}); got[0] != 25 || got[1] != 75 {
		t.Errorf("shares of 1 and 3 come to %v", got)
	}
}

// TestLinesHoldTheirWords: no line is wider than its room, and no letter is lost.
func TestLinesHoldTheirWords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := anyText(20).Draw(t, "text")
		first, rest := rapid.Float64Range(5, 180).Draw(t, "first"), rapid.Float64Range(5, 180).Draw(t, "rest")
		lines := tableStyle.wrap(text, first, rest)
		for i, l := range lines {
			room := rest
			if i == 0 {
				room = first
			}
			if wide := letter.Width(letter.Regular, l, tableStyle.size); wide > room+1e-9 || strings.HasSuffix(l, " ") {
				t.Fatalf("line %d, %q, is %g wide, in %g", i, l, wide, room)
			}
		}
		if got, want := bareAll([]string{strings.Join(lines, "")})[0], bareAll([]string{text})[0]; got != want {
			t.Fatalf("lines of %q, text %q", got, want)
		}
	})
	broken := tableStyle.wrap("/lockers/skirt/lowVents/north/gross", 40, 40)
	if len(broken) != 2 || !strings.HasSuffix(broken[0], "/") {
		t.Errorf("a path is broken as %q", broken)
	}
}

// TestAQuantityIsNotTornApart between its number and its unit, where a line has room for it.
func TestAQuantityIsNotTornApart(t *testing.T) {
	for text, want := range map[string][]string{
		"a vent of 120 × 80 mm, low":   {"a vent of", "120 × 80 mm,", "low"},
		"some 28 cm² ± 2 cm² are free": {"some", "28 cm² ± 2 cm²", "are free"},
		"needed ≥ 27 mbar or so":       {"needed", "≥ 27 mbar or", "so"},
		"the year 2014 remembered":     {"the year 2014", "remembered"},
		"see the list of 12 words":     {"see the list of", "12 words"},
	} {
		room := letter.Width(letter.Regular, "see the list of", tableStyle.size) + 0.1
		room = max(room, letter.Width(letter.Regular, "28 cm² ± 2 cm²", tableStyle.size)+0.1)
		if got := tableStyle.wrap(text, room, room); strings.Join(got, "|") != strings.Join(want, "|") {
			t.Errorf("%q is set as %q, want %q", text, got, want)
		}
	}
	if got := tableStyle.wrap("120 × 80 mm", 9, 9); len(got) != 3 {
		t.Errorf("a quantity wider than its column is set as %q", got)
	}
}

func TestATitleIsCutToItsRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, room := anyText(10).Draw(t, "text"), rapid.Float64Range(5, 100).Draw(t, "room")
		got := footStyle.cut(text, room)
		if wide := letter.Width(letter.Regular, got, footStyle.size); wide > room {
			t.Fatalf("%q is %g wide, in %g", got, wide, room)
		}
	})
	if got := footStyle.cut("two  words\n", 100); got != "two words" {
		t.Errorf("a title that has room is cut to %q", got)
	}
}

// TestSignalWordsCanBeRead: contrast of 4.5 : 1 at least, reckoned as WCAG 2.2 does it
// (relative luminance, success criterion 1.4.3); red, orange, yellow and blue are the
// colours of the four words in ANSI Z535.1 (from memory).
func TestSignalWordsCanBeRead(t *testing.T) {
	grounds := map[string]draw.Ink{"DANGER": draw.Red, "WARNING": draw.Orange, "CAUTION": draw.Yellow, "NOTICE": draw.Blue, "ELSE": draw.White}
	for word, want := range grounds {
		ground, ink := inks(word)
		a, b := luminance(ground), luminance(ink)
		if ratio := (max(a, b) + 0.05) / (min(a, b) + 0.05); ratio < 4.5 || ground != want {
			t.Errorf("%s stands in ink %d on %d with a contrast of %.1f", word, ink, ground, ratio)
		}
	}
}

func luminance(i draw.Ink) float64 {
	r, g, b := i.RGB()
	linear := func(c uint8) float64 {
		v := float64(c) / 255
		if v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
}

// TestColourIsForSignalWordsOnly: all else on the pages is black, white and grey.
func TestColourIsForSignalWordsOnly(t *testing.T) {
	pages, err := arrange(sample(), A4)
	if err != nil {
		t.Fatal(err)
	}
	boxes := 0
	for _, g := range pages {
		for i, p := range g.pieces {
			path, is := p.mark.(*draw.Path)
			if !is || path.Fill < draw.Red {
				continue
			}
			boxes++
			if word := g.pieces[i+1].mark.(*draw.Text).Content; path.Fill == draw.White || !strings.Contains("DANGER WARNING CAUTION NOTICE", word) {
				t.Errorf("a coloured box holds %q", word)
			}
		}
	}
	if boxes != 4+26 {
		t.Errorf("%d signal words have a box", boxes)
	}
}
