package worksheet

import (
	"bytes"
	"context"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/ask"
	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/gas"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/vent"
)

// opened is the page of what a layout leaves open, read.
func opened(t tester, d demos.Demo) *element {
	t.Helper()
	text, err := Open(d.Layout.Root().File().Data, d.Report, demos.On().String())
	if err != nil {
		t.Fatal(err)
	}
	return parsed(t, d.Name, text)
}

// edited is a demonstration with edits, judged anew; nil where it does not load.
func edited(t tester, d demos.Demo, edits ...source.Edit) *demos.Demo {
	t.Helper()
	l := reloaded(d, edits...)
	if l == nil {
		return nil
	}
	return &demos.Demo{Name: d.Name, Layout: l, Report: judged(t, l)}
}

// reloaded is the layout of a demonstration with edits; nil where it does not load.
func reloaded(d demos.Demo, edits ...source.Edit) *layout.Layout {
	file, err := source.Apply(d.Layout.Root().File(), d.Layout.Root(), edits)
	if err != nil {
		return nil
	}
	l, faults := layout.Load(file)
	if faults != nil {
		return nil
	}
	return l
}

// judged is the report of a layout, without figures and workings, which take time.
func judged(t tester, l *layout.Layout) *report.FileReport {
	t.Helper()
	id, _ := l.Where.Code.Get()
	codes, err := code.Use(id)
	if err != nil {
		t.Fatal(err)
	}
	set := check.Set{Checks: check.Join(gas.Checks(), vent.Checks()).Checks}
	r, err := check.Report(context.Background(), set, l, codes, check.Options{On: demos.On(), Workers: 1}, report.Warning)
	if err != nil {
		t.Fatal(err)
	}
	return &r
}

// blanks gives the place in the file of each blank of a page, with the text of its row.
func blanks(t tester, root *element) map[string]string {
	t.Helper()
	found := map[string]string{}
	for _, tr := range root.named("tr") {
		if !strings.Contains(tr.Text, "In the file: ") {
			continue
		}
		var pointer string
		for _, span := range tr.named("span") {
			if at, is := strings.CutPrefix(span.Text, "In the file: "); is {
				pointer = at
			}
		}
		if _, twice := found[pointer]; twice {
			t.Errorf("two blanks for %s", pointer)
		}
		found[pointer] = tr.Text
	}
	return found
}

// missing gives what the questions of a report wait for, each with the checks that do.
func missing(r *report.FileReport) (values, surveys map[string][]string) {
	values, surveys = map[string][]string{}, map[string][]string{}
	for _, f := range r.Findings {
		for _, part := range f.Parts {
			for _, m := range part.Missing {
				into := values
				if strings.HasSuffix(m.Place.Pointer, "/complete") {
					into = surveys
				}
				into[m.Place.Pointer] = append(into[m.Place.Pointer], f.Check)
			}
		}
	}
	return values, surveys
}

// holds tells that a page has a blank for each thing that a question waits for, once, and
// no other; and a box for the lists of each place that is not complete, and of no other.
func holds(t tester, d demos.Demo) (open int) {
	t.Helper()
	root := opened(t, d)
	values, surveys := missing(d.Report)
	got := blanks(t, root)
	for pointer, checks := range values {
		row, there := got[pointer]
		if !there {
			t.Errorf("%s: no blank for %s", d.Name, pointer)
		}
		for _, each := range checks {
			if !strings.Contains(row, each) {
				t.Errorf("%s: the blank for %s does not tell that %s waits", d.Name, pointer, each)
			}
		}
	}
	for pointer := range got {
		if values[pointer] == nil {
			t.Errorf("%s: a blank for %s, for which no question waits", d.Name, pointer)
		}
	}
	places := 0
	for _, list := range root.named("ul") {
		if list.attr("class") == "ticks" {
			places++
		}
	}
	if places != len(surveys) {
		t.Errorf("%s: boxes for %d places, want %d: %v", d.Name, places, len(surveys), surveys)
	}
	return len(values) + len(surveys)
}

func TestABlankForEachThingThatAQuestionWaitsFor(t *testing.T) {
	open := 0
	for _, d := range demos.All(t) {
		open += holds(t, d)
	}
	if open < 400 {
		t.Errorf("the demonstrations leave only %d things open", open)
	}
}

