package starter

import (
	"bytes"
	"context"
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"lowvent.example/gas"
	"lowvent.example/schema/check"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
	"lowvent.example/vent"
)

func load(t *testing.T, scene string) *layout.Layout {
	t.Helper()
	l, faults := layout.Load(source.NewFile(scene+".json", Layout(scene)))
	if faults != nil {
		t.Fatalf("the first layout of a %s does not load:\n%s", scene, faults.Error())
	}
	return l
}

// everyCode runs a test by each code that can be chosen, and by none.
func everyCode(t *testing.T, test func(t *testing.T, codes code.Codes)) {
	ids := []string{""}
	for _, p := range code.Profiles() {
		if p.Book == code.BookProfile {
			ids = append(ids, p.ID)
		}
	}
	for _, id := range ids {
		codes, err := code.Use(id)
		if err != nil {
			t.Fatal(err)
		}
		t.Run("by "+id, func(t *testing.T) { test(t, codes) })
	}
}

// A builder who fills in nothing must be told nothing good: no answer may rest on
// an invented value. How the lines hang together is all that may agree.
func TestNothingInventedIsWithinALimit(t *testing.T) {
	set := check.Join(gas.Checks(), vent.Checks())
	for _, scene := range Scenes() {
		t.Run(scene, func(t *testing.T) {
			l := load(t, scene)
			everyCode(t, func(t *testing.T, codes code.Codes) {
				got, err := check.Run(context.Background(), set, l, codes, check.Options{On: unit.Date{Year: 2026, Month: 11, Day: 25}, Workers: 2})
				if err != nil {
					t.Fatal(err)
				}
				unknown, dangers := 0, 0
				for _, f := range got.Findings {
					if f.Outcome == report.Within && (f.Word == report.Danger || f.Check != "layout.consistent") {
						t.Errorf("%s of %s is %s on %s", f.Check, f.Label, f.Outcome, f.Word)
					}
					if f.Outcome == report.NotKnown {
						unknown++
						if f.Word == report.Danger {
							dangers++
						}
					}
				}
				if unknown < 20 || dangers < 5 {
					t.Errorf("only %d questions are not known, %d of them DANGER", unknown, dangers)
				}
			})
		})
	}
}

// Keys whose value decides on safety; none may stand in a first layout. Sizes of
// rooms are the one exception, since without them there is no frame to measure
// in, and each says that it is invented.
var decisive = []string{"gross", "open", "lowerEdgeOverLowest", "closable", "coveredByCylinder", "seal", "gland", "opensTo", "waterCapacity",
	"propane", "netMassOnSleeve", "tare", "upright", "role", "outlet", "capacity", "flue", "input", "basis", "leastInlet", "mostInlet",
	"replaceBy", "liveWhenIsolated", "at", "complete", "is", "connected", "country", "code", "length", "flameGuard", "ownRegulator"}

func TestEverySafetyValueIsLeftOut(t *testing.T) {
	for _, scene := range Scenes() {
		var file map[string]any
		if err := json.Unmarshal(Layout(scene), &file); err != nil {
			t.Fatal(err)
		}
		walk(file, "", func(pointer, key string, value any) {
			_, thing := value.(map[string]any)
			for _, each := range decisive {
				if key == each && !thing {
					t.Errorf("%s states %s", scene, pointer)
				}
			}
			if key == "box" && !strings.HasPrefix(pointer, "/spaces/") {
				t.Errorf("%s gives the size of %s", scene, pointer)
			}
			if box, ok := value.(map[string]any); ok && key == "box" && !strings.Contains(box["note"].(string), "Invented") {
				t.Errorf("%s does not say that %s is invented", scene, pointer)
			}
			if list, ok := value.(map[string]any); ok && len(list) == 0 {
				t.Errorf("%s states that there is none: %s", scene, pointer)
			}
		})
	}
}

func walk(value any, pointer string, visit func(pointer, key string, value any)) {
	members, _ := value.(map[string]any)
	for key, each := range members {
		visit(pointer+"/"+key, key, each)
		walk(each, pointer+"/"+key, visit)
	}
}

func TestEveryThingSaysWhatToFillIn(t *testing.T) {
	for _, scene := range Scenes() {
		l := load(t, scene)
		if title, _ := l.Title.Get(); !strings.HasPrefix(title, "Invented ") {
			t.Errorf("the title of %s does not say that it is invented: %q", scene, title)
		}
		var things int
		var file map[string]any
		if err := json.Unmarshal(Layout(scene), &file); err != nil {
			t.Fatal(err)
		}
		walk(file, "", func(pointer, _ string, value any) {
			if thing, ok := value.(map[string]any); ok && regexp.MustCompile(`^/[a-zA-Z]+/[a-z-]+$`).MatchString(pointer) {
				things++
				if note, _ := thing["note"].(string); note == "" && thing["box"] == nil && pointer != "/where" {
					t.Errorf("%s: %s has no note", scene, pointer)
				}
			}
		})
		if things < 10 {
			t.Errorf("%s has only %d things", scene, things)
		}
	}
}

func TestEverySceneHasTheSameFirstParts(t *testing.T) {
	for _, scene := range Scenes() {
		l := load(t, scene)
		for name, n := range map[string]int{"spaces": len(l.Spaces.All()), "lockers": len(l.Lockers.All()), "cylinders": len(l.Cylinders.All()),
			"regulators": len(l.Regulators.All()), "lines": len(l.Lines.All()), "appliances": len(l.Appliances.All()), "openings": len(l.Openings.All()), "alarms": len(l.Alarms.All())} {
			if n == 0 {
				t.Errorf("the first layout of a %s has no %s", scene, name)
			}
		}
		for _, locker := range l.Lockers.All() {
			if got, want := len(locker.SealedFrom.All()), len(l.Spaces.All()); got != want {
				t.Errorf("%s: the locker speaks of its seal to %d of %d spaces", scene, got, want)
			}
		}
	}
}

func TestLayoutsAreTidy(t *testing.T) {
	for _, scene := range Scenes() {
		text := Layout(scene)
		if !bytes.HasSuffix(text, []byte("}\n")) || bytes.Contains(text, []byte("\t")) || bytes.Contains(text, []byte(" \n")) {
			t.Errorf("the first layout of a %s has tabs, spaces at ends of lines or no end of line", scene)
		}
	}
}

func TestNoSceneNoLayout(t *testing.T) {
	if got := Layout("yurt"); got != nil {
		t.Errorf("Layout of an unknown scene gave %d bytes", len(got))
	}
}
