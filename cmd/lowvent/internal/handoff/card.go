package handoff

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// wall is the card to hang up where everybody who sleeps there can read it: what to do at a
// smell or an alarm on its front, what to do on ordinary days on its back. What it asks is
// common practice of the trade, no source; the words of the local authority go first.
func wall(m *Matter) paper.Part {
	return paper.Part{ID: "card", Title: "A card for the wall", Sections: []paper.Section{
		{ID: "card-smell", Title: "Smell of gas, or the gas alarm sounds", Blocks: append(keepOff(m), &paper.Box{Blocks: []paper.Block{&paper.List{Ordered: true, Items: []string{
			"Out, everybody, animals too. Leave the door open behind you. Go uphill and upwind: gas lies low.",
			"Touch no switch and no phone inside, and no tap of an appliance. No flame. Don't start the engine.",
			valves(m),
			"Call the emergency number from outside, well away. Say where you are and that it is gas.",
			"More air only by what opens from outside, and only on the way out.",
			"Don't go back in, don't light anything again, don't reset the alarm and stay. A licensed gas fitter finds the leak first.",
		}}, &paper.Pairs{Rows: []paper.Pair{{Label: "emergency number here", Blank: true}, {Label: "where we are", Blank: true}, {Label: "the fitter", Blank: true}}}}})},
		{ID: "card-monoxide", Title: "The carbon monoxide alarm sounds, or headache and sickness that ease outdoors", Blocks: []paper.Block{&paper.Box{Blocks: []paper.Block{&paper.List{Ordered: true, Items: []string{
			"Out, everybody, at once: wake those who sleep, and count. Leave the door open behind you.",
			"Call the emergency number from outside and say carbon monoxide. Whoever feels ill is seen by a doctor.",
			"Don't go back in, don't reset the alarm and stay. Nothing is lit again before a licensed gas fitter has found the cause.",
		}}}}}},
		{ID: "card-valves", Title: "Where the valves are", NewPage: true, Blocks: []paper.Block{orNone(valveTable(m.Layout), "The file lists no valve. Find the main valve and write its place here.")}},
		{ID: "card-daily", Title: "Before driving, refuelling and swapping", Blocks: daily()},
	}}
}

// keepOff says that the card goes up when a fitter has signed, and what stands until then.
func keepOff(m *Matter) []paper.Block {
	blocks := []paper.Block{&paper.Para{Strong: true, Text: "Hang this up when a licensed gas fitter has tested and signed. Until then the gas is off and every cylinder valve shut."}}
	if n := m.Report.Counts.Danger; n > 0 {
		blocks = append(blocks, &paper.Para{Word: string(report.Danger), Text: fmt.Sprintf("%s at this word stood on %s.", of(n, "finding"), m.Run.On)})
	}
	return blocks
}

// valves names the valves that can be gone to, on the way out: those that the file places in
// the open air or in a locker that has no finding at DANGER, and that are reached from outside.
func valves(m *Matter) string {
	var near []string
	for _, v := range shutoffs(m.Layout) {
		if reach, _ := v.valve.Reach.Get(); reach == layout.ReachOutside && m.clearOf(v.line) {
			near = append(near, v.label())
		}
	}
	if near == nil {
		return "Leave the valves: this file names none that can be gone to without going near where gas may lie."
	}
	return "Only if it is on the way and takes no time, shut (clockwise): " + strings.Join(near, "; ") + ". Smell or hiss there: leave it."
}

// clearOf tells whether the line begins in the open air or in a locker, with no finding at
// DANGER that is open on the place or on the cylinder there.
func (m *Matter) clearOf(line *layout.Line) bool {
	from, _ := line.From.Get()
	in := layout.PlaceOf(m.Layout.Find(from))
	if in == nil {
		return false
	}
	place, known := in.Get()
	if !known || place != layout.OpenAir && place.Section() != "lockers" {
		return false
	}
	return !slices.ContainsFunc(m.findings(func(f *report.Finding) bool { return f.Counts(report.Danger) }), func(f *report.Finding) bool {
		return f.Subject == "/"+string(place) || f.Subject == "/"+string(from) || strings.HasPrefix(f.Subject, "/"+string(place)+"/")
	})
}

// daily is the lower part of the card's back.
func daily() []paper.Block {
	return []paper.Block{
		&paper.Heading{Text: "Before driving, and before a ferry or tunnel"},
		&paper.List{Boxes: true, Items: []string{"cylinder valves shut", "every flame and pilot out, appliances that light themselves locked off", "cylinders upright and strapped, locker shut", "the tunnel's or ferry's own rules read"}},
		&paper.Heading{Text: "Before refuelling"},
		&paper.List{Boxes: true, Items: []string{"every flame and pilot out, appliances that light themselves locked off, also those outside the living space", "cylinder valves shut"}},
		&paper.Heading{Text: "When swapping a cylinder, where the owner may do it at all"},
		&paper.List{Boxes: true, Items: []string{"outside and away from flames, engines and switches; all taps of appliances shut", "both valves shut before a tail is taken off; the free tail plugged", "the washer looked at, and the date on the cylinder", "leak fluid on the joint once the valve is open: no bubbles", "a full or empty cylinder stays in the locker or in the open air, never inside"}},
		&paper.Para{Text: "In many places even this is a licensed person's work. Ask first.", Strong: true},
	}
}

// shutoff is a valve with the line that it stands in.
type shutoff struct {
	line  *layout.Line
	valve *layout.Shutoff
}

// label names the valve by what it is on, and by what the file notes of it.
func (s shutoff) label() string {
	from, _ := s.line.From.Get()
	what := "the valve of cylinder " + from.ID()
	if kind, _ := s.valve.Kind.Get(); kind != layout.ShutoffKindCylinderValve || from.Section() != "cylinders" {
		what = "the valve " + s.valve.ID() + " in line " + s.line.ID()
	}
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
	t := &paper.Table{Caption: "Valves that a hand can shut", Small: true, Columns: columns([]string{"valve", "reached from", "where, in plain words"}, 5, 2, 4)}
	for _, v := range shutoffs(l) {
		t.Rows = append(t.Rows, []paper.Cell{strong(v.label()), text(strings.ReplaceAll(word(&v.valve.Reach), "-", " ")), blank()})
	}
	return t
}
