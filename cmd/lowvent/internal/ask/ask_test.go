package ask

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/starter"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

func TestNothingAnsweredIsTheFirstLayout(t *testing.T) {
	for _, scene := range starter.Scenes() {
		made, talk := told(t, options(scene), nil)
		if !bytes.Equal(made, starter.Layout(scene)) {
			t.Errorf("%s: a walk without answers made something else", scene)
		}
		if n := strings.Count(talk, "\n> "); n < 200 {
			t.Errorf("%s: only %d questions", scene, n)
		}
	}
}

func TestTheEndOfTheAnswersMakesNothing(t *testing.T) {
	for _, lines := range []string{"", "my van\n", "my van"} {
		made, answered, err := Run(strings.NewReader(lines), io.Discard, options("van"))
		if !errors.Is(err, ErrEnded) || made != nil || answered {
			t.Errorf("%q: %d bytes, %v", lines, len(made), err)
		}
	}
}

func TestStopWritesWhatThereIs(t *testing.T) {
	made, _, err := lined(options("van"), "Green van", "US", ".")
	if err != nil {
		t.Fatal(err)
	}
	l := loads(t, made)
	if title, _ := l.Title.Get(); title != "Green van" {
		t.Errorf("the title is %q", title)
	}
	if _, known := l.Where.Region.Get(); known || l.Spaces.Get("cabin").Box.Present() {
		t.Error("something that nobody answered is stated")
	}
	if !bytes.Contains(made, []byte("What was not answered is left out")) {
		t.Error("the note does not tell how it was made")
	}
}

