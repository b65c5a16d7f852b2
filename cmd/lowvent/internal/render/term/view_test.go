package term

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// anyView draws a view of a run: any of its lists, and names that the run has.
func anyView(t *rapid.T, run *report.Run) View {
	v := View{BySubject: rapid.Bool().Draw(t, "bySubject"), Brief: rapid.Bool().Draw(t, "brief"), Within: rapid.Bool().Draw(t, "within"),
		NotCovered: rapid.Bool().Draw(t, "silent"), NotApplicable: rapid.Bool().Draw(t, "exempt")}
	if known := Nameable(run); len(known) > 0 {
		v.Only = rapid.SliceOfN(rapid.SampledFrom(known), 0, 3).Draw(t, "only")
	}
	return v
}

// TestAnyView: whatever is shown, a page keeps to its columns, begins with the cautions,
// ends with the result of the whole, counts the whole, says in its head when it is not the
// whole, and tells of every finding that is to be shown.
func TestAnyView(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run := anyRun().Draw(t, "run")
		o := Options{Width: rapid.IntRange(40, 220).Draw(t, "width"), Excerpt: line(`"gross": "20 cm2",`), View: anyView(t, run)}
		got := written(t, run, o)
		inside(t, got, min(max(o.Width, text.Narrowest), text.Widest))
		plain, whole := flat(got), flat(written(t, run, Options{Width: o.Width}))
		if !strings.HasPrefix(plain, flat(strings.Join(report.Cautions(), " "))) || !strings.HasSuffix(plain, flat(saying.Result(run))) {
			t.Fatalf("the caution is not first, or the result of the whole not last:\n%s", got)
		}
		for _, counted := range regexp.MustCompile(`Counted: .*? waived\.`).FindAllString(whole, -1) {
			if !strings.Contains(plain, counted) {
				t.Fatalf("the whole is not counted, %q:\n%s", counted, got)
			}
		}
		usable := len(slices.DeleteFunc(slices.Clone(run.Files), func(f report.FileReport) bool { return len(f.Faults) > 0 }))
		if n := len(regexp.MustCompile(`(?m)^shown     `).FindAllString(got, -1)); len(o.View.Only) > 0 && n != usable {
			t.Fatalf("%d of %d files say that not all is shown:\n%s", n, usable, got)
		}
		for i := range run.Files {
			toldOf(t, o.View, &run.Files[i], got)
		}
	})
}

// toldOf holds that each finding that is to be shown is told of.
func toldOf(t *rapid.T, v View, f *report.FileReport, got string) {
	for _, one := range v.Only.narrow(f).Findings {
		open := one.Outcome == report.NotMet || one.Outcome == report.NotKnown
		if (open || !v.Brief) && !strings.Contains(got, one.Check) {
			t.Fatalf("%s (%s, %s) fell silent:\n%s", one.Check, one.Outcome, one.Reason, got)
		}
	}
}

func inside(t *rapid.T, got string, width int) {
	for one := range strings.SplitSeq(strings.TrimSuffix(got, "\n"), "\n") {
		if text.Width(one) > width || strings.HasSuffix(one, " ") {
			t.Fatalf("%d columns on a page of %d, or a space at the end: %q", text.Width(one), width, one)
		}
	}
	if strings.ContainsAny(got, "\x1b\u202e\u200b") {
		t.Fatalf("what a file says reaches the terminal as a command: %q", got)
	}
}

func TestColourOnlyRepeatsInAnyView(t *testing.T) {
	colours := regexp.MustCompile("\x1b\\[[0-9;]*m")
	rapid.Check(t, func(t *rapid.T) {
		run := anyRun().Draw(t, "run")
		v := anyView(t, run)
		plain := written(t, run, Options{Width: 80, View: v})
		if got := colours.ReplaceAllString(written(t, run, Options{Width: 80, Colour: true, View: v}), ""); got != plain {
			t.Fatalf("colour changes the words:\n%s\nplain:\n%s", got, plain)
		}
	})
}

// TestNarrowing: what is shown by two names is what either shows, and by none it is all.
func TestNarrowing(t *testing.T) {
	key := func(f report.Finding) string { return f.Check + "#" + f.Subject + "#" + f.Label }
	rapid.Check(t, func(t *rapid.T) {
		run := anyRun().Draw(t, "run")
		known := append(Nameable(run), "/", "nothing at all")
		a, b := rapid.SampledFrom(known).Draw(t, "a"), rapid.SampledFrom(known).Draw(t, "b")
		for i := range run.Files {
			f := &run.Files[i]
			either := map[string]bool{}
			for _, one := range append(slices.Clone(Only{a}.narrow(f).Findings), Only{b}.narrow(f).Findings...) {
				either[key(one)] = true
			}
			both := map[string]bool{}
			for _, one := range (Only{a, b}).narrow(f).Findings {
				both[key(one)] = true
			}
			if diff := cmp.Diff(either, both); diff != "" {
				t.Fatalf("%q and %q (-either +both):\n%s", a, b, diff)
			}
			if (Only{}).narrow(f) != f {
				t.Fatal("no name narrows")
			}
		}
	})
}

