package handoff

import (
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/layout"
)

// tests is the sheet on which a fitter writes, in the order of the work. The order is
// common practice of the trade, no source; no value to be reached is printed, since
// those are the code's and the fitter's.
func tests(m *Matter) paper.Section {
	blocks := []paper.Block{
		&paper.Para{Text: "For the licensed fitter's use. Nobody else pressurises pipe, drills jets or opens a fitting.", Strong: true},
		&paper.Para{Text: "While a finding at DANGER stands on a cylinder, a locker, a regulator or a line, nothing after row 2 is done. Rows 12 to 14 may be done before gas is let in to the appliances, and a seal or a vent that fails there ends the day.", Strong: true},
		instruments(), asks(m), steps(m),
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
	t := &paper.Table{Caption: "Tests", Columns: columns([]string{"test", "on", "start", "end", "minutes", "found", "date, initials"}, 4, 2.6, 1.2, 1.2, 1.2, 2.6, 1.8)}
	add := func(test string, on ...string) {
		if len(on) == 0 {
			on = []string{"nothing of the kind is listed"}
		}
		for _, each := range on {
			t.Rows = append(t.Rows, []paper.Cell{text(test), text(each), blank(), blank(), blank(), blank(), blank()})
		}
	}
	add("1. isolate: cylinder valves shut, what joins in by another way taken off, sources of ignition out", "the whole installation")
	add("2. look it all over against the drawings and the list of joints", "the whole installation")
	add("3. strength of the pipework", labels(l.Regulators.All())...)
	add("4. tightness", labels(l.Regulators.All())...)
	add("5. let-by of the cylinder valve, and of the main valve", joined(l)...)
	add("6. lock-up, and what the regulator's relief does", labels(l.Regulators.All())...)
	add("7. running pressure, everything on", labels(l.Appliances.All())...)
	add("8. flame guard: seconds until the gas stops", labels(l.Appliances.All())...)
	add("9. flue: no spillage, fans on and doors shut", flued(l)...)
	add("10. carbon monoxide at the flue, and in the air of the room", labels(l.Appliances.All())...)
	add("11. alarm sounds: at test gas, or at what its maker names for smoke", labels(l.Alarms.All())...)
	add("12. locker sealed from each space: smoke or water", labels(l.Lockers.All())...)
	add("13. vents clear from end to end, low and high", labels(l.Lockers.All())...)
	add("14. high side with leak fluid at cylinder pressure, non-return and free tails too", joined(l)...)
	return t
}

// joined are the cylinders that a line leaves: the others have nothing to be tried on.
func joined(l *layout.Layout) []string {
	var names []string
	for _, c := range l.Cylinders.All() {
		if len(l.LeadsTo(c.Ref())) > 0 {
			names = append(names, c.Label())
		}
	}
	return names
}

// asks are the rules of the code on tests, as the findings cite them.
func asks(m *Matter) paper.Block {
	var items []string
	for _, f := range m.Report.Findings {
		for _, p := range f.Parts {
			if !strings.HasPrefix(f.Check, "test.") || p.Source == nil || p.Source.Rule == "" {
				continue
			}
			if said := p.Source.Rule + " (" + saying.Cite(p.Source) + ")"; !slices.Contains(items, said) {
				items = append(items, said)
			}
		}
	}
	if items == nil {
		return &paper.Para{Text: "The code that was judged by says nothing on tests that was read."}
	}
	return &paper.Box{Blocks: []paper.Block{&paper.Para{Text: "What the code that was judged by asks of tests; the fitter's own code and the makers' papers go first.", Strong: true}, &paper.List{Items: items}}}
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
		items = append(items, r.Label()+": volume under test "+m.figure("regulator.test-volume", at)+"; in ten minutes a gauge of 0.5 mbar does not show a leak of "+m.figure("regulator.test-blind-spot", at)+
			"; each kelvin (1.8 degF) by which the air in the pipe warms or cools moves it by "+m.figure("regulator.test-drift", at)+", and warming hides a larger leak")
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
