package handoff

import (
	"strings"

	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/schema/layout"
)

// tests is the sheet on which a fitter writes, in the order of the work. The order is
// common practice of the trade, no source; no value to be reached is printed, since
// those are the code's and the fitter's.
func tests(m *Matter) paper.Section {
	blocks := []paper.Block{
		&paper.Para{Text: "For the licensed fitter's use. Nobody else pressurises pipe, drills jets or opens a fitting.", Strong: true},
		instruments(), steps(m),
	}
	if blind := blindSpots(m); blind != nil {
		blocks = append(blocks, blind)
	}
	return paper.Section{ID: "tests", Title: "Test sheet, in the order of the work", NewPage: true, Blocks: append(blocks, earlier(m))}
}

func instruments() paper.Block {
	t := &paper.Table{Caption: "Instruments", Columns: columns([]string{"instrument", "serial number", "calibrated on", "due"}, 3, 3, 2, 2)}
	for _, each := range []string{"gauge, low pressure", "gauge, high pressure", "flue gas and carbon monoxide", "leak fluid or detector", "test gas for alarms"} {
		t.Rows = append(t.Rows, []paper.Cell{text(each), blank(), blank(), blank()})
	}
	return t
}

// steps is the table of tests, with a line for each thing that a test is done on.
func steps(m *Matter) paper.Block {
	l := m.Layout
	t := &paper.Table{Caption: "Tests", Columns: columns([]string{"test", "on", "pressure, time or reading", "found", "date, initials"}, 4, 3, 3, 3, 2)}
	add := func(test string, on ...string) {
		if len(on) == 0 {
			on = []string{"the whole installation"}
		}
		for _, each := range on {
			t.Rows = append(t.Rows, []paper.Cell{text(test), text(each), blank(), blank(), blank()})
		}
	}
	add("1. isolate: cylinder valves shut, sources of ignition out")
	add("2. look it all over against the drawings and the list of joints")
	add("3. strength of the pipework", labels(l.Regulators.All())...)
	add("4. tightness", labels(l.Regulators.All())...)
	add("5. let-by of the main valve and of each cylinder valve", labels(l.Cylinders.All())...)
	add("6. lock-up", labels(l.Regulators.All())...)
	add("7. running pressure, everything on", labels(l.Appliances.All())...)
	add("8. flame guard: seconds until the gas stops", labels(l.Appliances.All())...)
	add("9. flue: no spillage, fans on and doors shut", flued(l)...)
	add("10. carbon monoxide at the flue", flued(l)...)
	add("11. alarm sounds at test gas", labels(l.Alarms.All())...)
	add("12. locker sealed from the living space: smoke or water", labels(l.Lockers.All())...)
	add("13. vents clear from end to end, low and high", labels(l.Lockers.All())...)
	add("14. high side with leak fluid at cylinder pressure", labels(l.Cylinders.All())...)
	return t
}

// labels names things, the word for each being its own.
func labels[T layout.Item](all []T) []string {
	var names []string
	for _, each := range all {
		names = append(names, each.Label())
	}
	return names
}

// flued are the appliances and stoves that may have a flue: all but those that are stated
// to have none.
func flued(l *layout.Layout) []string {
	var names []string
	for _, a := range l.Appliances.All() {
		if kind, _ := a.Flue.Get(); kind != layout.FlueKindNone {
			names = append(names, a.Label())
		}
	}
	return append(names, labels(l.Stoves.All())...)
}

// blindSpots tells what leak a gauge would not show, which is no pass.
func blindSpots(m *Matter) paper.Block {
	var items []string
	for _, r := range m.Layout.Regulators.All() {
		at := r.Spot().Pointer()
		items = append(items, r.Label()+": volume under test "+m.figure("regulator.test-volume", at)+"; a leak that the gauge would not show "+m.figure("regulator.test-blind-spot", at)+
			"; the gauge moves by itself "+m.figure("regulator.test-drift", at))
	}
	if items == nil {
		return nil
	}
	return &paper.Box{Blocks: []paper.Block{&paper.Para{Text: "What a steady gauge does not show, by the figures. Leak fluid on every joint as well: no bubbles anywhere.", Strong: true}, &paper.List{Items: items}}}
}

// earlier is what the file says of tests and papers of an earlier visit.
func earlier(m *Matter) paper.Block {
	t := &paper.Table{Caption: "Tests and papers of earlier visits, as the owner copied them", Small: true,
		Columns: columns([]string{"paper", "kind", "on", "by, licence", "pressure, held, drop", "covers"}, 2, 2, 1.6, 3, 3, 3)}
	for _, e := range m.Layout.Tests.All() {
		t.Rows = append(t.Rows, []paper.Cell{text(e.Label()), text(word(&e.Kind)), text(date(&e.On)), text(each(word(&e.By), word(&e.Licence))),
			text(each(amount(&e.Pressure), amount(&e.Held), amount(&e.Drop))), text(words(&e.Covers))})
	}
	for _, c := range m.Layout.Certificates.All() {
		t.Rows = append(t.Rows, []paper.Cell{text(c.Label()), text("certificate, covers " + word(&c.Class)), text(date(&c.On) + ", expires " + date(&c.Expires)), text(each(word(&c.By), word(&c.Licence))), text(""),
			text("changed since: " + strings.ToLower(yes(&c.Changed)))})
	}
	return orNone(t, "The file lists no test or certificate of an earlier visit.")
}
