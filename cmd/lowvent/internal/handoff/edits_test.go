package handoff

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/cmd/lowvent/internal/render/html"
	"lowvent.example/cmd/lowvent/internal/render/pdf"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

// TestAnythingLeftOut takes values out of a demonstration: whatever is left out, the paper
// is whole, begins and ends with the words that it must, and tells each finding.
func TestAnythingLeftOut(t *testing.T) {
	loaded := 0
	var bases []demos.Demo
	for _, name := range []string{"sedge", "willow", "van", "bus"} {
		bases = append(bases, demos.One(t, name))
	}
	rapid.Check(t, func(t *rapid.T) {
		d := rapid.SampledFrom(bases).Draw(t, "demonstration")
		members := demos.Members(d.Layout.Root())
		var edits []source.Edit
		for _, at := range rapid.SliceOfNDistinct(rapid.SampledFrom(members), 1, 5, rapid.ID).Draw(t, "left out") {
			if !slices.ContainsFunc(edits, func(e source.Edit) bool { return within(at, e.Pointer) || within(e.Pointer, at) }) {
				edits = append(edits, leaveOut(d, at)...)
			}
		}
		m := edited(t, d, edits...)
		if m == nil {
			return // a key that must be there, or one that another refers to: nothing is judged
		}
		loaded++
		one := Paper(m)
		if err := one.Check(); err != nil {
			t.Fatal(err)
		}
		if err := Card(m).Check(); err != nil {
			t.Fatal(err)
		}
		texts := strings.Join(one.Texts(), "\n")
		for _, f := range m.Report.Findings {
			if !strings.Contains(texts, f.Check) || !strings.Contains(texts, f.Label) {
				t.Fatalf("%s falls silent", keyOf(&f))
			}
		}
	})
	if loaded < 20 {
		t.Errorf("only %d of the layouts load", loaded)
	}
}

// within tells whether a pointer leads to a thing or into it.
func within(pointer, of string) bool { return pointer == of || strings.HasPrefix(pointer, of+"/") }

// value is one that a file may state.
type value = interface {
	Known() bool
	Spot() *layout.Spot
}

// platesOf are the rows of the plates of a layout, by caption and row.
func platesOf(l *layout.Layout) map[string]value {
	all := map[string]value{}
	for _, a := range l.Appliances.All() {
		p := &a.Plate
		for row, v := range map[string]value{"kind": &a.Kind, "maker": &p.Maker, "model": &p.Model, "serial number": &p.Serial, "kind of gas": &p.Gas, "jets fitted for": &p.JetsFor,
			"inlet pressure": &p.Inlet, "least inlet pressure": &p.LeastInlet, "most inlet pressure": &p.MostInlet, "manifold pressure": &p.Manifold, "input": &p.Input,
			"input is gross or net": &p.Basis, "consumption": &p.Consumption, "listed for": &p.ListedFor, "approved for": &p.ApprovedFor, "flue": &a.Flue, "flame guard": &a.FlameGuard} {
			all[a.Label()+"|"+row] = v
		}
	}
	for _, r := range l.Regulators.All() {
		for row, v := range map[string]value{"standard": &r.Standard, "serial number": &r.Serial, "stages": &r.Stages, "gas": &r.Gas, "outlet": &r.Outlet, "capacity": &r.Capacity,
			"capacity by mass": &r.CapacityGas, "least inlet": &r.LeastInlet, "inlet rating": &r.InletRating, "relief": &r.Relief, "lock-up": &r.LockUp, "made": &r.Made} {
			all[r.Label()+"|"+row] = v
		}
	}
	for _, c := range l.Cylinders.All() {
		for row, v := range map[string]value{"role": &c.Role, "specification": &c.Specification, "water capacity": &c.WaterCapacity, "tare": &c.Tare, "weighed empty": &c.WeighedTare,
			"propane filled in": &c.Propane, "net mass on the sleeve": &c.SleeveMass, "requalified by": &c.RequalifiedBy, "last qualified": &c.LastQualified,
			"how it was qualified": &c.Qualification, "filled on": &c.FilledOn, "valve outlet": &c.ValveOutlet} {
			all[c.Label()+"|"+row] = v
		}
	}
	return all
}

// plateRows are the owner's copies in a paper, by caption and row.
func plateRows(t *testing.T, m *Matter) map[string]paper.Cell {
	t.Helper()
	all := map[string]paper.Cell{}
	s := plates(m)
	for _, table := range blocksOf[*paper.Table](&s) {
		for _, row := range table.Rows {
			if row[0].Text != "photo no." { // stands on no plate
				all[table.Caption+"|"+row[0].Text] = row[1]
			}
			if !row[3].Blank {
				t.Errorf("%s of %s has no blank for the plate itself", row[0].Text, table.Caption)
			}
		}
	}
	return all
}

