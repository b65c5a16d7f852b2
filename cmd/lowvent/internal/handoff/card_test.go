package handoff

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

// TestCardAlone: the card is the same part that the whole paper has, and nothing else.
func TestCardAlone(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		card := Card(m)
		if len(card.Parts) != 1 {
			t.Fatalf("the card has %d parts", len(card.Parts))
		}
		if diff := cmp.Diff(partOf(t, d, "card"), &card.Parts[0]); diff != "" {
			t.Error(diff)
		}
	})
}

// TestCardSays what is to be done when gas is smelled, in the order in which it is done.
// The words are common practice of the trade, no source.
func TestCardSays(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, _ *paper.Document) {
		smell := sectionOf(t, Card(m), "card-smell")
		items := blocksOf[*paper.List](smell)[0]
		if !items.Ordered || !strings.HasPrefix(items.Items[0], "Out, everybody") {
			t.Errorf("the first thing is %q", items.Items[0])
		}
		page := strings.Join(items.Items, "\n")
		at := -1
		for _, want := range []string{"Out, everybody", "no switch and no phone inside", "No flame", "Don't start the engine", "the valve",
			"from outside, well away", "only by what opens from outside", "Don't go back in", "don't light anything again", "don't reset the alarm and stay", "licensed gas fitter"} {
			next := strings.Index(page, want)
			if next < at || next < 0 {
				t.Errorf("%q is not told, or not in its place", want)
			}
			at = next
		}
		if first := pairsOf(smell); !first["emergency number here"].Blank || first["emergency number here"].Value != "" {
			t.Error("no blank for the emergency number: it differs by country, and none may be printed")
		}
	})
}

// TestCardMonoxide: monoxide has no smell, so its alarm is a page of its own.
func TestCardMonoxide(t *testing.T) {
	s := sectionOf(t, Card(matterOf(demos.One(t, "bare"))), "card-monoxide")
	page := textsIn(*s)
	for _, want := range []string{"headache", "Out, everybody, at once: wake those who sleep", "say carbon monoxide", "don't reset the alarm and stay", "Nothing is lit again"} {
		if !strings.Contains(page, want) {
			t.Errorf("%q is not told", want)
		}
	}
}

// TestCardDaily: what to shut before driving, refuelling and swapping, to be ticked off.
func TestCardDaily(t *testing.T) {
	s := sectionOf(t, Card(matterOf(demos.One(t, "sorrel"))), "card-daily")
	for _, list := range blocksOf[*paper.List](s) {
		if !list.Boxes || !slices.ContainsFunc(list.Items, func(item string) bool { return strings.Contains(item, "valve") }) {
			t.Errorf("a list without squares, or without a valve to shut: %q", list.Items)
		}
	}
	paras := blocksOf[*paper.Para](s)
	if last := paras[len(paras)-1]; !last.Strong || last.Text != "In many places even this is a licensed person's work. Ask first." {
		t.Errorf("it ends with %q", last.Text)
	}
}

// TestValves: each valve that a hand can shut is in the table, with a blank for its place.
func TestValves(t *testing.T) {
	valves := 0
	every(t, func(t *testing.T, m *Matter, _ *paper.Document) {
		rows := rowsOf(sectionOf(t, Card(m), "card-valves"))
		n := 0
		for _, v := range shutoffs(m.Layout) {
			row := rows[n]
			n++
			if row[0].Text != v.label() || row[1].Text != strings.ReplaceAll(word(&v.valve.Reach), "-", " ") || !row[2].Blank {
				t.Errorf("valve %s is told as %q, %q", v.valve.ID(), row[0].Text, row[1].Text)
			}
		}
		if n != len(rows) {
			t.Errorf("%d valves have %d rows", n, len(rows))
		}
		valves += n
	})
	if valves < 5 {
		t.Errorf("only %d valves in all demonstrations", valves)
	}
}

// TestNobodyIsSentIntoTheGas: where gas is smelled the card names a valve only if it is
// reached from outside and stands in the open air or in a locker, with nothing open at
// DANGER there; else it says to leave them.
func TestNobodyIsSentIntoTheGas(t *testing.T) {
	sent := 0
	every(t, func(t *testing.T, m *Matter, _ *paper.Document) {
		smell := textsIn(*sectionOf(t, Card(m), "card-smell"))
		named := false
		for _, v := range shutoffs(m.Layout) {
			reach, _ := v.valve.Reach.Get()
			may := reach == layout.ReachOutside && m.clearOf(v.line)
			named = named || may
			if strings.Contains(smell, v.label()) != may {
				t.Errorf("%s, reached from %q: named %t", v.label(), reach, !may)
			}
		}
		if !named && !strings.Contains(smell, "Leave the valves: this file names none") {
			t.Errorf("no valve can be gone to, and the card says %q", smell)
		}
		if named {
			sent++
		}
	})
	faulty := matterOf(demos.One(t, "sorrel-faulty"))
	if smell := textsIn(*sectionOf(t, Card(faulty), "card-smell")); sent == 0 || !strings.Contains(smell, "Leave the valves") {
		t.Errorf("a locker with gas that gets out of it, and a cylinder below the bed: %q", smell)
	}
}

// TestNoValve: where the file lists none, the card asks for its place.
func TestNoValve(t *testing.T) {
	s := sectionOf(t, Card(matterOf(demos.One(t, "bare"))), "card-valves")
	if got := textsIn(*s); !strings.Contains(got, "The file lists no valve. Find the main valve") || len(rowsOf(s)) > 0 {
		t.Errorf("it says %q", got)
	}
}

// TestReachNotKnown: a valve of which nobody says from where it is reached is not called
// one outside.
func TestReachNotKnown(t *testing.T) {
	d := demos.One(t, "sorrel")
	var edits []source.Edit
	for _, line := range d.Layout.Lines.All() {
		for _, v := range line.Shutoffs.All() {
			if v.Reach.Known() {
				edits = append(edits, leaveOut(d, v.Reach.Spot().Pointer())...)
			}
		}
	}
	m := reloaded(d, edits...)
	if m == nil || len(edits) == 0 {
		t.Fatalf("%d edits, and it does not load", len(edits))
	}
	card := Card(m)
	if smell := textsIn(*sectionOf(t, card, "card-smell")); !strings.Contains(smell, "Leave the valves: this file names none") {
		t.Errorf("it says %q", smell)
	}
	for _, row := range rowsOf(sectionOf(t, card, "card-valves")) {
		if row[1].Text != "not known" {
			t.Errorf("%s is reached from %q", row[0].Text, row[1].Text)
		}
	}
}
