package gas_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/gas"
	"lowvent.example/schema/report"
)

// changeoverOf writes a layout of two cylinders, two regulators and two changeovers,
// joined by the lines; of c the file says what it connects, and that neither a valve nor
// a plug is there.
func changeoverOf(connects string, complete bool, lines [][2]string) string {
	var text []string
	for i, l := range lines {
		text = append(text, fmt.Sprintf(`"l%d": { "from": %q, "to": %q }`, i, l[0], l[1]))
	}
	listed := ""
	if complete {
		listed = `"lines"`
	}
	return `{ "format": "lowvent-layout/1", "surveyedBy": { "complete": [` + listed + `] }, "cylinders": { "a": {}, "b": {} }, "regulators": { "r": {}, "s": {} },
		"changeovers": { "c": { "connects": [` + connects + `], "nonReturn": false, "freeTailPlugged": false }, "d": {} },
		"appliances": { "hob": {} }, "lines": {` + strings.Join(append(text, `"on": { "from": "changeovers/c", "to": "appliances/hob" }`), ",") + `} }`
}

const (
	named     = `"cylinders/b"`
	bothNamed = `"cylinders/a", "cylinders/b"`
)

// TestSuppliesOfAChangeover: two that are named or two lines that lead there are two,
// and of two the questions are asked; one is one only where every line is listed. Where
// cylinder pressure meets regulated gas, the words are that the fitter parts them, and
// no edit is offered that would have the finding go.
func TestSuppliesOfAChangeover(t *testing.T) {
	one, two := [][2]string{{"cylinders/b", "changeovers/c"}}, [][2]string{{"cylinders/a", "changeovers/c"}, {"cylinders/b", "changeovers/c"}}
	for _, c := range []struct {
		name     string
		connects string
		complete bool
		lines    [][2]string
		outcome  report.Outcome
		reason   report.Reason
		meet     bool
	}{
		{"one named, one line", named, true, one, report.NotApplicable, report.RuleExempts, false},
		{"one named, one line, and perhaps more", named, false, one, report.NotKnown, report.NotSurveyed, false},
		{"two named, one line", bothNamed, true, one, report.NotMet, "", false},
		{"two named, no list", bothNamed, false, nil, report.NotMet, "", false},
		{"one named, two lines", named, true, two, report.NotMet, "", false},
		{"none named, two lines", "", true, two, report.NotMet, "", false},
		{"one named, two lines of a list with gaps", named, false, two, report.NotMet, "", false},
		{"regulated and bare", named, true, [][2]string{{"cylinders/a", "regulators/r"}, {"regulators/r", "changeovers/c"}, {"cylinders/b", "changeovers/c"}}, report.NotMet, "", true},
		{"regulated and bare, both named", bothNamed, true, [][2]string{{"cylinders/a", "regulators/r"}, {"regulators/r", "changeovers/c"}, {"cylinders/b", "changeovers/c"}}, report.NotMet, "", true},
		{"regulated further up, and bare", named, true, [][2]string{{"cylinders/a", "regulators/r"}, {"regulators/r", "changeovers/d"}, {"changeovers/d", "changeovers/c"}, {"cylinders/b", "changeovers/c"}}, report.NotMet, "", true},
		{"both regulated", bothNamed, true, [][2]string{{"cylinders/a", "regulators/r"}, {"regulators/r", "changeovers/c"}, {"cylinders/b", "regulators/s"}, {"regulators/s", "changeovers/c"}}, report.NotMet, "", false},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := judgedLines(t, changeoverOf(c.connects, c.complete, c.lines))["changeover.no-return /changeovers/c"]
			if f.Outcome != c.outcome || f.Reason != c.reason {
				t.Fatalf("%s %s, want %s %s: %+v", f.Outcome, f.Reason, c.outcome, c.reason, f.Parts)
			}
			for _, p := range f.Parts {
				if p.Outcome != report.NotMet {
					continue
				}
				if meet := p.Mend.Text == gas.PartSupplies; meet != c.meet || meet != (len(p.Mend.Set) == 0) {
					t.Errorf("the mend is %+v, and regulated and unregulated gas meet: %v", p.Mend, c.meet)
				}
			}
		})
	}
}

// TestNoSupplyIsHiddenByTheOtherList: whatever is named and whatever leads there, a
// changeover without valves and plugs is passed over only where both say one at most.
func TestNoSupplyIsHiddenByTheOtherList(t *testing.T) {
	connects := map[int]string{0: "", 1: named, 2: bothNamed}
	rapid.Check(t, func(rt *rapid.T) {
		n, m := rapid.IntRange(0, 2).Draw(rt, "named"), rapid.IntRange(0, 3).Draw(rt, "lines")
		complete := rapid.Bool().Draw(rt, "complete")
		var lines [][2]string
		for range m {
			from := rapid.SampledFrom([]string{"cylinders/a", "cylinders/b", "regulators/r", "regulators/s"}).Draw(rt, "from")
			lines = append(lines, [2]string{from, "changeovers/c"})
		}
		want := report.NotMet
		switch {
		case max(n, m) < 2 && complete:
			want = report.NotApplicable
		case max(n, m) < 2:
			want = report.NotKnown
		}
		if f := judgedLines(t, changeoverOf(connects[n], complete, lines))["changeover.no-return /changeovers/c"]; f.Outcome != want {
			rt.Fatalf("%d named, %d lines, listed whole: %v: %s, want %s", n, m, complete, f.Outcome, want)
		}
	})
}