// TestPlates: each value of a plate has its row, and says not known where the file states
// none, and only there.
func TestPlates(t *testing.T) {
	known, open := 0, 0
	every(t, func(t *testing.T, m *Matter, _ *paper.Document) {
		rows := plateRows(t, m)
		want := platesOf(m.Layout)
		if len(rows) != len(want) {
			t.Errorf("%d rows for %d values", len(rows), len(want))
		}
		for at, v := range want {
			switch got := rows[at].Text; {
			case got == "", (got == "not known") == v.Known():
				t.Errorf("%s is %q, known %t", at, got, v.Known())
			case v.Known():
				known++
			default:
				open++
			}
		}
	})
	if known < 100 || open < 50 {
		t.Errorf("%d values that are known and %d that are not were looked at", known, open)
	}
}

// TestPlateLeftOut takes each value of a plate out of the file: its row then says not known,
// and every other row what it said.
func TestPlateLeftOut(t *testing.T) {
	for _, name := range []string{"sorrel", "teal"} {
		d := demos.One(t, name)
		before := plateRows(t, matterOf(d))
		tried := 0
		for at, v := range platesOf(d.Layout) {
			if !v.Known() {
				continue
			}
			m := reloaded(d, leaveOut(d, v.Spot().Pointer())...)
			if m == nil {
				continue // a key that must be there, such as a kind
			}
			tried++
			for row, cell := range plateRows(t, m) {
				want := before[row].Text
				if row == at {
					want = "not known"
				}
				if cell.Text != want {
					t.Errorf("%s without %s: %s is %q, want %q", name, at, row, cell.Text, want)
				}
			}
		}
		if tried < 50 {
			t.Errorf("%s: only %d values were left out", name, tried)
		}
	}
}

// TestScheduleLeftOut: a value that a schedule shows is not known there once it is left
// out, and so is each figure that takes it.
func TestScheduleLeftOut(t *testing.T) {
	tests := []struct{ leave, section, row, column string }{
		{"/appliances/hob/plate/input", "loads", "appliance hob", "input"},
		{"/appliances/hob/in", "loads", "appliance hob", "in"},
		{"/regulators/*/lockUp", "loads", "regulator", "lock-up"},
		{"/regulators/*/testPoint", "loads", "regulator", "test point"},
		{"/lines/trunk/length", "pipes", "trunk", "length with fittings"},
		{"/lines/trunk/wall", "pipes", "trunk", "outside, wall"},
		{"/lines/trunk/length", "pipes", "trunk", "drop by friction"},
		{"/lines/trunk/length", "materials", "line trunk", "length"},
		{"/lines/trunk/visible", "hidden", "line trunk", "to be seen along its length"},
		{"/lines/trunk/standard", "materials", "line trunk", "standard"},
		{"/lockers/skirt/vents/*/lowerEdgeOverLowest", "ventilation", "locker skirt", "lower edge over the lowest point"},
		{"/lockers/skirt/vents/*/closable", "ventilation", "locker skirt", "can be shut"},
		{"/fixedVents/*/gross", "ventilation", "", "gross"},
		{"/changeovers/*/connects", "materials", "changeover", "size"},
		{"/tests/*/by", "tests", "test", "by, licence"},
		{"/tests/*/covers", "tests", "test", "covers"},
		{"/certificates/*/expires", "tests", "certificate", "on"},
		{"/appliances/hob/clearances/page", "manuals", "appliance hob", "page of the clearances"},
		{"/dwelling/identity", "first", "dwelling", ""},
		{"/surveyedBy/who", "first", "dwelling", ""},
		{"/gas/access", "first", "access, whom to call", ""},
	}
	d := demos.One(t, "sorrel")
	var edits []source.Edit
	left := map[string]bool{}
	for _, at := range demos.Members(d.Layout.Root()) {
		for _, tt := range tests {
			if matches(tt.leave, at) && !left[at] {
				left[at] = true
				edits = append(edits, leaveOut(d, at)...)
			}
		}
	}
	m := edited(t, d, edits...)
	if m == nil {
		t.Fatal("it does not load without them")
	}
	before, after := paperOf(d).paper, Paper(m)
	for _, tt := range tests {
		old, said := shown(sectionOf(t, before, tt.section), tt.row, tt.column), shown(sectionOf(t, after, tt.section), tt.row, tt.column)
		if !slices.ContainsFunc(said, func(s string) bool { return strings.Contains(s, "not known") }) || slices.Equal(old, said) {
			t.Errorf("without %s, %s of %s says %q, and said %q before", tt.leave, tt.column, tt.row, said, old)
		}
	}
}

// matches tells whether a pointer is one of a pattern, in which * is any name.
func matches(pattern, pointer string) bool {
	p, q := source.Split(pattern), source.Split(pointer)
	return len(p) == len(q) && !slices.ContainsFunc(slices.Collect(pairs(p, q)), func(each [2]string) bool { return each[0] != "*" && each[0] != each[1] })
}

func pairs(a, b []string) func(func([2]string) bool) {
	return func(yield func([2]string) bool) {
		for i := range a {
			if !yield([2]string{a[i], b[i]}) {
				return
			}
		}
	}
}

