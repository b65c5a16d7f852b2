package report

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestTurns(t *testing.T) {
	margin := func(m float64) Part { return Part{Outcome: NotMet, Margin: &m} }
	met := &Finding{Outcome: Within, Word: Danger}
	proven := &Finding{Outcome: Within, Reason: ToProve, Word: Danger}
	broken := &Finding{Outcome: NotMet, Word: Warning, Parts: []Part{margin(-0.10), {Outcome: Within}}}
	unknown := &Finding{Outcome: NotKnown, Reason: MissingInput, Word: Warning}
	fitter := &Finding{Outcome: NotKnown, Reason: AskFitter, Word: Warning}
	silent := &Finding{Outcome: NotKnown, Reason: NotCovered, Word: Warning}
	none := &Finding{Outcome: NotApplicable, Reason: NoSubject, Word: Warning}
	tests := map[string]struct {
		old, new *Finding
		want     Turn
	}{
		"met, not met":                    {met, broken, Worse},
		"not known, not met":              {unknown, broken, Worse},
		"newly listed, not met":           {nil, broken, Worse},
		"does not apply, not met":         {none, broken, Worse},
		"met, not known":                  {met, unknown, NewlyUnknown},
		"not met, its statement left out": {broken, unknown, NewlyUnknown},
		"for the fitter, not known":       {fitter, unknown, NewlyUnknown},
		"newly listed, not known":         {nil, unknown, NewlyUnknown},
		"not met, met":                    {broken, met, Better},
		"not known, met":                  {unknown, proven, Better},
		"met, to prove":                   {met, proven, ""},
		"newly listed, met":               {nil, met, ""},
		"not covered, met":                {silent, met, ""},
		"not met, does not apply":         {broken, none, Unasked},
		"met, not covered":                {met, silent, Unasked},
		"not known, for the fitter":       {unknown, fitter, Unasked},
		"not covered, does not apply":     {silent, none, ""},
		"newly listed, does not apply":    {nil, none, ""},
		"not known, graver":               {unknown, &Finding{Outcome: NotKnown, Word: Danger}, Worse},
		"not known, less grave":           {unknown, &Finding{Outcome: NotKnown, Word: Notice}, Better},
		"graver":                          {broken, &Finding{Outcome: NotMet, Word: Danger, Parts: broken.Parts}, Worse},
		"further over":                    {broken, &Finding{Outcome: NotMet, Word: Warning, Parts: []Part{margin(-0.11)}}, Worse},
		"less far over":                   {broken, &Finding{Outcome: NotMet, Word: Warning, Parts: []Part{margin(-0.09)}}, Better},
		"one more thing":                  {broken, &Finding{Outcome: NotMet, Word: Warning, Parts: []Part{margin(-0.01), margin(-0.01)}}, Worse},
		"less over, less known":           {broken, &Finding{Outcome: NotMet, Word: Warning, Parts: []Part{margin(-0.01), {Outcome: NotKnown}}}, NewlyUnknown},
		"as it was":                       {broken, broken, ""},
	}
	for name, c := range tests {
		old, new := &FileReport{}, &FileReport{Findings: []Finding{*c.new}}
		if c.old != nil {
			old.Findings = []Finding{*c.old}
		}
		got := Turn("")
		if changes := Compare(old, new); len(changes) == 1 {
			got = changes[0].Turn
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

// TestLeftOutIsNoMend: a thing that is listed no more takes its findings along, and no
// question of it is told as better.
func TestLeftOutIsNoMend(t *testing.T) {
	old := &FileReport{Findings: []Finding{
		{Check: "a", Subject: "/x", Outcome: NotMet, Word: Danger}, {Check: "b", Subject: "/x", Outcome: NotApplicable}, {Check: "a", Subject: "/y", Outcome: Within}}}
	changes := Compare(old, &FileReport{Findings: old.Findings[2:]})
	if len(changes) != 1 || changes[0].Turn != Unasked || changes[0].New != nil || changes[0].Finding().Subject != "/x" {
		t.Errorf("%+v", changes)
	}
}

// TestThereAndBack: nothing that is worse one way is worse the other way as well, and a
// report against itself has no change.
func TestThereAndBack(t *testing.T) {
	finding := rapid.Custom(func(t *rapid.T) Finding {
		f := Finding{Outcome: rapid.SampledFrom([]Outcome{Within, NotMet, NotKnown, NotApplicable}).Draw(t, "outcome"), Word: rapid.SampledFrom(Signals()).Draw(t, "word")}
		if f.Outcome == NotKnown {
			f.Reason = rapid.SampledFrom([]Reason{MissingInput, NotSurveyed, NotCovered, AskFitter}).Draw(t, "reason")
		}
		for range rapid.IntRange(0, 3).Draw(t, "parts") {
			m := rapid.Float64Range(-2, 0).Draw(t, "margin")
			f.Parts = append(f.Parts, Part{Outcome: f.Outcome, Margin: &m})
		}
		return f
	})
	rapid.Check(t, func(t *rapid.T) {
		a, b := finding.Draw(t, "a"), finding.Draw(t, "b")
		way := func(x, y Finding) Turn {
			for _, c := range Compare(&FileReport{Findings: []Finding{x}}, &FileReport{Findings: []Finding{y}}) {
				return c.Turn
			}
			return ""
		}
		if self := way(a, a); self != "" {
			t.Fatalf("against itself: %s", self)
		}
		there, back := way(a, b), way(b, a)
		if there == Better && back != Worse && back != NewlyUnknown && back != Better {
			t.Fatalf("%+v to %+v is better, and back it is %q", a, b, back)
		}
		if there == Better && back == Better {
			t.Fatalf("better both ways: %+v, %+v", a, b)
		}
	})
}