// TestWhatIsLeftOutIsAskedForAgain takes values out of a layout that leaves nothing open.
func TestWhatIsLeftOutIsAskedForAgain(t *testing.T) {
	willow, asked := demos.One(t, "willow"), 0
	members := slices.DeleteFunc(demos.Members(willow.Layout.Root()), func(at string) bool {
		return reloaded(willow, source.Edit{Pointer: at, Delete: true}) == nil || strings.Contains(at, "/note") || strings.Contains(at, "/evidence")
	})
	rapid.Check(t, func(t *rapid.T) {
		var edits []source.Edit
		for _, at := range rapid.SliceOfNDistinct(rapid.SampledFrom(members), 1, 4, rapid.ID).Draw(t, "left out") {
			if !slices.ContainsFunc(edits, func(e source.Edit) bool {
				return strings.HasPrefix(e.Pointer+"/", at+"/") || strings.HasPrefix(at+"/", e.Pointer+"/")
			}) {
				edits = append(edits, source.Edit{Pointer: at, Delete: true})
			}
		}
		d := edited(t, willow, edits...)
		if d == nil {
			return // a key that must be there, or one that another refers to
		}
		asked += holds(t, *d)
	})
	if asked < 25 {
		t.Errorf("only %d things were asked for", asked)
	}
}

// TestAWalkOfWhatIsOpen: papers, then place by place and list by list, and at last round
// the outside; things as the file has them, and their keys as the contract has them.
func TestAWalkOfWhatIsOpen(t *testing.T) {
	root := opened(t, demos.One(t, "van"))
	var titles []string
	for _, h2 := range root.named("h2") {
		if _, title, is := strings.Cut(h2.Text, "  "); is {
			titles = append(titles, title)
		}
	}
	want := []string{"The dwelling and its papers", "Space cabin", "Space cab", "Ignition sources", "Openings", "Combustibles", "Stored goods", "Fans", "Fixed vents",
		"Locker gas", "Cylinders", "Changeovers", "Regulators", "Junctions", "Appliances", "Stoves", "Exhausts", "Flues", "Open ends", "Outdoor outlets", "Fill points",
		"Lines", "Alarms", "Extinguishers", "Signs", "Certificates", "Round the outside", "The whole dwelling"}
	if !slices.Equal(titles, want) {
		t.Errorf("the sheets are %q, want %q", titles, want)
	}
	var order []string
	for _, span := range root.named("span") {
		if pointer, is := strings.CutPrefix(span.Text, "In the file: "); is {
			order = append(order, pointer)
		}
	}
	for _, pair := range [][2]string{{"/lockers/gas/vents/low/gross", "/lockers/gas/vents/high/closable"}, {"/lockers/gas/vents/low/wall", "/lockers/gas/vents/low/gross"},
		{"/alarms/gas/at", "/alarms/co/liveWhenIsolated"}, {"/lines/tail/kind", "/lines/trunk/kind"}, {"/dwelling/frontAxle", "/cylinders/a/at"}} {
		first, second := slices.Index(order, pair[0]), slices.Index(order, pair[1])
		if first < 0 || second < first {
			t.Errorf("%s is asked as number %d, %s as number %d", pair[0], first, pair[1], second)
		}
	}
}

// TestHowAnOpenThingIsAsked: in words for paper, with its unit and its choices.
func TestHowAnOpenThingIsAsked(t *testing.T) {
	rows := blanks(t, opened(t, demos.One(t, "van")))
	tests := map[string][]string{
		"/lockers/gas/vents/low/gross":          {"vent low, gross Measure the whole hole without its cover", "cm2", "in2", "Waits: DANGER locker.low-vent"},
		"/lockers/gas/vents/low/closable":       {"Yes when it has a flap", "yes", "no", "tick one"},
		"/lockers/gas/vents/low/cover/kind":     {"vent low, cover, kind", "none", "mesh", "louvre"},
		"/lockers/gas/sealedFrom/cabin/seal":    {"seal from cabin, seal", "gas-tight"},
		"/appliances/hob/burners/left/input":    {"burner left, input Read from the plate", "BTU/h", "kW"},
		"/ignitionSources":                      {"ignition sources List everything that can spark", `Writing "none" states`, "names, or none", "DANGER ignition.near-gas"},
		"/climate/coldest":                      {"coldest Look up the lowest air temperature", "WARNING supply.cold-heating"},
		"/alarms/gas/at":                        {"at Measure x, y and z", "x, y, z: mm, cm, m, in, ft"},
		"/alarms/co/replaceBy":                  {"replace by", "year-month-day"},
		"/lines/trunk/fittings/elbow90":         {"fittings, elbow90 Count the elbows", "count"},
		"/cylinders/a/damage":                   {"tick all that fit", "rust"},
		"/lockers/gas/door/opensTo":             {"door, opens to", "name"},
		"/cylinders/a/specification":            {"specification Copy the mark", "words"},
		"/appliances/hob/plate/leastInlet":      {"plate, least inlet", "mbar", "inH2O"},
		"/lockers/gas/vents/low/endsIn/kind":    {"vent low, ends in, kind", "open-air", "closed-underfloor"},
		"/dwelling/gasWhileDriving":             {"gas while driving Yes when any gas appliance", "WARNING transit.shutoff"},
		"/lockers/gas/penetrations/trunk/gland": {"penetration trunk, gland", "bulkhead"},
	}
	for pointer, parts := range tests {
		for _, part := range parts {
			if !strings.Contains(rows[pointer], part) {
				t.Errorf("%s: the row lacks %q: %q", pointer, part, rows[pointer])
			}
		}
	}
	if row := rows["/lockers/gas/vents/low/gross"]; strings.Contains(row, "such as") {
		t.Errorf("a row with an example of a figure, which could be read as one to aim at: %q", row)
	}
	if row := rows["/cylinders/a/role"]; strings.Index(row, "DANGER") > strings.Index(row, "WARNING") || strings.Index(row, "WARNING") > strings.Index(row, "CAUTION") {
		t.Errorf("what matters most is not told first: %q", row)
	}
}