func TestWhatANameNames(t *testing.T) {
	tests := []struct {
		name string
		is   bool
	}{
		{"locker.low-vent", true}, {"locker.", true}, {"locker rear", true}, {"/lockers/rear", true}, {"/lockers", true}, {"/lockers/", true}, {"/", true},
		{"locker", false}, {"rear", false}, {"lock.", false}, {"/lockers/re", false}, {"/lockers/rear/vents", false}, {"locker.low", false}, {"LOCKER REAR", false}, {"", false},
	}
	for _, tt := range tests {
		if got := names(tt.name, "locker.low-vent", "/lockers/rear", "locker rear"); got != tt.is {
			t.Errorf("%q names it: %t, want %t", tt.name, got, tt.is)
		}
	}
}

// sorted puts findings into the order in which every report has them.
func sorted(findings ...report.Finding) *report.Run {
	report.Sort(findings)
	return one(findings...)
}

func TestUnderEachPartTheWorstFirst(t *testing.T) {
	as := func(check, label string, word report.Signal) report.Finding {
		return vent(func(f *report.Finding) {
			f.Check, f.Label, f.Subject, f.Word = check, label, "/"+label, word
		})
	}
	gross := report.Missing{What: "gross", Measure: "The whole hole.", Place: report.Place{Pointer: "/locker/gross"}}
	got := written(t, sorted(as("a.a", "hob", report.Warning), as("b.b", "hob", report.Notice), as("c.c", "locker", report.Danger), as("d.d", "tap", report.Warning),
		unknown("e.e", "locker", report.Warning, gross), unknown("f.f", "alarm", report.Danger)), Options{Width: 100, View: View{BySubject: true}})
	says(t, got,
		"PART locker (/locker): DANGER at worst; 1 not met, 0 not known", "DANGER c.c, locker", "Gas drains like water.",
		"PART alarm: DANGER at worst; 0 not met, 1 not known", "DANGER f.f, alarm: not known, Is it so?",
		"PART hob (/hob): WARNING at worst; 2 not met", "WARNING a.a, hob", "NOTICE b.b, hob",
		"PART tap (/tap)", "WARNING d.d, tap", "PART locker: WARNING at worst; 0 not met, 1 not known", "WARNING e.e, locker: not known, missing /locker/gross",
		"NOT KNOWN 2", "measure The whole hole.")
}

func TestBrief(t *testing.T) {
	got := written(t, sorted(vent(func(f *report.Finding) {
		f.Parts = append(f.Parts, report.Part{Outcome: report.NotMet, About: "the other"}, report.Part{Outcome: report.Within, About: "the third"})
		f.Waiver = &report.Waiver{Reason: "Until spring.", DecidedBy: "owner", Until: "2027-03"}
	}), vent(func(f *report.Finding) { f.Check, f.Parts = "a.bare", nil }), unknown("b.c", "tap", report.Danger)),
		Options{Width: 120, Excerpt: line(`"gross": "30 cm2",`), View: View{Brief: true}})
	says(t, got, "brief left out are excerpts", "DANGER a.bare, locker rear", "Is it open enough? Not met.",
		"DANGER locker.low-vent, locker rear", "found 21 cm2 (3.3 in2), needed 30 cm2 (4.7 in2); 1 more not met", "bus.json:27:17 /lockers/rear/vents/low/gross",
		"waived by owner", "NOT KNOWN 1", "DANGER b.c, tap: not known, Is it so?", "Counted: not met: 2 danger")
	for _, never := range []string{"^^", "drains like water", "675 IAC", "43 cm2"} {
		if strings.Contains(got, never) {
			t.Errorf("%q stands in a brief report:\n%s", never, got)
		}
	}
}

