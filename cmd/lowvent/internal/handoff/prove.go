package handoff

import (
	"fmt"
	"strings"

	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/schema/layout"
)

// prove lists what the owner states and only a fitter can show to be so.
func prove(m *Matter) paper.Section {
	t := &paper.Table{Caption: fmt.Sprintf("%s within limit rest on these", of(m.Report.Counts.ToProve, "answer")), Small: true,
		Columns: columns([]string{"of", "the file states", "on the ground of", "checks that rest on it", "shown how, date, initials"}, 2.4, 3, 1.5, 3, 3.4)}
	for _, c := range m.Report.Claims {
		t.Rows = append(t.Rows, []paper.Cell{text(c.Subject), text(c.States), text(c.Basis), text(strings.Join(c.Checks, ", ")), blank()})
	}
	return paper.Section{ID: "prove", Title: "Claims to prove", Blocks: []paper.Block{orNone(t, "No answer within limit rests on a claim that only a fitter can prove.")}}
}

// unseen lists what the owner says was not gone through, or can't be looked at.
func unseen(m *Matter) paper.Section {
	var items []string
	for _, list := range layout.InventoryList("").Choices() {
		if !m.Layout.SurveyedBy.Complete.Has(layout.InventoryList(list)) {
			items = append(items, fmt.Sprintf("the whole dwelling: %s are not stated to be all listed", list))
		}
	}
	survey := func(label string, s *layout.Survey) {
		var open []string
		for _, list := range layout.SurveyList("").Choices() {
			if !s.IsComplete(layout.SurveyList(list)) {
				open = append(open, list)
			}
		}
		if len(open) > 0 {
			items = append(items, label+": not stated to be all listed: "+strings.Join(open, ", "))
		}
	}
	survey("outside", &m.Layout.Outside.Surveyed)
	for _, s := range m.Layout.Spaces.All() {
		survey(s.Label(), &s.Surveyed)
	}
	for _, k := range m.Layout.Lockers.All() {
		survey(k.Label(), &k.Surveyed)
	}
	items = append(items, unseenJoints(m.Layout)...)
	if len(items) == 0 {
		return paper.Section{ID: "unseen", Title: "What the owner could not see", Blocks: []paper.Block{&paper.Para{Text: "The owner states that every list was gone through and every joint can be seen. Nobody has looked at it since."}}}
	}
	return paper.Section{ID: "unseen", Title: "What the owner could not see", Blocks: []paper.Block{&paper.List{Items: items, Boxes: true}}}
}

func unseenJoints(l *layout.Layout) []string {
	var items []string
	for _, line := range l.Lines.All() {
		for _, j := range line.Joints.All() {
			if seen, known := j.Visible.Get(); !known || !seen {
				items = append(items, fmt.Sprintf("joint %s of %s: to be seen: %s", j.ID(), line.Label(), yes(&j.Visible)))
			}
		}
	}
	return items
}

// hidden lists the runs behind linings, so that these are off before the visit.
func hidden(m *Matter) paper.Section {
	t := &paper.Table{Caption: "Linings to take off before the visit", Small: true,
		Columns: columns([]string{"line", "to be seen along its length", "behind", "plates against screws", "length", "off"}, 2, 2, 4, 2, 2.4, 1)}
	for _, line := range m.Layout.Lines.All() {
		if seen, known := line.Visible.Get(); known && seen {
			continue
		}
		t.Rows = append(t.Rows, []paper.Cell{strong(line.Label()), text(yes(&line.Visible)), text(word(&line.Lining)), text(yes(&line.StrikePlates)), text(amount(&line.Length)), blank()})
	}
	return paper.Section{ID: "hidden", Title: "Hidden runs", Blocks: []paper.Block{orNone(t, "The file states that every listed line can be seen along its length.")}}
}

// notes is a decision to be written for each open finding, and room for more.
func notes(m *Matter) paper.Section {
	t := &paper.Table{Caption: "A decision for each open finding", Columns: columns([]string{"finding", "of", "asked", "decision", "date, initials"}, 1.7, 2.2, 5.4, 3, 1.6), Small: true}
	before := ""
	for i, f := range m.numbered() {
		asked := f.Asks + outcome(f)
		if asked == before {
			asked = "the same"
		} else {
			before = asked
		}
		t.Rows = append(t.Rows, []paper.Cell{{Text: fmt.Sprint(i + 1), Word: string(f.Word)}, text(f.Label), text(asked), blank(), blank()})
	}
	return paper.Section{ID: "notes", Title: "Fitter's notes (not a statutory certificate)", NewPage: true, Blocks: []paper.Block{
		orNone(t, "No finding is open in what the file states."),
		&paper.Lines{Label: "What else was found, and what was agreed", Count: 8},
		&paper.Para{Text: "What has to be signed is signed on the certificate that the law asks for: this paper has no place for it."},
		&paper.Pairs{Rows: []paper.Pair{{Label: "fitter", Blank: true}, {Label: "licence, and what it covers", Blank: true}, {Label: "date", Blank: true}, {Label: "papers left with the owner", Blank: true}}},
	}}
}

// unsafe is the blank for what can't be left as it is.
func unsafe(*Matter) paper.Section {
	return paper.Section{ID: "unsafe", Title: "Unsafe situation", Blocks: []paper.Block{&paper.Box{Blocks: []paper.Block{
		&paper.List{Boxes: true, Items: []string{"immediately dangerous", "at risk", "notice left with the owner", "gas turned off", "gas capped"}},
		&paper.Pairs{Rows: []paper.Pair{{Label: "what", Blank: true}, {Label: "where it was capped or locked off", Blank: true}, {Label: "who was told, when", Blank: true}, {Label: "number of the notice", Blank: true}, {Label: "date, time, initials", Blank: true}, {Label: "seen by the owner", Blank: true}}},
	}}}}
}
