package term

import (
	"bytes"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

func TestLane(t *testing.T) {
	all := []report.Ending{report.EndsNotMet, report.EndsNotKnown, report.EndsWithin, report.EndsNotCovered, report.EndsAskFitter, report.EndsNotApplies, report.EndsNotListed}
	for _, c := range []struct {
		values, columns int
		ended           []report.Ending
		want            string
	}{
		{7, 7, all, "X?.----"},
		{7, 14, all, "XX??..--------"},
		{7, 3, all, "X--"}, // the worst of what shares a column
		{4, 2, []report.Ending{report.EndsWithin, report.EndsNotCovered, report.EndsWithin, report.EndsNotMet}, "-X"},
	} {
		if got := (lane{c.values, c.columns}).draw(c.ended); got != c.want {
			t.Errorf("%d values in %d columns: %q, want %q", c.values, c.columns, got, c.want)
		}
	}
}

// TestNoBadValueHides: wherever one value is not met, its lane shows it, whatever the
// width of the page.
func TestNoBadValueHides(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 200).Draw(t, "values")
		s := &report.Sweep{Values: make([]report.SweptValue, n)}
		ended := make([]report.Ending, n)
		for i := range ended {
			ended[i] = report.EndsWithin
		}
		bad := rapid.IntRange(0, n-1).Draw(t, "bad")
		ended[bad] = report.EndsNotMet
		l := newLane(s, rapid.IntRange(40, 190).Draw(t, "room"))
		line := l.draw(ended)
		if strings.Count(line, "X") == 0 || len(line) != l.columns {
			t.Fatalf("%d values, the bad one %d, in %d columns: %q", n, bad, l.columns, line)
		}
	})
}

func TestHere(t *testing.T) {
	s := &report.Sweep{Swept: report.Swept{Kind: "length"}, Values: []report.SweptValue{{SI: 0}, {SI: 1}, {SI: 2}, {SI: 3}}}
	l := lane{4, 40}
	for _, c := range []struct{ old, want string }{
		{`"0 m"`, "      v what the file says"},
		{`"1 m ± 1 cm"`, "                v what the file says"},
		{`"3 m"`, "                 what the file says v"},
		{`"4 m"`, ""}, {`"-1 m"`, ""}, {"", ""}, {"{}", ""}, {`"1 kg"`, ""},
	} {
		s.Swept.Old = c.old
		if got := l.here(s); got != c.want {
			t.Errorf("%s: %q, want %q", c.old, got, c.want)
		}
	}
	s.Swept.Kind, s.Swept.Old = "number", "2"
	if got, want := l.here(s), "       what the file says v"; got != want {
		t.Errorf("a bare number: %q, want %q", got, want)
	}
}

// TestAnySweep: whatever a sweep holds, its page keeps to its columns, begins with the
// cautions, ends with the result, and tells every question, limit and figure.
func TestAnySweep(t *testing.T) {
	endings := []report.Ending{report.EndsWithin, report.EndsNotMet, report.EndsNotKnown, report.EndsNotCovered, report.EndsAskFitter, report.EndsNotApplies, report.EndsNotListed}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 200).Draw(t, "values")
		s := &report.Sweep{Format: report.SweepFormat, On: "2026-11-25", Title: prose().Draw(t, "title"), Gas: "the gas", Trial: &report.Trial{Of: "x.json"},
			Swept: report.Swept{Pointer: "/a/b", Kind: "length", Unit: "m", From: "1 m", To: "2 m", Step: "1 mm", Old: rapid.SampledFrom([]string{"", `"1.5 m"`}).Draw(t, "old")},
			Edge:  report.Edge, Unseen: report.Unseen}
		s.Caution = append(report.Cautions(), s.Words())
		for i := range n {
			s.Values = append(s.Values, report.SweptValue{Written: "1 m", SI: 1 + float64(i)/float64(n)})
		}
		for range rapid.IntRange(0, 3).Draw(t, "questions") {
			q := report.SweptQuestion{Check: rapid.StringMatching(`[a-z]{3,9}\.[a-z]{3,9}`).Draw(t, "check"), Label: prose().Draw(t, "label"), Asks: prose().Draw(t, "asks"), Word: rapid.SampledFrom(report.Signals()).Draw(t, "word")}
			q.Ended = rapid.SliceOfN(rapid.SampledFrom(endings), n, n).Draw(t, "ended")
			found, needed := report.Apart(unit.KindLength, 1, 2)
			q.Turns = []report.SweptTurn{{Below: report.SweptSide{SweptValue: s.Values[0], Ended: report.EndsNotMet}, Above: report.SweptSide{SweptValue: s.Values[1], Ended: report.EndsWithin},
				Limits: []report.SweptLimit{{About: prose().Draw(t, "about"), Found: found, Needed: needed, Source: &report.Source{Document: "675 IAC 15-2-74", Rule: "half of it", Provenance: "read"}}}}}
			s.Turning = append(s.Turning, q)
		}
		width := rapid.IntRange(40, 220).Draw(t, "width")
		var out bytes.Buffer
		if err := Sweep(&out, s, SweepOptions{Width: width}); err != nil {
			t.Fatal(err)
		}
		for one := range strings.SplitSeq(out.String(), "\n") {
			if text.Width(one) > min(max(width, text.Narrowest), text.Widest) || strings.HasSuffix(one, " ") {
				t.Fatalf("%d columns on a page of %d: %q", text.Width(one), width, one)
			}
		}
		plain := flat(out.String())
		if !strings.HasPrefix(plain, flat(strings.Join(s.Caution, " "))) || !strings.HasSuffix(plain, flat(report.KeepOff)) {
			t.Fatalf("the cautions and the result have to frame it:\n%s", out.String())
		}
		if strings.Contains(plain, flat(report.Edge)) != (len(s.Turning) > 0) {
			t.Fatalf("the warning goes with every turn:\n%s", out.String())
		}
		for _, q := range s.Turning {
			if !strings.Contains(out.String(), q.Check) || !strings.Contains(plain, "675 IAC 15-2-74") || !strings.Contains(plain, "2 m (78.74 in); half of it") {
				t.Fatalf("%s fell silent:\n%s", q.Check, out.String())
			}
		}
	})
}
