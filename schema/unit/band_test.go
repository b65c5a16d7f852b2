package unit

import (
	"errors"
	"math"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// checkReading tells what is wrong with a reading that was accepted, or "".
func checkReading(k Kind, text string, r Reading) string {
	for _, v := range []float64{r.Nominal, r.Low, r.High} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return "is not finite"
		}
		if v == 0 && math.Signbit(v) {
			return "is -0"
		}
		if k.info().floor != "" && v < 0 {
			return "lies below " + k.info().floor
		}
	}
	switch {
	case !(r.Low <= r.Nominal && r.Nominal <= r.High):
		return "has a band out of order"
	case r.Kind != k || r.Written != text:
		return "forgets what it was"
	case utf8.RuneCountInString(text) > MaxLength:
		return "is too long"
	}
	return ""
}

// Every accepted text has a finite, ordered band.
func TestBandsAreOrdered(t *testing.T) {
	banded := 0
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(Kinds()).Draw(t, "kind")
		text := formed(k).Draw(t, "text")
		r, err := ParseKind(k, text)
		if err != nil {
			return
		}
		if why := checkReading(k, text, r); why != "" {
			t.Fatalf("%s %q %s: %+v", k, text, why, r)
		}
		if r.Low < r.High {
			banded++
		}
	})
	if banded == 0 {
		t.Error("no band was drawn")
	}
}

// A sign turns a band over; a unit's twin spelling changes nothing.
func TestSignMirrorsTheBand(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := numbers().Draw(t, "number") + " m ± " + numbers().Draw(t, "tolerance") + rapid.SampledFrom([]string{" mm", " in", " %"}).Draw(t, "unit")
		plus, err := Parse[Length](text)
		if err != nil {
			return // too long
		}
		minus, err := Parse[Length]("-" + text)
		if err != nil {
			return
		}
		if minus.Nominal != -plus.Nominal || minus.Low != -plus.High || minus.High != -plus.Low {
			t.Fatalf("%q: %+v, its mirror %+v", text, plus, minus)
		}
	})
}

// A refusal is always a *ParseError in one line of bounded length, and its
// suggestion, if any, is accepted.
func checkRefusal(k Kind, text string, err error) string {
	var refused *ParseError
	if !errors.As(err, &refused) {
		return "is refused without a ParseError"
	}
	said := refused.Error()
	switch {
	case strings.ContainsAny(said, "\n\r"):
		return "is refused in more than a line"
	case len(said) > 2000:
		return "is refused at length"
	case !utf8.ValidString(said):
		return "is refused in broken UTF-8"
	case refused.Why == "" || strings.Contains(refused.Why, "%!"):
		return "is refused without a reason: " + refused.Why
	case !strings.Contains(said, k.Accepted()):
		return "is refused without the spellings"
	}
	if refused.Try != "" {
		if _, err := ParseKind(k, refused.Try); err != nil {
			return "has a suggestion that is refused: " + err.Error()
		}
	}
	return ""
}

func TestRefusalsAreHelpful(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(Kinds()).Draw(t, "kind")
		habit := rapid.Custom(func(t *rapid.T) string {
			return numbers().Draw(t, "number") + rapid.SampledFrom(wordSpelling).Draw(t, "habit")
		})
		text := rapid.OneOf(damaged(k), habit, rapid.String()).Draw(t, "text")
		_, err := ParseKind(k, text)
		if err == nil {
			return
		}
		if why := checkRefusal(k, text, err); why != "" {
			t.Fatalf("%s %q %s", k, text, why)
		}
	})
}

// Every habit of writing in the lists leads to a spelling that some kind has,
// and is not itself accepted by that kind.
func TestHabitsLeadSomewhere(t *testing.T) {
	for from, to := range pairs(wordSpelling) {
		found := false
		for _, k := range Kinds() {
			if find(k.info().units, to) == nil {
				continue
			}
			found = true
			if find(k.info().units, from) != nil {
				t.Errorf("%s takes %q as it is", k, from)
			}
			if got := nearest(k, from); got != to {
				t.Errorf("%s: nearest to %q is %q, want %q", k, from, got, to)
			}
		}
		if !found || from != strings.ToLower(from) {
			t.Errorf("%q → %q leads nowhere", from, to)
		}
	}
	for from, to := range pairs(phraseSpelling) {
		if from != strings.ToLower(from) {
			t.Errorf("%q is never met: it is looked for in small letters", from)
		}
		found := false
		for _, k := range Kinds() {
			if find(k.info().units, to) == nil {
				continue
			}
			found = true
			_, err := ParseKind(k, "5 "+from)
			var refused *ParseError
			if !errors.As(err, &refused) || refused.Try != "5 "+to {
				t.Errorf("%s: 5 %s leads to %+v, want 5 %s", k, from, refused, to)
			}
		}
		if !found {
			t.Errorf("%q → %q leads nowhere", from, to)
		}
	}
	for _, r := range vulgarFractions {
		_, err := Parse[Length]("2" + string(r) + " in")
		if err == nil || err.(*ParseError).Try == "" || !strings.HasPrefix(err.(*ParseError).Try, "2 ") {
			t.Errorf("2%c in leads to %v", r, err)
		}
	}
}