func TestAFullWriterIsTold(t *testing.T) {
	_, _, err := Run(strings.NewReader(".\n"), full{}, options("van"))
	if !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("%v", err)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

// TestAnswers holds what single answers write, by the title of their question.
func TestAnswers(t *testing.T) {
	for _, tt := range []struct {
		title, answer, want string
	}{
		{"dwelling, kind", "Boat", `"kind": "boat"`},
		{"dwelling, kind", "4", `"kind": "boat"`},
		{"where, code", "2", `"code": "uk-inland-boat"`},
		{"where, code", "US-mobile-structure", `"code": "us-mobile-structure"`},
		{"dwelling, sleeps", "2", `"sleeps": 2`},
		{"gas, connected", "No", `"connected": false`},
		{"dwelling, first used", "1998-06", `"firstUsed": "1998-06"`},
		{"space cabin, lowest point", `-6 in ± 1/2 in`, `"lowestPoint": "-6 in ± 1/2 in"`},
		{"locker gas, door, opens to", "1", `"opensTo": "open-air"`},
		{"locker gas, door, opens to", "cabin", `"opensTo": "spaces/cabin"`},
		{"cylinders", "left one, right", `"left-one": {}`},
		{"cylinders", "none", `"cylinders": {}`},
		{"cylinder a, at", "3.1 m, 1 ft, 0 m", `"at": ["3.1 m", "1 ft", "0 m"]`},
		{"cylinder a, damage", "none", `"damage": ["none"]`},
		{"cylinder a, damage", "2, dented", `"damage": ["rust-pitted", "dented"]`},
		{"appliance hob, plate, approved for", "none", `"approvedFor": []`},
		{"line trunk, route", "0 m, 0 m, 0 m; 1 m, 0 m, 0 m", `"route": [["0 m", "0 m", "0 m"], ["1 m", "0 m", "0 m"]]`},
		{"appliance hob, use", "supper", `"supper": {}`},
		{"title", `a "quoted" <name> & more`, `"title": "a \"quoted\" <name> & more"`},
		{"title", "tab\tand \x1b[31m", `"title": "tab and �[31m"`},
	} {
		made, talk := told(t, options("van"), map[string]string{tt.title: tt.answer})
		loads(t, made)
		if !strings.Contains(string(made), tt.want) {
			t.Errorf("%s: %s does not write %s; %s", tt.title, tt.answer, tt.want, talk[max(0, strings.Index(talk, tt.title)):][:400])
		}
	}
}

// TestRefused holds what is said of an answer that can't be taken, and that the
// question is asked again.
func TestRefused(t *testing.T) {
	for _, tt := range []struct{ title, answer, want string }{
		{"space cabin, lowest point", "24", "wanted: a length with its unit; its units are mm, cm, m, in, ft"},
		{"space cabin, lowest point", "24 inch", `did you mean "24 in"?`},
		{"dwelling, kind", "hovercraft", "is not one of the words"},
		{"where, code", "mine", `there is no code "mine"`},
		{"dwelling, sleeps", "two", "a whole number is wanted"},
		{"gas, connected", "maybe", "the answer is yes or no"},
		{"dwelling, first used", "last year", "wanted: a date"},
		{"locker gas, door, opens to", "attic", "where it is not known, give an empty line"},
		{"locker gas, door, opens to", "spaces/attic", "spaces/attic"},
		{"space cabin, box, from", "1 m, 2 m", "three lengths are wanted, x, y and z, with commas between, and here are 2"},
		{"space cabin, box, from", "1 m, 2, 3 m", "mm, cm, m, in, ft"},
		{"locker gas, vent low, gross", "0 cm2", "more than zero over its whole tolerance"},
		{"locker gas, vent low, cover, open", "140 %", "0 % to 100 %"},
		{"cylinders", "a, a", "stands there twice"},
		{"cylinders", "ä", "can't be a name here"},
		{"cylinders", ",", "names are wanted"},
		{"cylinders", "a1,a2,a3,a4,a5,a6,a7,a8,a9,b1,b2,b3,b4,b5,b6,b7,b8,b9,c1,c2,c3,c4,c5,c6,c7,c8,c9,d1,d2,d3,d4,d5,d6,d7,d8,d9,e1,e2,e3,e4,e5", "more than 40 names"},
		{"space cab, openings", "side door", "already the name of one elsewhere"},
		{"space cabin, open to", "attic", "is not one of the other spaces"},
		{"appliance hob: where its gas comes from", "appliances/hob", "ends where it begins"},
	} {
		t.Run(tt.title+" "+tt.answer, func(t *testing.T) {
			_, talk := once(t, tt.title, tt.answer)
			if !strings.Contains(unwrapped(talk), tt.want) {
				t.Errorf("it does not say %q: %s", tt.want, talk)
			}
		})
	}
}

// once answers one question once, and then by an empty line; it gives what was said
// from that question to the next.
func once(t *testing.T, title, answer string) (lines []string, talk string) {
	t.Helper()
	_, skipped := told(t, options("van"), nil)
	before := strings.Count(skipped[:strings.Index(skipped, "\n"+title+"\n")], "\n> ")
	lines = append(slices.Repeat([]string{""}, before), answer, ".")
	_, said, err := lined(options("van"), lines...)
	if err != nil {
		t.Fatal(err)
	}
	talk = said[strings.Index(said, "\n"+title+"\n"):]
	if strings.Count(talk, "\n"+title+"\n") != 2 {
		t.Errorf("the question is not asked again: %s", talk)
	}
	return lines, talk
}

func unwrapped(s string) string { return strings.Join(strings.Fields(s), " ") }

func TestGoingBack(t *testing.T) {
	made, talk, err := lined(options("van"), "<", "Wrong name", "<", "Right name", "US", "<", "<", "Righter name", "CA", ".")
	if err != nil {
		t.Fatal(err)
	}
	l := loads(t, made)
	title, _ := l.Title.Get()
	country, _ := l.Where.Country.Get()
	if title != "Righter name" || country != "CA" {
		t.Errorf("%q in %q", title, country)
	}
	if !strings.Contains(talk, "this is the first question") {
		t.Error("nothing is said at the first question")
	}
}

func TestSkippingAThingAndAPart(t *testing.T) {
	_, talk, err := lined(options("van"), "Green van", ">>", ">>", ">>", "", "living", ">", "?", ".")
	if err != nil {
		t.Fatal(err)
	}
	for _, gone := range []string{"\nwhere, region\n", "\ngas, kind\n", "\nspace cabin, lowest point\n"} {
		if strings.Contains(talk, gone) {
			t.Errorf("%q was asked", gone)
		}
	}
	for _, want := range []string{"the rest of space cabin is left out: not known", "\nspace cab, use\n", "In the file it stands at /spaces/cab/use.", "DANGER"} {
		if !strings.Contains(talk, want) {
			t.Errorf("%q is lacking: %s", want, talk[len(talk)-1500:])
		}
	}
}

// TestWhatWasSkippedIsLeftOut holds that an empty line takes out what the first layout
// had stated.
func TestWhatWasSkippedIsLeftOut(t *testing.T) {
	made, _ := told(t, options("van"), map[string]string{"title": "Green van"})
	l := loads(t, made)
	_, kind := l.Dwelling.Kind.Get()
	_, use := l.Spaces.Get("cabin").Use.Get()
	_, hob := l.Appliances.Get("hob").Kind.Get()
	if kind || use || hob {
		t.Errorf("stated although skipped: kind %t, use %t, hob %t", kind, use, hob)
	}
	if len(l.Lines.All()) != 2 || len(l.Alarms.All()) != 3 {
		t.Error("the things of the first layout did not stay")
	}
}

func TestOnlyYesIsComplete(t *testing.T) {
	title := "complete? openings in or of space cabin"
	for answer, want := range map[string]bool{"yes": true, "YES": true, "": false, "no": false} {
		made, _ := told(t, options("van"), map[string]string{"space cabin, openings": "door", title: answer})
		l := loads(t, made)
		if got := l.Spaces.Get("cabin").Surveyed.IsComplete(layout.SurveyListOpenings); got != want {
			t.Errorf("%q makes it complete: %t", answer, got)
		}
	}
	for _, answer := range []string{"y", "ok", "true", "1", "yes, I think"} {
		s := wholeStep{survey: "/spaces/cabin/surveyed/complete", word: "openings", place: "spaces/cabin"}
		if _, _, err := s.take(&state{root: &object{}, complete: map[string][]string{}}, answer); err == nil {
			t.Errorf("%q was taken", answer)
		}
	}
}

// A list that was skipped can't be complete, and one that says none for one place does
// not say none for all.
func TestNoneHereIsNotNoneAnywhere(t *testing.T) {
	_, talk := told(t, options("van"), map[string]string{"space cabin, fans": "none"})
	if strings.Contains(talk, "\ncomplete? openings in or of space cabin\n") || !strings.Contains(talk, "\ncomplete? fans in or of space cabin\n") {
		t.Error("the wrong lists are asked")
	}
	answers := map[string]string{"space cabin, fans": "none", "complete? fans in or of space cabin": "yes"}
	made, _ := told(t, options("van"), answers)
	if l := loads(t, made); l.Fans.Known() || l.Spaces.Get("cabin").Surveyed.Complete.Known() {
		t.Error("none in the cabin was taken for none at all")
	}
	answers["none at all? fans"] = "yes"
	made, _ = told(t, options("van"), answers)
	if l := loads(t, made); !l.Fans.Known() || !l.Spaces.Get("cabin").Surveyed.IsComplete(layout.SurveyListFans) {
		t.Error("none at all was not taken")
	}
}

// TestNoneOfWhatWasNotAskedFor: with one cylinder no changeover is asked for, and with a hob
// alone no flue; checks wait for both lists, so at the end it can be said that there are none.
func TestNoneOfWhatWasNotAskedFor(t *testing.T) {
	hob := map[string]string{"cylinders": "a", "appliance hob, kind": "cooktop", "appliance hob, flue": "none"}
	made, talk := told(t, options("van"), hob)
	for _, list := range []string{"changeovers", "flues"} {
		if strings.Contains(talk, "\n"+list+"\n") || strings.Count(talk, "\nnone at all? "+list+"\n") != 1 {
			t.Errorf("%s: not asked just once, at the end", list)
		}
	}
	if l := loads(t, made); l.Changeovers.Known() || l.Flues.Known() {
		t.Error("none, though nobody said so")
	}
	if strings.Contains(talk, "{} states") {
		t.Errorf("a question speaks of what a file would say: %s", talk[strings.Index(talk, "{} states")-200:][:300])
	}
	hob["none at all? changeovers"], hob["none at all? flues"], hob["complete? flues in the whole dwelling"] = "yes", "yes", "yes"
	made, _ = told(t, options("van"), hob)
	if l := loads(t, made); !l.Changeovers.Known() || !l.Flues.Known() || !l.SurveyedBy.Complete.Has(layout.InventoryListFlues) {
		t.Errorf("none at all was not taken: %s", made)
	}
	_, talk = told(t, options("van"), map[string]string{"cylinders": "a, b", "stoves": "wood"})
	for _, list := range []string{"changeovers", "flues"} {
		if !strings.Contains(talk, "\n"+list+"\n") || strings.Contains(talk, "\nnone at all? "+list+"\n") {
			t.Errorf("%s: asked again at the end, though it was asked for", list)
		}
	}
}

func TestLinesAreAskedFromTheApplianceBack(t *testing.T) {
	made, _ := told(t, options("van"), map[string]string{
		"appliances": "hob, heater", "cylinders": "a, b", "changeovers": "c", "changeover c, connects": "a, b", "regulators": "main",
		"junctions": "tee", "appliance hob: where its gas comes from": "tee", "appliance heater: where its gas comes from": "junctions/tee",
		"junction tee: where its gas comes from": "main", "regulator main: where its gas comes from": "c",
		"cylinder a to changeover c": "yes", "cylinder b to changeover c": "yes",
	})
	l := loads(t, made)
	var got []string
	for _, line := range l.Lines.All() {
		from, _ := line.From.Get()
		to, _ := line.To.Get()
		got = append(got, fmt.Sprintf("%s>%s", from, to))
	}
	slices.Sort(got)
	want := "changeovers/c>regulators/main cylinders/a>changeovers/c cylinders/b>changeovers/c junctions/tee>appliances/heater junctions/tee>appliances/hob regulators/main>junctions/tee"
	if strings.Join(got, " ") != want {
		t.Errorf("%s", got)
	}
}

func TestARenamedThingTakesItsInventedLinesAlong(t *testing.T) {
	made, talk := told(t, options("van"), map[string]string{"appliances": "cooker", "spaces": "saloon"})
	l := loads(t, made)
	if len(l.Lines.All()) != 0 || l.Appliances.Get("hob") != nil || l.Spaces.Get("cabin") != nil || l.Alarms.Get("gas") == nil {
		t.Errorf("%s", made)
	}
	if !strings.Contains(unwrapped(talk), "with that there is no longer: /lines/trunk") {
		t.Error("it is not told what went with it")
	}
}

// TestWhatStoodInASpaceThatIsGoneGoesWithIt: what the first layout invented in a place that
// is not there is asked about no more, so it can't stay in the file as if somebody had
// listed it. What is asked of the whole dwelling stays, and says no place.
func TestWhatStoodInASpaceThatIsGoneGoesWithIt(t *testing.T) {
	made, talk := told(t, options("van"), map[string]string{"spaces": "saloon, cab", "title": "Green van"})
	l := loads(t, made)
	if len(l.Openings.All()) != 0 || strings.Contains(string(made), "side-door") {
		t.Fatalf("the openings of a space that is gone are still there: %s", made)
	}
	if !strings.Contains(unwrapped(talk), "/openings/side-door") || len(l.Alarms.All()) != 3 {
		t.Errorf("it is not told, or more is gone: %d alarms", len(l.Alarms.All()))
	}
	made, _ = told(t, options("van"), map[string]string{"spaces": "cabin, cab", "title": "Green van"})
	if l := loads(t, made); len(l.Openings.All()) != 2 {
		t.Errorf("%d openings of the space that is there", len(l.Openings.All()))
	}
	made, _ = told(t, options("van"), map[string]string{"spaces": "saloon", "space saloon, openings": "side-door"})
	if l := loads(t, made); len(l.Openings.All()) != 1 || l.Openings.Get("side-door") == nil {
		t.Errorf("an opening that was named is gone: %s", made)
	}
}

// TestOnlyWhatFits holds that a hob is not asked for its flue pipe, nor a cabin for its
// axles.
func TestOnlyWhatFits(t *testing.T) {
	for _, tt := range []struct {
		scene   string
		answers map[string]string
		title   string
		asked   bool
	}{
		{"van", map[string]string{"appliance hob, kind": "cooktop"}, "flues", false},
		{"van", map[string]string{"appliance hob, kind": "water-heater"}, "flues", true},
		{"van", map[string]string{"appliance hob, kind": "water-heater", "appliance hob, flue": "none"}, "flues", false},
		{"van", map[string]string{"stoves": "wood"}, "flues", true},
		{"van", nil, "dwelling, front axle", true},
		{"cabin", nil, "dwelling, front axle", false},
		{"cabin", map[string]string{"dwelling, kind": "trailer"}, "dwelling, front axle", true},
		{"van", map[string]string{"cylinders": "a, b"}, "changeovers", true},
		{"van", map[string]string{"cylinders": "a"}, "changeovers", false},
		{"van", map[string]string{"cylinder a, relief valve": "no"}, "cylinder a, relief faces", false},
		{"van", map[string]string{"cylinder a, at": "1 m, 1 m, 0 m"}, "cylinder a, box, from", false},
		{"van", map[string]string{"appliance hob, kind": "cooktop"}, "appliance hob, rear sealed from room", false},
		{"van", map[string]string{"appliance hob, kind": "refrigerator"}, "appliance hob, rear sealed from room", true},
	} {
		_, talk := told(t, options(tt.scene), tt.answers)
		if got := strings.Contains(talk, "\n"+tt.title+"\n"); got != tt.asked {
			t.Errorf("%s %v: %q asked: %t", tt.scene, tt.answers, tt.title, got)
		}
	}
}

// TestANewChecksKeyIsAsked holds that what a check reads decides which keys come first.
func TestANewChecksKeyIsAsked(t *testing.T) {
	o := options("van")
	_, talk := told(t, o, nil)
	if strings.Contains(talk, "\npeople, children\n") {
		t.Fatal("the key is asked already")
	}
	o.Needs["/people/children"] = []Need{{Check: "people.children", Asks: "Can a child reach the tap?", Word: report.Warning}}
	if _, talk = told(t, o, nil); !strings.Contains(talk, "\npeople, children\n") {
		t.Error("the key of the new check is not asked")
	}
}

func TestTheRestIsOfferedInBulk(t *testing.T) {
	_, talk := told(t, options("van"), map[string]string{"alarm gas: more to tell": "yes"})
	for title, asked := range map[string]bool{"alarm gas, standard": true, "alarm co, standard": false} {
		if strings.Contains(talk, "\n"+title+"\n") != asked {
			t.Errorf("%q asked: %t", title, !asked)
		}
	}
}

// answersLike draws a line that somebody might type, whatever was asked.
func answersLike(t *rapid.T) string {
	return rapid.OneOf(
		rapid.SampledFrom([]string{"", "", "", "yes", "no", "none", "1", "2", "3", "?", "<", ">", ">>", "a", "a, b", "main", "hob, heater", "cab", "cabin, cab",
			"24 in", "610 mm", "1 m ± 2 cm", "90 cm2", "11 inH2O", "8000 BTU/h", "20 lb", "-5 degC", "70 %", "10 N", "2 h", "2031-05", "07:30", "15 deg", "120 m3/h",
			"0 m, 0 m, 0 m", "2 m, 1 m, 2 m", "1 m, 1 m, 1 m", "0 m, 0 m, 0 m; 1 m, 0 m, 0 m", "open-air", "spaces/cab", "lockers/gas", "tee", "regulators/main", "cylinders/a", "appliances/hob", "propane", "door", "low"}),
		rapid.StringN(0, 12, 40).Filter(func(s string) bool { return !strings.ContainsAny(s, "\n") && strings.TrimSpace(s) != "." }),
	).Draw(t, "answer")
}

// TestAnyAnswersMakeALayoutThatLoads is the promise of the whole package.
func TestAnyAnswersMakeALayoutThatLoads(t *testing.T) {
	all := map[string]Options{}
	for _, scene := range starter.Scenes() {
		all[scene] = options(scene)
	}
	rapid.Check(t, func(t *rapid.T) {
		scene := rapid.SampledFrom(starter.Scenes()).Draw(t, "scene")
		lines := rapid.SliceOfN(rapid.Custom(answersLike), 0, 250).Draw(t, "lines")
		made, _, err := lined(all[scene], append(lines, ".")...)
		if err != nil {
			t.Fatal(err)
		}
		loads(t, made)
	})
}

func FuzzAnswers(f *testing.F) {
	f.Add("van", "Green van\nUS\n\n>>\n?\n<\n.")
	f.Add("boat", ">>\n>>\n>>\na,b,ä\nnone\nyes\n\x00\xff\n.\n")
	f.Add("cabin", strings.Repeat("1\n", 300)+".\n")
	o := map[string]Options{}
	for _, scene := range starter.Scenes() {
		o[scene] = options(scene)
	}
	f.Fuzz(func(t *testing.T, scene, lines string) {
		one, ok := o[scene]
		if !ok || len(lines) > 2000 {
			return
		}
		made, _, err := Run(strings.NewReader(lines), io.Discard, one)
		if err != nil {
			if !errors.Is(err, ErrEnded) || made != nil {
				t.Fatalf("%d bytes and %v", len(made), err)
			}
			return
		}
		loads(t, made)
	})
}