func TestOnlySaysWhatItLeavesOut(t *testing.T) {
	run := sorted(vent(nil), unknown("b.c", "tap", report.Danger), vent(func(f *report.Finding) { f.Check, f.Outcome = "locker.sealed", report.Within }),
		vent(func(f *report.Finding) {
			f.Check, f.Label, f.Outcome, f.Reason = "hob.near", "hob", report.Within, report.ToProve
		}))
	run.Files[0].Figures = []report.Figure{{ID: "locker.area", Title: "area", Value: report.Words("1 m2")}, {ID: "dwelling.load", Title: "load", Value: report.Words("2 kW")}}
	run.Files[0].Claims = []report.Claim{{Subject: "locker rear, seal from cabin", States: "seal: tight", Checks: []string{"x.y"}}, {Subject: "tap", States: "tap: shut", Checks: []string{"x.z"}}}
	got := written(t, run, Options{Width: 120, View: View{Only: Only{"locker.", "locker rear"}}})
	says(t, got, "shown 2 of 4 findings (1 of 1 not met, 0 of 1 not known): those of \"locker.\", \"locker rear\".", "exit status are those of the whole",
		"locker.low-vent", "FIGURES", "1 m2", "FOR THE FITTER TO PROVE 1 of 2", "0 of 1 answer within limit rest on it", "seal: tight", "WITHIN LIMIT, AS STATED 1 of 2", "Counted: not met: 1 danger", "1 not known; 2 within limit as stated",
		"1 not met and 1 not known at WARNING or above")
	for _, never := range []string{"b.c", "2 kW", "tap: shut", "hob.near"} {
		if strings.Contains(got, never) {
			t.Errorf("%q is shown:\n%s", never, got)
		}
	}
}

func TestWhatWasComparedIsListed(t *testing.T) {
	found, needed := report.Apart(unit.KindLength, 0.4, 1.2)
	share, none := 0.667, 0.0
	law := &report.Source{Document: "24 CFR 3280.705", Provenance: "read", Rule: "at most " + needed.Text}
	within := func(check string, reason report.Reason, parts ...report.Part) report.Finding {
		for i := range parts {
			parts[i].Outcome = report.Within
		}
		return report.Finding{Check: check, Label: "line trunk", Asks: "Is it so?", Word: report.Danger, Outcome: report.Within, Reason: reason, Parts: parts}
	}
	got := written(t, sorted(
		within("a.held", report.NoReason, report.Part{Found: found, Needed: needed, Margin: &share, Source: law}),
		within("b.edge", report.NoReason, report.Part{About: "shelf", Found: needed, Needed: needed, Margin: &none, Source: law}, report.Part{About: "rack", Found: found, Needed: needed, Source: law}),
		within("c.words", report.ToProve, report.Part{Found: report.Words("copper"), Needed: report.Words("copper or steel or brass"), Source: &report.Source{Provenance: "own-rule", Rule: "copper, steel or brass"}}),
		within("d.bare", report.NoReason, report.Part{})), Options{Width: 100, View: View{Within: true, Brief: true}})
	says(t, got, "WITHIN LIMIT, AS STATED 4: what was compared, not what was seen",
		"a.held, line trunk: within limit, as stated", "found "+found.Text+"; limit at most "+needed.Text+"; margin 67 % of the limit", "source 24 CFR 3280.705; the text was read",
		"b.edge, line trunk: within limit, as stated", "shelf: found", "margin none, it is just at the limit", "rack: found", "source 24 CFR",
		"c.words, line trunk: within limit, as stated; nobody has shown it, and a fitter must prove it", "limit copper, steel or brass", "source this program's own rule",
		"d.bare, line trunk: within limit, as stated", "Is it so?")
	if n := strings.Count(got, "24 CFR"); n != 2 {
		t.Errorf("a source of two parts is told %d times:\n%s", n, got)
	}
}

func TestWhatHasNoAnswerIsListedWithTheReason(t *testing.T) {
	none := func(check, label string, reason report.Reason, texts ...string) report.Finding {
		f := report.Finding{Check: check, Label: label, Asks: "Is it so?", Word: report.Danger, Outcome: report.NotApplicable, Reason: reason}
		for _, each := range texts {
			f.Parts = append(f.Parts, report.Part{Outcome: report.NotApplicable, Reason: reason, Text: each})
		}
		return f
	}
	got := written(t, sorted(
		none("a.silent", "tap A", report.NotCovered, "How far?", "How wide?", "How far?"), none("a.silent", "tap B", report.NotCovered, "How far?", "How wide?"), none("a.silent", "tap C", report.NotCovered, "How high?"),
		none("b.none", "taps", report.NoSubject), none("c.exempt", "line", report.RuleExempts, "it is a hose")),
		Options{Width: 100, View: View{NotCovered: true, NotApplicable: true}})
	says(t, got, "NOT COVERED 3: no code was chosen", "a.silent: Is it so?", "of tap A, tap B", "silent on How far? How wide?", "of tap C", "silent on How high?",
		"NOT APPLICABLE 2", "b.none: Is it so?", "of taps", "because the file states that there is none", "c.exempt: Is it so?", "of line", "because it is a hose")
}

