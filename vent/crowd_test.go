package vent_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"lowvent.example/schema/check"
	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/vent"
)

// ofCrowd writes so many things of a list, each at a random place, of random words and
// now and then without one of its keys.
func ofCrowd(random *rand.Rand, n int, keys map[string][]string) []string {
	var members []string
	for i := range n {
		at := fmt.Sprintf(`["%.2f m", "%.2f m", "%.2f m"]`, random.Float64()*14-4, random.Float64()*12-5, random.Float64()*3-1)
		if random.IntN(8) == 0 {
			at = strings.Replace(at, ` m"`, ` m ± 30 cm"`, 1)
		}
		parts := []string{`"at": ` + at}
		for key, words := range keys {
			parts = append(parts, fmt.Sprintf(`%q: %s`, key, words[random.IntN(len(words))]))
		}
		if random.IntN(25) == 0 {
			parts = append(parts[:0], parts[random.IntN(len(parts))])
		}
		members = append(members, fmt.Sprintf(`"x%d": { %s }`, i, strings.Join(parts, ", ")))
	}
	return members
}

// crowds are the lists that are looked through by place where they are very long.
var crowds = []struct {
	list   string
	keys   map[string][]string
	checks []string
}{
	{"openings", map[string][]string{"kind": {`"window"`, `"door"`, `"mechanical-intake"`, `"hatch"`}, "of": {`"spaces/studio"`}}, []string{"locker.vent-clear"}},
	{"ignitionSources", map[string][]string{"kind": {`"socket"`}, "protection": {`"none"`}, "in": {`"open-air"`, `"spaces/studio"`, `"spaces/battery-bay"`}}, []string{"ignition.near-gas"}},
	{"combustibles", map[string][]string{"kind": {`"curtain"`}, "surface": {`"fabric"`, `"metal"`}, "moves": {"true", "false"}, "in": {`"spaces/studio"`, `"spaces/berth"`}},
		[]string{"clearance.above", "clearance.side", "clearance.near", "clearance.appliance"}},
}

// outcomes judges the demonstration with other members in one list and gives what the
// checks say of each subject.
func outcomes(t *testing.T, b *checktest.Bench, list string, members []string, ids []string, tape string, more ...source.Edit) map[string]report.Finding {
	t.Helper()
	edits := []source.Edit{{Pointer: "/" + list, Value: "{" + strings.Join(members, ", ") + "}"}, {Pointer: "/tapeMeasures", Value: "{" + tape + "}"}}
	l, err := b.Layout(checktest.DefaultBase, append(edits, more...))
	if err != nil {
		t.Fatal(err)
	}
	codes, err := b.Codes("testdata/codes/every-term.json")
	if err != nil {
		t.Fatal(err)
	}
	set := check.Set{}
	for _, c := range vent.Checks().Checks {
		for _, id := range ids {
			if c.ID == id {
				set.Checks = append(set.Checks, c)
			}
		}
	}
	r, err := check.Run(context.Background(), set, l, codes, check.Options{On: checktest.Day, Workers: 2})
	if err != nil {
		t.Fatal(err)
	}
	found := map[string]report.Finding{}
	for _, f := range r.Findings {
		found[f.Check+" "+subjectOf(f)] = f
	}
	return found
}

// worse orders outcomes as clauses are joined by and.
func worse(f report.Finding) int {
	switch {
	case f.Outcome == report.NotMet:
		return 5
	case f.Outcome == report.NotKnown:
		return 4
	case f.Reason == report.AskFitter:
		return 3
	case f.Reason == report.NotCovered:
		return 2
	case f.Outcome == report.Within:
		return 1
	}
	return 0
}