// TestOnlyWhatIsNotCompleteHasABox.
func TestOnlyWhatIsNotCompleteHasABox(t *testing.T) {
	sorrel := demos.One(t, "sorrel")
	at, kept := "/lockers/"+sorrel.Layout.Lockers.All()[0].ID()+"/surveyed/complete", `["openings", "fans"]`
	d := edited(t, sorrel, source.Edit{Pointer: at, Value: kept})
	if d == nil {
		t.Fatalf("%s with %s does not load", at, kept)
	}
	root := opened(t, *d)
	var words []string
	for _, list := range root.named("ul") {
		if list.attr("class") == "ticks" {
			for _, strong := range list.named("strong") {
				words = append(words, strong.Text)
			}
		}
	}
	if want := []string{"ignition sources", "penetrations", "combustibles", "contents"}; !slices.Equal(words, want) {
		t.Errorf("boxes for %q, want %q", words, want)
	}
	if headings := root.named("h2"); len(headings) != 3 || !strings.Contains(headings[2].Text, "Locker") {
		t.Errorf("the boxes stand below %q", headings[len(headings)-1].Text)
	}
}

// TestNothingOpenIsNoPraise: it says so, and that nothing was inspected.
func TestNothingOpenIsNoPraise(t *testing.T) {
	d := demos.One(t, "sorrel")
	root := opened(t, d)
	if len(blanks(t, root)) > 0 || len(root.named("table")) > 0 || strings.Contains(root.Text, "The sheets") {
		t.Errorf("blanks where nothing is open: %s", root.Text)
	}
	for _, part := range []string{"No question waits for something that the file does not state.", "What it states is not inspected.", "a borrowed yardstick"} {
		if !strings.Contains(root.Text, part) {
			t.Errorf("the page lacks %q", part)
		}
	}
}

// TestAQuestionThatNamesNothingIsAskedItself.
func TestAQuestionThatNamesNothingIsAskedItself(t *testing.T) {
	r := &report.FileReport{File: "x.json", Title: "<X> & Y", Findings: []report.Finding{
		{Check: "locker.one", Label: "locker gas", Subject: "/lockers/gas", Asks: "Is it <one>?", Word: report.Danger, Outcome: report.NotKnown},
		{Check: "locker.two", Label: "locker gas", Subject: "/lockers/gas", Asks: "Is it two?", Word: report.Notice, Outcome: report.NotKnown},
		{Check: "dwelling.three", Label: "the dwelling", Subject: "", Asks: "Is it three?", Word: report.Caution, Outcome: report.NotKnown},
		{Check: "locker.met", Label: "locker gas", Subject: "/lockers/gas", Asks: "Is it met?", Word: report.Danger, Outcome: report.NotMet},
	}}
	text, err := Open([]byte(`{ "format": "lowvent-layout/1", "lockers": { "gas": {} } }`), r, "2026-11-25")
	if err != nil {
		t.Fatal(err)
	}
	root := parsed(t, "x", text)
	var rows []string
	for _, tr := range root.named("tr") {
		if cells := tr.named("td"); len(cells) == 5 {
			rows = append(rows, cells[0].Text)
		}
	}
	want := []string{"the dwelling Is it three?Waits: CAUTION dwelling.three", "locker gas Is it <one>?Waits: DANGER locker.oneIn the file: /lockers/gas", "locker gas Is it two?Waits: NOTICE locker.twoIn the file: /lockers/gas"}
	if !slices.Equal(rows, want) {
		t.Errorf("rows %q, want %q", rows, want)
	}
	if h1 := root.named("h1"); h1[0].Text != "Still to be measured: <X> & Y" || !strings.Contains(root.Text, "Questions wait for 3 things that the file does not state.") {
		t.Errorf("the head: %s", root.Text)
	}
}

