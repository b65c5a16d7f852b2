package ask

import (
	"context"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/cmd/lowvent/internal/starter"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// everyAsked visits each key that can be asked.
func everyAsked(n Needs, visit func(Asked)) {
	var walk func(string)
	walk = func(template string) {
		for _, k := range n.Keys(template) {
			visit(k)
			if k.Form == layout.FormThings {
				walk(k.Template + "/*")
			}
		}
	}
	walk("")
}

// TestEveryReadKeyIsAsked holds that what a check of DANGER or WARNING waits for can be
// answered, and is among the keys that come first.
func TestEveryReadKeyIsAsked(t *testing.T) {
	needs := NeedsOf(allChecks())
	first := map[string]bool{}
	everyAsked(needs, func(k Asked) { first[k.Template] = k.First })
	for template, waiting := range needs {
		if grave(waiting) && !first[template] && !slices.Contains(never, template) {
			t.Errorf("%s is not asked first, and %s waits for it", template, waiting[0].Check)
		}
	}
	if first["/appliances/*/plate/serial"] || first["/people/briefed"] {
		t.Error("what no check of DANGER or WARNING reads comes first")
	}
}

func TestTheTablesNameKeysOfTheContract(t *testing.T) {
	known := map[string]Asked{}
	everyAsked(Needs{}, func(k Asked) { known[k.Template] = k })
	for _, template := range always {
		if known[template].Name == "" {
			t.Errorf("always: %s is no key", template)
		}
	}
	for _, template := range never {
		if Describe(template) == "" {
			t.Errorf("never: %s is no key", template)
		}
	}
	for template, c := range fitting {
		if known[template].Name == "" {
			t.Errorf("fitting: %s is no key", template)
		}
		within, _ := parent(template)
		at := c.key
		if !strings.HasPrefix(at, "/") {
			for strings.HasPrefix(at, "../") {
				at = strings.TrimPrefix(at, "../")
				within, _ = parent(within)
			}
			at = within + "/" + at
		}
		words := known[at].Words
		if known[at].Form == layout.FormYesNo {
			words = []string{"yes", "no"}
		}
		for _, word := range c.words {
			if !slices.Contains(words, word) {
				t.Errorf("fitting: %s waits for %s to be %q, which it never is", template, at, word)
			}
		}
	}
	for _, name := range order {
		if keyNamed("", name).Name == "" {
			t.Errorf("order: %s is no key", name)
		}
	}
}

// TestEveryPartHasItsTurn holds that whatever the contract lists is asked, somewhere.
func TestEveryPartHasItsTurn(t *testing.T) {
	var asked []string
	for _, part := range Parts() {
		asked = append(asked, part.Name)
	}
	asked = append(asked, Walked()...)
	for _, key := range layout.Keys("") {
		if want := !slices.Contains(never, "/"+key.Name); slices.Contains(asked, key.Name) != want {
			t.Errorf("%s is asked: %t", key.Name, !want)
		}
	}
	slices.Sort(asked)
	if len(slices.Compact(slices.Clone(asked))) != len(asked) {
		t.Errorf("something is asked twice: %s", asked)
	}
}

var exampleFigure = regexp.MustCompile(`such as "?[0-9-]`)

// TestNoFigureReadsAsAdvice holds that beside no question for a figure stands one that
// could be copied.
func TestNoFigureReadsAsAdvice(t *testing.T) {
	stripped := 0
	everyAsked(Needs{}, func(k Asked) {
		how := HowTo(k)
		if !strings.HasSuffix(how, ".") || strings.Contains(how, "  ") || strings.Contains(how, " .") {
			t.Errorf("%s reads badly: %s", k.Template, how)
		}
		if slices.Contains([]layout.Form{layout.FormQuantity, layout.FormCount, layout.FormDate, layout.FormClock}, k.Form) && exampleFigure.MatchString(how) {
			t.Errorf("%s shows a figure: %s", k.Template, how)
		}
		if how != Describe(k.Template) && k.Form == layout.FormQuantity {
			stripped++
		}
	})
	if stripped < 40 {
		t.Errorf("only %d examples were left out", stripped)
	}
	_, talk := told(t, options("van"), nil)
	if found := exampleFigure.FindAllString(unwrapped(talk), -1); len(found) > 0 {
		t.Errorf("the talk shows figures: %q", found)
	}
}

func TestEveryQuestionSaysHow(t *testing.T) {
	everyAsked(Needs{}, func(k Asked) {
		if Unit(k) == "" || Label("", k) == "" {
			t.Errorf("%s has no unit or label", k.Template)
		}
		if text := k.Form == layout.FormText || k.Form == layout.FormThings || k.Form == layout.FormRef || k.Form == layout.FormRefs; text != (form(k) == nil) {
			t.Errorf("%s: how its answer is written: %q", k.Template, form(k))
		}
	})
	if got := Title("/lockers/gas/vents/low/cover/open"); got != "locker gas, vent low, cover, open" {
		t.Errorf("a title is %q", got)
	}
}

// TestTheFirstLayoutsAreWrittenAsTheyRead holds that writing a layout changes nothing in
// it but white space and the order of keys.
func TestTheFirstLayoutsAreWrittenAsTheyRead(t *testing.T) {
	for _, scene := range starter.Scenes() {
		root, fault := source.Parse(source.NewFile(scene, starter.Layout(scene)), source.DefaultLimits())
		if fault != nil {
			t.Fatal(fault)
		}
		text := write(treeOf(root).(*object))
		again, fault := source.Parse(source.NewFile(scene, text), source.DefaultLimits())
		if fault != nil {
			t.Fatalf("%s\n%s", fault.Error(), text)
		}
		if again.Compact() != root.Compact() {
			t.Errorf("%s: the layout says something else after writing", scene)
		}
		if strings.Contains(string(text), "\t") || strings.Contains(string(text), " \n") || !strings.HasSuffix(string(text), "}\n") || !strings.Contains(string(text), "\n\n  \"lockers\": {\n") {
			t.Errorf("%s is not tidy:\n%s", scene, text)
		}
	}
}

func TestWriting(t *testing.T) {
	root := &object{}
	root.set("/cylinders/b/upright", true)
	root.set("/cylinders/b/in", "lockers/gas")
	root.set("/cylinders/a/restraint/points", 2)
	root.set("/fans", &object{})
	root.set("/title", "x")
	root.set("/format", layout.Format)
	root.set("/note", "n")
	root.set("/lines/t/route", list{list{"0 m", "0 m", "0 m"}})
	want := `{
  "format": "lowvent-layout/1",
  "title": "x",
  "note": "n",

  "cylinders": {
    "b": { "in": "lockers/gas", "upright": true },
    "a": { "restraint": { "points": 2 } }
  },

  "lines": {
    "t": { "route": [["0 m", "0 m", "0 m"]] }
  },

  "fans": {}
}
`
	if diff := cmp.Diff(want, string(write(root))); diff != "" {
		t.Error(diff)
	}
}

// american are answers in inches, pounds and their like; see twin for the same in SI.
var american = map[string]string{
	"title": "Plover, an invented van", "where, country": "US", "where, region": "IN", "where, code": "us-mobile-structure",
	"dwelling, kind": "road-vehicle", "dwelling, sleeps": "2", "gas, connected": "no", "gas, kind": "propane",
	"space cabin, use": "sleeping", "space cabin, box, from": "0 in, 0 in, 0 in", "space cabin, box, to": "120 in, 70 in, 72 in",
	"space cabin, ignition sources": "socket", "ignition source socket, at": "104 in, 2 in, 1 in", "ignition source socket, kind": "socket",
	"complete? ignition sources in or of space cabin": "yes",
	"locker gas, box, from":                           "100 in, 0 in, 0 in", "locker gas, box, to": "118 in, 16 in, 26 in", "locker gas, door, opens to": "open-air", "locker gas, door, sill": "2 in",
	"locker gas, vent low, level": "low", "locker gas, vent low, at": "109 in, 0 in, 1 in", "locker gas, vent low, gross": "24 in2 ± 1 in2", "locker gas, vent low, cover, open": "70 %",
	"locker gas, vent low, lower edge over lowest": "1/2 in", "cylinder a, in": "gas", "cylinder a, water capacity": "47.6 lb", "cylinder a, propane": "20 lb", "cylinder a, role": "in-service", "cylinder a, upright": "no", "appliance hob, flame guard": "none",
	"appliance hob, kind": "cooktop", "appliance hob, in": "cabin", "appliance hob, flue": "none", "appliance hob, clearances, above": "30 in",
}

var measured = regexp.MustCompile(`([0-9]+(?:\.[0-9]+)?|1/2) (in2|in|lb)\b`)

// twin turns inches and pounds into millimetres and kilograms, exactly.
func twin(answer string) string {
	return measured.ReplaceAllStringFunc(answer, func(text string) string {
		part := measured.FindStringSubmatch(text)
		var value float64
		if _, err := fmt.Sscan(part[1], &value); err != nil || part[1] == "1/2" {
			value = 0.5
		}
		to := map[string]struct {
			factor float64
			unit   string
		}{"in": {25.4, "mm"}, "in2": {6.4516, "cm2"}, "lb": {0.45359237, "kg"}}[part[2]]
		return strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.10f", value*to.factor), "0"), ".") + " " + to.unit
	})
}

// TestBothUnitSystemsEndAlike holds that the unit of an answer changes no finding.
func TestBothUnitSystemsEndAlike(t *testing.T) {
	metric := map[string]string{}
	for title, answer := range american {
		metric[title] = twin(answer)
	}
	if metric["locker gas, vent low, lower edge over lowest"] != "12.7 mm" {
		t.Fatalf("the twin is %v", metric)
	}
	var ends [2][]string
	for i, answers := range []map[string]string{american, metric} {
		made, _ := told(t, options("van"), answers)
		codes, err := code.Use("us-mobile-structure")
		if err != nil {
			t.Fatal(err)
		}
		got, err := check.Run(context.Background(), allChecks(), loads(t, made), codes, check.Options{On: unit.Date{Year: 2026, Month: 11, Day: 25}, Workers: 2})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range got.Findings {
			ends[i] = append(ends[i], fmt.Sprint(f.Check, " ", f.Subject, " ", f.Outcome, " ", f.Reason))
		}
	}
	if diff := cmp.Diff(ends[0], ends[1]); diff != "" {
		t.Error(diff)
	}
	if all := strings.Join(ends[0], "\n"); strings.Count(all, " not-met") < 2 || strings.Count(all, " not-known") < 50 {
		t.Errorf("too little was found: %d not met:\n%s", strings.Count(all, " not-met"), all)
	}
}

// TestNothingLeftOpenIsWithinALimit holds that who answers next to nothing is told
// nothing good, by any code.
func TestNothingLeftOpenIsWithinALimit(t *testing.T) {
	for _, scene := range starter.Scenes() {
		made, _ := told(t, options(scene), map[string]string{"title": "Plover", "spaces": "one, other", "alarms": "co", "cylinders": "a, b"})
		l := loads(t, made)
		for _, id := range []string{"", "us-mobile-structure", "uk-inland-boat"} {
			codes, err := code.Use(id)
			if err != nil {
				t.Fatal(err)
			}
			got, err := check.Run(context.Background(), allChecks(), l, codes, check.Options{On: unit.Date{Year: 2026, Month: 11, Day: 25}, Workers: 2})
			if err != nil {
				t.Fatal(err)
			}
			for _, f := range got.Findings {
				if f.Outcome == report.Within && f.Check != "layout.consistent" {
					t.Errorf("%s by %q: %s of %s is within", scene, id, f.Check, f.Label)
				}
			}
		}
	}
}
