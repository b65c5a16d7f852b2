package handoff

import (
	"cmp"
	"slices"

	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/cmd/lowvent/internal/render/calendar"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/unit"
)

// Dates lists every date of the layout that falls due, the soonest first. A date that the
// file does not state is not known, and is not among them.
func Dates(l *layout.Layout) []calendar.Entry {
	var all []calendar.Entry
	for _, t := range endings(l) {
		if d, known := t.until.Get(); known {
			all = append(all, calendar.Entry{On: firstDay(unit.Date(d)), Written: d.String(), What: t.what, Subject: t.until.Spot().Pointer()})
		}
	}
	slices.SortStableFunc(all, func(a, b calendar.Entry) int {
		return cmp.Or(cmp.Compare(a.On.String(), b.On.String()), cmp.Compare(a.What, b.What))
	})
	return all
}

// ending is something that runs out on a date, whether or not the file states it.
type ending struct {
	what  string
	until *layout.Given[layout.Date]
}

func endings(l *layout.Layout) []ending {
	var all []ending
	for _, c := range l.Cylinders.All() {
		all = append(all, ending{c.Label() + " is to be requalified", &c.RequalifiedBy})
	}
	for _, a := range l.Alarms.All() {
		all = append(all, ending{a.Label() + " is to be replaced", &a.ReplaceBy})
	}
	for _, e := range l.Extinguishers.All() {
		all = append(all, ending{e.Label() + " is due for service", &e.DueBy})
	}
	for _, c := range l.Certificates.All() {
		all = append(all, ending{c.Label() + " expires", &c.Expires})
	}
	for _, w := range l.Waivers.All() {
		all = append(all, ending{w.Label() + " ends", &w.Until})
	}
	return all
}

// firstDay is the first day of a date that may be a month or a year: whoever is reminded
// early has lost nothing.
func firstDay(d unit.Date) unit.Date {
	if d.Month == 0 {
		d.Month = 1
	}
	if d.Day == 0 {
		d.Day = 1
	}
	return d
}

// due is the table of the dates.
func due(m *Matter) paper.Section {
	t := &paper.Table{Caption: "Reminders, and no proof that anything is in order until then", Columns: columns([]string{"date", "what", "state", "in the file"}, 2, 5, 2, 4)}
	for _, d := range Dates(m.Layout) {
		state := "to come"
		switch on := d.On.String(); {
		case on < m.Run.On:
			state = "OVERDUE"
		case on == m.Run.On:
			state = "today"
		}
		t.Rows = append(t.Rows, []paper.Cell{strong(d.Written), text(d.What), text(state), text(d.Subject)})
	}
	for _, each := range endings(m.Layout) {
		if !each.until.Known() {
			t.Rows = append(t.Rows, []paper.Cell{strong(notStated), text(each.what), text(notStated), text(each.until.Spot().Pointer())})
		}
	}
	return paper.Section{ID: "due", Title: "Dates that fall due", Blocks: []paper.Block{
		orNone(t, "The file states no date that falls due. Those of cylinders, hoses, regulators and alarms are then not known."),
		&paper.Para{Text: "Hoses and regulators age as well: what the code asks of them stands with their findings."},
	}}
}
