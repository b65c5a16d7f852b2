package handoff

import (
	"strings"

	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/schema/layout"
)

// wall is the card to hang up where everybody who sleeps there can read it. What it asks
// is common practice of the trade, no source; the words of the local authority go first.
func wall(m *Matter) paper.Part {
	return paper.Part{ID: "card", Title: "A card for the wall", Sections: []paper.Section{
		{ID: "card-smell", Title: "Smell of gas, or the gas alarm sounds", Blocks: []paper.Block{&paper.Box{Blocks: []paper.Block{&paper.List{Ordered: true, Items: []string{
			"Out, everybody, animals too, and away uphill and upwind. Gas lies low.",
			"Touch no switch and no phone inside. No flame. Don't start the engine.",
			"On the way, only if it takes no time: shut the main valve outside. " + valves(m.Layout),
			"Call the emergency number from outside, well away.",
			"Open doors or hatches only where you can do it from outside.",
			"Don't go back in, don't light anything again, and don't reset the alarm and stay. A licensed gas fitter finds the leak first.",
		}}, &paper.Pairs{Rows: []paper.Pair{{Label: "emergency number here", Blank: true}, {Label: "the fitter", Blank: true}}}}}}},
		{ID: "card-monoxide", Title: "The carbon monoxide alarm sounds, or headache and sickness that go outside", Blocks: []paper.Block{&paper.Box{Blocks: []paper.Block{&paper.List{Ordered: true, Items: []string{
			"Out, everybody, at once: wake those who sleep.",
			"Call the emergency number from outside and say carbon monoxide. Whoever feels ill is seen by a doctor.",
			"Don't reset the alarm and stay. Nothing is lit again before a licensed gas fitter has found the cause.",
		}}}}}},
		{ID: "card-valves", Title: "Where the valves are", Blocks: []paper.Block{orNone(valveTable(m.Layout), "The file lists no valve. Find the main valve and write its place here."), &paper.Lines{Label: "and", Count: 2}}},
		{ID: "card-daily", Title: "Before driving, refuelling and swapping", NewPage: true, Blocks: []paper.Block{
			&paper.Heading{Text: "Before driving, and before a ferry or tunnel"},
			&paper.List{Boxes: true, Items: []string{"cylinder valves shut", "every flame and pilot out, appliances that light themselves locked off", "cylinders upright and strapped, locker shut", "the tunnel's or ferry's own rules read"}},
			&paper.Heading{Text: "Before refuelling"},
			&paper.List{Boxes: true, Items: []string{"every flame and pilot out, appliances that light themselves locked off, also those outside the living space", "cylinder valves shut"}},
			&paper.Heading{Text: "When swapping a cylinder, where the owner may do it at all"},
			&paper.List{Boxes: true, Items: []string{"outside and away from flames, engines and switches", "both valves shut before a tail is taken off; the free tail plugged", "the washer looked at, and the date on the cylinder", "leak fluid on the joint once the valve is open: no bubbles", "a full or empty cylinder stays in the locker or in the open air, never inside"}},
			&paper.Para{Text: "In many places even this is a licensed person's work. Ask first.", Strong: true},
		}},
	}}
}

// valves says in one sentence where the gas is shut off from outside.
func valves(l *layout.Layout) string {
	var places []string
	for _, v := range shutoffs(l) {
		if reach, _ := v.valve.Reach.Get(); reach == layout.ReachOutside {
			places = append(places, v.label())
		}
	}
	if places == nil {
		return "Its place is not in the file: write it below."
	}
	return "It is: " + strings.Join(places, "; ") + "."
}

// shutoff is a valve with the line that it stands in.
type shutoff struct {
	line  *layout.Line
	valve *layout.Shutoff
}

// label names the valve by what the file notes of it, else by its kind and line.
func (s shutoff) label() string {
	what := word(&s.valve.Kind) + " " + s.valve.ID() + " of " + s.line.Label()
	if note, known := s.valve.Note.Get(); known {
		what += " (" + note + ")"
	}
	return what
}

// shutoffs are the valves that a hand can shut.
func shutoffs(l *layout.Layout) []shutoff {
	var all []shutoff
	for _, line := range l.Lines.All() {
		for _, v := range line.Shutoffs.All() {
			if kind, _ := v.Kind.Get(); kind == layout.ShutoffKindManualValve || kind == layout.ShutoffKindCylinderValve {
				all = append(all, shutoff{line, v})
			}
		}
	}
	return all
}

func valveTable(l *layout.Layout) *paper.Table {
	t := &paper.Table{Caption: "Valves that a hand can shut", Columns: columns([]string{"valve", "reached from", "where, in plain words"}, 4, 2, 5)}
	for _, v := range shutoffs(l) {
		t.Rows = append(t.Rows, []paper.Cell{strong(v.label()), text(word(&v.valve.Reach)), blank()})
	}
	return t
}
