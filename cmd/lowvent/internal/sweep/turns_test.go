package sweep

import (
	"errors"
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"lowvent.example/schema/report"
)

// made is a made-up check: it ends in the first way up to its first turn, and so on.
type made struct {
	check string
	word  report.Signal
	turns []int64 // the first step that ends in the next way
	ends  []report.Outcome
}

func (m made) at(n int64) report.Finding {
	k := 0
	for k < len(m.turns) && n >= m.turns[k] {
		k++
	}
	return report.Finding{Check: m.check, Subject: "/x", Word: m.word, Outcome: m.ends[k]}
}

// bench judges made-up checks and counts how often it was asked.
type bench struct {
	checks []made
	judged int
}

func (b *bench) judge(at []int64, only []string) ([][]report.Finding, error) {
	var all [][]report.Finding
	for _, n := range at {
		b.judged++
		var findings []report.Finding
		for _, m := range b.checks {
			if only == nil || slices.Contains(only, m.check) {
				findings = append(findings, m.at(n))
			}
		}
		all = append(all, findings)
	}
	return all, nil
}

func (b *bench) lanes(t interface{ Fatal(...any) }, at []int64) []Lane {
	findings, err := b.judge(at, nil)
	if err != nil {
		t.Fatal(err)
	}
	lanes, err := Lanes(at, findings, b.judge)
	if err != nil {
		t.Fatal(err)
	}
	return lanes
}

const (
	broken  = report.NotMet
	within  = report.Within
	unknown = report.NotKnown
)

func TestLanes(t *testing.T) {
	b := &bench{checks: []made{
		{"a.steady", report.Danger, nil, []report.Outcome{broken}},
		{"b.mild", report.Caution, []int64{123}, []report.Outcome{broken, within}},
		{"c.grave", report.Danger, []int64{400, 700}, []report.Outcome{within, broken, within}},
		{"d.three", report.Warning, []int64{510, 513}, []report.Outcome{broken, unknown, within}}, // both between two values
		{"e.edge", report.Warning, []int64{100}, []report.Outcome{broken, within}},                // just at a value
		{"f.unseen", report.Danger, []int64{610, 612}, []report.Outcome{broken, within, broken}},  // there and back between two values
	}}
	var at []int64
	for n := int64(0); n <= 1000; n += 100 {
		at = append(at, n)
	}
	got := map[string][]string{}
	var order []string
	for _, lane := range b.lanes(t, at) {
		order = append(order, lane.Check)
		for _, turn := range lane.Turns {
			if turn.Above != turn.Below+1 {
				t.Errorf("%s turns between %d and %d", lane.Check, turn.Below, turn.Above)
			}
			got[lane.Check] = append(got[lane.Check], fmt.Sprintf("%d %s %s", turn.Above, turn.Was.Outcome, turn.Is.Outcome))
		}
	}
	want := map[string][]string{
		"b.mild": {"123 not-met within"}, "c.grave": {"400 within not-met", "700 not-met within"},
		"d.three": {"510 not-met not-known", "513 not-known within"}, "e.edge": {"100 not-met within"},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("turns (-want +got)\n%s", diff)
	}
	if diff := cmp.Diff([]string{"c.grave", "d.three", "e.edge", "b.mild", "a.steady", "f.unseen"}, order); diff != "" {
		t.Errorf("order (-want +got)\n%s", diff)
	}
}

// TestEveryTurnIsFoundAtItsStep: with at most one turn between two values, each is found
// to the step, and the middle is judged only as often as halving takes.
func TestEveryTurnIsFoundAtItsStep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		gap := rapid.Int64Range(1, 5000).Draw(t, "gap")
		values := rapid.IntRange(2, 30).Draw(t, "values")
		var at []int64
		for i := range values {
			at = append(at, gap*int64(i))
		}
		b := &bench{}
		for c := range rapid.IntRange(1, 5).Draw(t, "checks") {
			m := made{check: fmt.Sprint("check.", c), word: report.Warning, ends: []report.Outcome{broken}}
			for i := range values - 1 {
				if rapid.Bool().Draw(t, "turns") {
					m.turns = append(m.turns, at[i]+rapid.Int64Range(1, gap).Draw(t, "at"))
					next := rapid.SampledFrom([]report.Outcome{broken, within, unknown, report.NotApplicable}).Filter(func(o report.Outcome) bool { return o != m.ends[len(m.ends)-1] }).Draw(t, "next")
					m.ends = append(m.ends, next)
				}
			}
			b.checks = append(b.checks, m)
		}
		found := map[string][]int64{}
		for _, lane := range b.lanes(t, at) {
			for _, turn := range lane.Turns {
				found[lane.Check] = append(found[lane.Check], turn.Above)
			}
		}
		turns := 0
		for _, m := range b.checks {
			turns += len(m.turns)
			if !slices.Equal(found[m.check], m.turns) {
				t.Fatalf("%s turns at %d, found %d", m.check, m.turns, found[m.check])
			}
		}
		if most := values + turns*13; b.judged > most { // 2^13 is more than the widest gap
			t.Fatalf("judged %d times for %d turns", b.judged, turns)
		}
	})
}

// TestNotListed: a thing that only some values list turns where it comes in.
func TestNotListed(t *testing.T) {
	judge := func(at []int64, _ []string) ([][]report.Finding, error) {
		var all [][]report.Finding
		for _, n := range at {
			var findings []report.Finding
			if n >= 7 {
				findings = []report.Finding{{Check: "a", Subject: "/x", Outcome: within, Word: report.Notice}}
			}
			all = append(all, findings)
		}
		return all, nil
	}
	at := []int64{0, 10}
	findings, _ := judge(at, nil)
	lanes, err := Lanes(at, findings, judge)
	if err != nil || len(lanes) != 1 || len(lanes[0].Turns) != 1 {
		t.Fatalf("%+v, %v", lanes, err)
	}
	if turn := lanes[0].Turns[0]; turn.Below != 6 || turn.Above != 7 || turn.Was != nil || turn.Is == nil || lanes[0].Finding() == nil {
		t.Errorf("%+v", turn)
	}
}

// TestAJudgeThatCannot: what stands in the way in the middle ends the whole.
func TestAJudgeThatCannot(t *testing.T) {
	b := &bench{checks: []made{{"a", report.Danger, []int64{5}, []report.Outcome{broken, within}}}}
	findings, err := b.judge([]int64{0, 10}, nil)
	if err != nil {
		t.Fatal(err)
	}
	why := errors.New("unusable")
	lanes, err := Lanes([]int64{0, 10}, findings, func([]int64, []string) ([][]report.Finding, error) { return nil, why })
	if !errors.Is(err, why) || lanes != nil {
		t.Errorf("%v, %v", lanes, err)
	}
}