// TestTheOpenPageReadsWell: as the blank one does.
func TestTheOpenPageReadsWell(t *testing.T) {
	for _, d := range demos.All(t) {
		root := opened(t, d)
		if root.attr("lang") != "en" || len(root.named("h1")) != 1 || len(root.named("main")) != 1 {
			t.Errorf("%s: language, main part or first heading is lacking", d.Name)
		}
		header := root.named("header")[0].Text
		for _, each := range report.Cautions() {
			if !strings.Contains(header, each) {
				t.Errorf("%s: the head lacks %q", d.Name, each)
			}
		}
		if strings.TrimSpace(root.named("footer")[0].Text) != report.KeepOff {
			t.Errorf("%s: the foot is %q", d.Name, root.named("footer")[0].Text)
		}
		ids := map[string]bool{}
		root.all(func(e *element) { ids[e.attr("id")] = true })
		for _, a := range root.named("a") {
			if !ids[strings.TrimPrefix(a.attr("href"), "#")] {
				t.Errorf("%s: a link to nowhere: %s", d.Name, a.attr("href"))
			}
		}
		for _, table := range root.named("table") {
			if len(table.named("caption")) != 1 || len(table.named("tbody")) != 1 || len(table.named("tbody")[0].Children) == 0 {
				t.Errorf("%s: a table without a caption or a row: %s", d.Name, table.Text)
			}
			if short := table.attr("class") == "short"; short != (len(table.named("tbody")[0].Children) <= fewRows) {
				t.Errorf("%s: a table of %d rows is %q", d.Name, len(table.named("tbody")[0].Children), table.attr("class"))
			}
		}
	}
}

func TestTheOpenPageOfWhatIsNoLayoutIsRefused(t *testing.T) {
	for _, text := range []string{"", "{", "[1,]"} {
		if got, err := Open([]byte(text), &report.FileReport{}, "2026-11-25"); err == nil || got != nil {
			t.Errorf("%q made %d bytes and %v", text, len(got), err)
		}
	}
}

// TestTheOrderOfKeysChangesNothing: what is open is asked in the contract's order.
func TestTheOrderOfKeysChangesNothing(t *testing.T) {
	d := demos.One(t, "sedge")
	one, err := Open(d.Layout.Root().File().Data, d.Report, "2026-11-25")
	if err != nil {
		t.Fatal(err)
	}
	turned := *d.Report
	turned.Findings = slices.Clone(d.Report.Findings)
	slices.Reverse(turned.Findings)
	other, err := Open(d.Layout.Root().File().Data, &turned, "2026-11-25")
	if err != nil {
		t.Fatal(err)
	}
	places := func(text []byte) (all []string) {
		for _, span := range parsed(t, "sedge", text).named("span") {
			if strings.HasPrefix(span.Text, "In the file: ") {
				all = append(all, span.Text)
			}
		}
		return all
	}
	if a, b := places(one), places(other); len(a) < 50 || !slices.Equal(a, b) {
		t.Errorf("%d and %d places, in another order", len(a), len(b))
	}
	if again, _ := Open(d.Layout.Root().File().Data, d.Report, "2026-11-25"); !bytes.Equal(one, again) {
		t.Error("twice the same is not the same")
	}
}

// TestEveryPartHasAPlaceInTheWalk, once.
func TestEveryPartHasAPlaceInTheWalk(t *testing.T) {
	got := sections()
	for _, key := range layout.Keys("") {
		n := 0
		for _, each := range got {
			if each == key.Name {
				n++
			}
		}
		if want := map[bool]int{true: 0, false: 1}[slices.Contains([]string{"$schema", "format", "waivers"}, key.Name)]; n != want {
			t.Errorf("%s stands %d times in the order of the sheets, want %d", key.Name, n, want)
		}
	}
	if last := got[len(got)-2:]; !slices.Equal(last, []string{"outside", "surveyedBy"}) || got[0] != ask.Parts()[0].Name {
		t.Errorf("it begins with %s and ends with %v", got[0], last)
	}
}