// shown is what a section says in the rows that begin so, under a title; or of a label.
func shown(s *paper.Section, row, column string) []string {
	if column == "" {
		return []string{pairsOf(s)[row].Value}
	}
	var all []string
	for _, table := range blocksOf[*paper.Table](s) {
		n := slices.IndexFunc(table.Columns, func(c paper.Column) bool { return c.Title == column })
		for _, r := range table.Rows {
			if n >= 0 && strings.HasPrefix(r[0].Text, row) {
				all = append(all, r[n].Text)
			}
		}
	}
	return all
}

// TestNothingIsNoNo: what is not known is never told as "no".
func TestNothingIsNoNo(t *testing.T) {
	for _, name := range []string{"van", "boat", "bus", "cabin"} {
		one := paperOf(demos.One(t, name))
		for _, line := range one.matter.Layout.Lines.All() {
			if !line.Visible.Known() {
				if got := shown(sectionOf(t, one.paper, "hidden"), line.Label(), "to be seen along its length"); !slices.Equal(got, []string{"not known"}) {
					t.Errorf("%s: %s is to be seen: %q", name, line.Label(), got)
				}
			}
		}
		for _, r := range one.matter.Layout.Regulators.All() {
			if !r.TestPoint.Known() {
				if got := shown(sectionOf(t, one.paper, "loads"), r.Label(), "test point"); !slices.Equal(got, []string{"not known"}) {
					t.Errorf("%s: %s has a test point: %q", name, r.Label(), got)
				}
			}
		}
	}
}

// TestNearlyNothing: a layout with nothing in it gives a whole paper, which says what is
// not listed and not known instead of showing empty tables.
func TestNearlyNothing(t *testing.T) {
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		d.Walk(func(s *paper.Section, b paper.Block) {
			switch b := b.(type) {
			case *paper.Table:
				if len(b.Rows) == 0 {
					t.Errorf("%s has an empty table %q", s.ID, b.Caption)
				}
			case *paper.List:
				if len(b.Items) == 0 {
					t.Errorf("%s has an empty list", s.ID)
				}
			}
		})
		for _, p := range d.Parts {
			for _, s := range p.Sections {
				if len(s.Blocks) == 0 {
					t.Errorf("%s is empty", s.ID)
				}
			}
		}
	})
	d := paperOf(demos.One(t, "bare")).paper
	for id, want := range map[string]string{
		"plan": "Nothing could be drawn to scale: the file states no positions", "plates": "The file lists no appliance, regulator or cylinder.", "loads": "The file lists no appliance.",
		"pipes": "The file lists no line.", "ventilation": "The file lists no vent of a locker.", "joints": "Each line has two ends at least: they are not known.", "schematic": "The file lists nothing that gas flows from or to.",
		"materials": "The file lists no line, regulator or alarm.", "manuals": "The file lists no appliance.", "hidden": "every listed line can be seen",
		"tests": "The file lists no test or certificate of an earlier visit.", "charts": "what it takes is not stated",
	} {
		if page := textsIn(*sectionOf(t, d, id)); !strings.Contains(page, want) {
			t.Errorf("%s says %q, want %q", id, page, want)
		}
	}
}

// hostile are texts that a page must take as they are, or show that it can't.
func hostile() []string {
	return []string{
		`<script>alert(1)</script>"'&<!-- -->]]>`, "a\x1b[31mred\x00\x07\u202eright to left\u200b", strings.Repeat("donaudampfschifffahrt", 400),
		strings.Repeat("wide 字 ", 300), "(\\) endobj stream \r\n%%EOF <</Type/Catalog>>", "\ufeff\ufffd\U0010ffff", strings.Repeat("\n", 50) + ".",
	}
}

// TestHostileTexts go through both forms without harm, wherever a file may have a text.
func TestHostileTexts(t *testing.T) {
	d := demos.One(t, "sedge")
	for i, text := range hostile() {
		t.Run(fmt.Sprint(i), func(t *testing.T) {
			m := edited(t, d, source.Edit{Pointer: "/title", Value: source.Quote(text)}, source.Edit{Pointer: "/note", Value: source.Quote(text)},
				source.Edit{Pointer: "/gas/access", Value: source.Quote(text)}, source.Edit{Pointer: "/gas/liveParts", Value: source.Quote(text)},
				source.Edit{Pointer: "/dwelling/identity", Value: source.Quote(text)}, source.Edit{Pointer: "/waivers/shelf/reason", Value: source.Quote(text)},
				source.Edit{Pointer: "/appliances/hob/plate/maker", Value: source.Quote(text)})
			if m == nil {
				t.Fatal("the layout does not load")
			}
			for _, doc := range []*paper.Document{Paper(m), Card(m)} {
				if err := doc.Check(); err != nil {
					t.Fatal(err)
				}
				var page strings.Builder
				if err := html.Write(&page, doc); err != nil {
					t.Fatal(err)
				}
				if strings.Contains(page.String(), "<script") || strings.ContainsAny(page.String(), "\x00\x07\x1b\u202e") {
					t.Error("markup or a control character stands in the page")
				}
				if err := pdf.Write(io.Discard, doc, pdf.A4); err != nil {
					t.Error(err)
				}
			}
		})
	}
}