func TestStrangeNames(t *testing.T) {
	run := one(vent(nil))
	run.Files[0].Figures = []report.Figure{{ID: "locker.area"}}
	if diff := cmp.Diff([]string{"locker", "/hob"}, Only{"locker.", "locker", "/lockers", "/hob", "locker.area"}.Strange(run)); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{"/lockers/rear", "locker rear", "locker.", "locker.area", "locker.low-vent"}, Nameable(run)); diff != "" {
		t.Error(diff)
	}
}

// TestAgain: what is told of a file that was judged anew, by what it was and what it is.
func TestAgain(t *testing.T) {
	sound := report.FileReport{File: "bus.json", Title: "Heron", Gas: "connected", Findings: []report.Finding{vent(func(f *report.Finding) { f.Outcome = report.Within })}}
	faulty := sound
	faulty.Findings = []report.Finding{vent(nil)}
	faulty.Counts = report.Count(faulty.Findings, report.Warning)
	other := faulty
	other.Code, other.Overlay = &report.Code{ID: "own", Title: "Own", File: "own.json"}, &report.Overlay{Title: "County"}
	broken := report.FileReport{File: "bus.json", Faults: []report.Fault{{What: "a comma is missing"}}}
	tests := []struct {
		name  string
		anew  Anew
		want  []string
		never string
	}{
		{"worse", Anew{Now: &faulty, Before: &sound}, []string{"bus.json: Heron", "gas now connected", "since its last report: 1 worse, 0 newly unknown", "Worse", "DANGER locker.low-vent, locker rear",
			"Counted: not met: 1 danger"}, "FIGURES"},
		{"as it was", Anew{Now: &faulty, Before: &faulty}, []string{"since its last report: 0 worse", "Counted: not met: 1 danger"}, "locker.low-vent"},
		{"after faults", Anew{Now: &faulty, Before: &sound, Broken: true}, []string{"before the faults that kept it from being used: 1 worse"}, ""},
		{"under another code", Anew{Now: &other, Before: &sound}, []string{"code Own [own]", "unequal codes", "This code was read from own.json", "overlay County"}, ""},
		{"never told of", Anew{Now: &faulty}, []string{"bus.json: Heron", "DANGER locker.low-vent", "why Gas drains", "Counted"}, "since"},
		{"faults", Anew{Name: "bus.json", Now: &broken, Before: &faulty}, []string{"UNUSABLE bus.json: 1 fault", "a comma is missing", "What was told of bus.json before is not known to be true any more."}, "Counted"},
		{"faults from the first", Anew{Name: "bus.json", Now: &broken}, []string{"UNUSABLE bus.json: 1 fault"}, "What was told"},
		{"gone", Anew{Name: "bus.json"}, []string{"GONE bus.json: it is not there any more", "That mends nothing."}, "Counted"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			run := one()
			run.Files = nil
			if tt.anew.Now != nil {
				run.Files = append(run.Files, *tt.anew.Now)
			}
			var out strings.Builder
			if err := Again(&out, run, []Anew{tt.anew}, "A reason.", Options{Width: 120, View: View{Brief: true, Only: Only{"x."}}}); err != nil {
				t.Fatal(err)
			}
			got := out.String()
			says(t, got, append([]string{report.Cautions()[0], "A reason."}, append(tt.want, "Result of this file check", report.KeepOff)...)...)
			if tt.never != "" && strings.Contains(got, tt.never) {
				t.Errorf("%q is told:\n%s", tt.never, got)
			}
		})
	}
}

// TestAgainKeepsToThePage: whatever changed in whatever way.
func TestAgainKeepsToThePage(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run, was := anyRun().Draw(t, "run"), anyRun().Draw(t, "was")
		var files []Anew
		for i := range run.Files {
			a := Anew{Name: run.Files[i].File, Now: &run.Files[i], Broken: rapid.Bool().Draw(t, "broken")}
			if i < len(was.Files) && len(was.Files[i].Faults) == 0 {
				a.Before = &was.Files[i]
			}
			files = append(files, a)
		}
		files = append(files, Anew{Name: prose().Draw(t, "gone")})
		var out strings.Builder
		width := rapid.IntRange(40, 220).Draw(t, "width")
		if err := Again(&out, run, files, prose().Draw(t, "why"), Options{Width: width}); err != nil {
			t.Fatal(err)
		}
		inside(t, out.String(), min(max(width, text.Narrowest), text.Widest))
		if plain := flat(out.String()); !strings.HasPrefix(plain, flat(report.Cautions()[0])) || !strings.HasSuffix(plain, flat(saying.Result(run))) {
			t.Fatalf("the caution is not first, or the result not last:\n%s", plain)
		}
	})
}