// TestACrowdIsJudgedAsItsParts: what is said of a list so long that most of it is passed
// over is what is said of it in parts that are short enough to be asked one by one.
func TestACrowdIsJudgedAsItsParts(t *testing.T) {
	b, err := checktest.NewBench("..")
	if err != nil {
		t.Fatal(err)
	}
	seen := map[int]bool{}
	for _, c := range crowds {
		for seed := range uint64(6) {
			random := rand.New(rand.NewPCG(seed, 1))
			members := ofCrowd(random, 420, c.keys)
			if seed%2 == 0 { // a crowd with nothing near, and nothing left out
				members = nil
				for i := range 420 {
					parts := []string{fmt.Sprintf(`"at": ["%d m", "30 m", "%.1f m"]`, 20+i%40, random.Float64()*3-1)}
					for key, words := range c.keys {
						parts = append(parts, fmt.Sprintf(`%q: %s`, key, words[random.IntN(len(words))]))
					}
					members = append(members, fmt.Sprintf(`"x%d": { %s }`, i, strings.Join(parts, ", ")))
				}
			}
			tape := ""
			if seed > 3 {
				tape = fmt.Sprintf(`"t": { "from": "lockers/skirt/vents/low-outer", "to": "%s/x7", "is": "0.1 m" }`, c.list)
			}
			whole := outcomes(t, b, c.list, members, c.checks, tape)
			one, two := outcomes(t, b, c.list, members[:210], c.checks, tape), outcomes(t, b, c.list, members[210:], c.checks, "")
			if len(whole) == 0 {
				t.Fatalf("%v judge nothing", c.checks)
			}
			for key, f := range whole {
				if want := max(worse(one[key]), worse(two[key])); worse(f) != want {
					t.Errorf("%s, seed %d, %s: %s %s, in parts %s and %s", c.list, seed, key, f.Outcome, f.Reason, one[key].Outcome, two[key].Outcome)
				}
				seen[worse(f)] = true
			}
		}
	}
	for _, weight := range []int{0, 1, 4, 5} {
		if !seen[weight] {
			t.Errorf("no crowd ended with an outcome of weight %d", weight)
		}
	}
}

// TestTheOneThatStandsForACrowd is, beside burners, that which may reach highest: all
// others lie below the burners, and one that is measured badly may rise above them.
func TestTheOneThatStandsForACrowd(t *testing.T) {
	b, err := checktest.NewBench("..")
	if err != nil {
		t.Fatal(err)
	}
	var members []string
	for i := range 320 {
		z := "0.80 m"
		if i == 200 {
			z = "0.50 m ± 60 cm"
		}
		members = append(members, fmt.Sprintf(`"x%d": { "kind": "wall", "surface": "wood", "moves": false, "in": "spaces/studio", "at": ["40 m", "30 m", %q] }`, i, z))
	}
	for id, want := range map[string]report.Outcome{"clearance.side": report.Within, "clearance.above": report.NotApplicable} {
		f := outcomes(t, b, "combustibles", members, []string{id}, "")[id+" appliances/hob"]
		if f.Outcome != want {
			t.Errorf("%s: %s %s", id, f.Outcome, f.Reason)
		}
	}
}

// TestACrowdAroundALargeClearance: where a plate asks for two metres, what stands nearer
// than that is found among very many things that are farther off and reach higher.
func TestACrowdAroundALargeClearance(t *testing.T) {
	b, err := checktest.NewBench("..")
	if err != nil {
		t.Fatal(err)
	}
	demo, err := b.Layout(checktest.DefaultBase, nil)
	if err != nil {
		t.Fatal(err)
	}
	hob := demo.Appliances.Get("hob")
	_, to, known := hob.Corners()
	if !known {
		t.Fatal("the demonstration does not say where the hob stands")
	}
	beside := fmt.Sprintf(`["%.2f m", "%.2f m", "0.9 m"]`, float64(to[0].High)+1.2, float64(to[1].High)+1.2)
	members := []string{`"near": { "kind": "wall", "surface": "wood", "moves": false, "in": "spaces/studio", "at": ` + beside + ` }`}
	for i := range 320 {
		members = append(members, fmt.Sprintf(`"x%d": { "kind": "wall", "surface": "wood", "moves": false, "in": "spaces/studio", "at": ["40 m", "30 m", "1.5 m"] }`, i))
	}
	edit := source.Edit{Pointer: "/appliances/hob/clearances", Value: `{ "above": "2 m", "sides": "2 m", "rear": "2 m", "front": "2 m", "below": "2 m" }`}
	if f := outcomes(t, b, "combustibles", members, []string{"clearance.appliance"}, "", edit)["clearance.appliance appliances/hob"]; f.Outcome != report.NotMet {
		t.Errorf("%s %s", f.Outcome, f.Reason)
	}
}
