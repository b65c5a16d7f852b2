package check

import (
	"slices"
	"testing"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// TestAGapTurnsWithinAndExemptIntoNotKnown and leaves every other answer alone:
// what is listed and offends, offends whether or not the list is complete.
func TestAGapTurnsWithinAndExemptIntoNotKnown(t *testing.T) {
	l, codes := load(t), answerBooks(t)
	surveys := map[string]func(*Sheet){
		"inventory": func(s *Sheet) { Inventory(s, layout.InventoryListLines) },
		"survey": func(s *Sheet) {
			k := s.Layout().Lockers.Get("side")
			Survey(s, k, &k.Surveyed, layout.SurveyListIgnitionSources)
		},
		"no survey at all": func(s *Sheet) {
			k := s.Layout().Lockers.Get("side")
			Survey(s, k, &layout.Survey{}, layout.SurveyListIgnitionSources)
		},
	}
	for name, survey := range surveys {
		for _, a := range answers {
			t.Run(name+", "+a.name, func(t *testing.T) {
				f := judge(t, l, codes, func(s *Sheet, _ *layout.Cylinder) Ruling {
					survey(s)
					return a.clause(s)
				})
				if a.name != "within" && a.name != "exempt" {
					is(t, f, a.outcome, a.reason)
					return
				}
				is(t, f, report.NotKnown, report.NotSurveyed)
				p := f.Parts[0]
				if len(p.Missing) != 1 || p.Text == "" || len(p.Surveys) != 0 {
					t.Errorf("%+v", p)
				}
			})
		}
	}
}

func TestACompleteListIsNoted(t *testing.T) {
	f := judge(t, load(t), books(t, stand), func(s *Sheet, c *layout.Cylinder) Ruling {
		k := s.Layout().Lockers.Get("side")
		Survey(s, k, &k.Surveyed, layout.SurveyListPenetrations)
		Inventory(s, layout.InventoryListCylinders)
		return standing1(s, c)
	})
	is(t, f, report.Within, "")
	want := []string{"/lockers/side/surveyed/complete#penetrations", "/surveyedBy/complete#cylinders"}
	if !slices.Equal(f.Parts[0].Surveys, want) {
		t.Errorf("%v, want %v", f.Parts[0].Surveys, want)
	}
}

// TestAGapOfTheOuterSheetReachesTheFold: the list that a fold ranges over is
// surveyed on the outer sheet, and decides over the parts.
func TestAGapOfTheOuterSheetReachesTheFold(t *testing.T) {
	l, codes := load(t), answerBooks(t)
	every := func(outer, inner bool, outcome string) report.Finding {
		return judge(t, l, codes, func(s *Sheet, _ *layout.Cylinder) Ruling {
			if outer {
				Inventory(s, layout.InventoryListLines)
			}
			return Every(s, s.Layout().Cylinders.All(), nil, func(s *Sheet, c *layout.Cylinder) Ruling {
				if inner {
					Inventory(s, layout.InventoryListLines)
				}
				if outcome == "not met" {
					return answers[0].clause(s)
				}
				return standing1(s, c)
			})
		})
	}
	is(t, every(false, false, "within"), report.Within, "")
	is(t, every(true, false, "within"), report.NotKnown, report.NotSurveyed)
	is(t, every(false, true, "within"), report.NotKnown, report.NotSurveyed)
	is(t, every(true, true, "not met"), report.NotMet, "")
	f := every(true, false, "within")
	if len(f.Parts) != 2 || f.Parts[0].Outcome != report.NotKnown || len(f.Parts[0].Missing) != 1 {
		t.Errorf("%+v", f.Parts)
	}
}

// TestMissingOutweighsAGap: a sheet that misses a value says so first.
func TestMissingOutweighsAGap(t *testing.T) {
	f := judge(t, load(t, "delete /cylinders/a/height"), books(t, tall), func(s *Sheet, c *layout.Cylinder) Ruling {
		Inventory(s, layout.InventoryListLines)
		return tallEnough(s, c)
	})
	is(t, f, report.NotKnown, report.MissingInput)
}

// TestASilentCodeIsNotAGap: nothing can be surveyed into the code's words.
func TestASilentCodeIsNotAGap(t *testing.T) {
	f := judge(t, load(t), books(t, stand), func(s *Sheet, c *layout.Cylinder) Ruling {
		Inventory(s, layout.InventoryListLines)
		Limit(s, "x", code.VentToOpening, nil)
		return Ruling{}
	})
	is(t, f, report.NotApplicable, report.NotCovered)
}

// TestAGapSaysWhatItIsAGapIn: that nothing listed offends, or that a thing is not listed.
func TestAGapSaysWhatItIsAGapIn(t *testing.T) {
	for want, clause := range map[string]func(*Sheet, *layout.Cylinder) Ruling{
		"nothing listed breaks the limit, but the list is not stated complete": func(s *Sheet, c *layout.Cylinder) Ruling {
			Inventory(s, layout.InventoryListLines)
			return standing1(s, c)
		},
		"none is listed, and the list is not stated complete": func(s *Sheet, c *layout.Cylinder) Ruling {
			Whole(s, layout.InventoryListLines)
			return answers[0].clause(s) // not met
		},
	} {
		f := judge(t, load(t), answerBooks(t), clause)
		is(t, f, report.NotKnown, report.NotSurveyed)
		if f.Parts[0].Text != want {
			t.Errorf("%q, want %q", f.Parts[0].Text, want)
		}
	}
}
