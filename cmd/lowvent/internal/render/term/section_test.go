package term

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// vent is a finding of which each test changes what it is about.
func vent(change func(*report.Finding)) report.Finding {
	found, needed := report.Apart(unit.KindArea, 0.0021, 0.003)
	f := report.Finding{
		Check: "locker.low-vent", Asks: "Is it open enough?", Why: "Gas drains like water.", Subject: "/lockers/rear", Label: "locker rear",
		Outcome: report.NotMet, Word: report.Danger, MayAct: report.LicensedFitter,
		Place: report.Place{File: "bus.json", Line: 27, Column: 17, EndLine: 27, EndColumn: 25, Pointer: "/lockers/rear/vents/low/gross"},
		Parts: []report.Part{{Outcome: report.NotMet, Found: found, Needed: needed, Short: report.Quantity(unit.KindArea, 0.0009),
			Source: &report.Source{Document: "675 IAC 15-2-74", Clause: "(c)(2)", Provenance: "read", Rule: "half of 2 % of the floor"},
			Mend:   &report.Mend{Text: "At least 43 cm2 gross."}}},
	}
	if change != nil {
		change(&f)
	}
	return f
}

func one(findings ...report.Finding) *report.Run {
	return &report.Run{On: "2026-11-25", FailAt: report.Warning, Caution: report.Cautions(),
		Files: []report.FileReport{{File: "bus.json", Findings: findings, Counts: report.Count(findings, report.Warning)}}}
}

// says holds that each text stands in the report, in this order, whatever the
// line breaks.
func says(t *testing.T, got string, want ...string) {
	t.Helper()
	rest := flat(got)
	for _, each := range want {
		i := strings.Index(rest, flat(each))
		if i < 0 {
			t.Fatalf("%q is missing, or stands too early, in:\n%s", each, got)
		}
		rest = rest[i+len(flat(each)):]
	}
}

func TestFindingTellsAllInOrder(t *testing.T) {
	got := written(t, one(vent(func(f *report.Finding) {
		f.Waiver = &report.Waiver{Reason: "Until spring.", DecidedBy: "owner", Until: "2027-03"}
	})), Options{Width: 80, Excerpt: line(`"gross": "30 cm2",`)})
	says(t, got,
		"DANGER locker.low-vent, locker rear", "Is it open enough? Not met.",
		"bus.json:27:17 /lockers/rear/vents/low/gross", `27 | "gross": "30 cm2",`, "^^^",
		"found 21 cm2 (3.3 in2)", "needed 30 cm2 (4.7 in2)", "short by 9 cm2 (1.4 in2), 30 % of the limit",
		"rule half of 2 % of the floor", "source 675 IAC 15-2-74(c)(2); the text was read", "why Gas drains like water.",
		"mend At least 43 cm2 gross.", "may act licensed gas fitter", "waived by owner until 2027-03: Until spring. (the finding stands)")
}

func TestProvenanceIsAlwaysSaid(t *testing.T) {
	tests := []struct{ known, document, want string }{
		{"read", "NFPA 58", "NFPA 58; the text was read"},
		{"second-hand", "NFPA 58", "NFPA 58; second-hand: somebody's account"},
		{"memory", "NFPA 58", "NFPA 58; only remembered, never judged"},
		{"common-practice", "", "common practice of the trade, no source"},
		{"own-rule", "", "this program's own rule, in no code"},
		{"word of a later version", "", "word of a later version"},
	}
	for _, tt := range tests {
		t.Run(tt.known, func(t *testing.T) {
			got := written(t, one(vent(func(f *report.Finding) {
				f.Parts[0].Source = &report.Source{Document: tt.document, Provenance: report.Provenance(tt.known)}
			})), Options{Width: 120})
			says(t, got, "source "+tt.want)
		})
	}
}

func TestHowFarALimitIsMissed(t *testing.T) {
	length := func(found, needed, short float64) report.Part {
		return report.Part{Found: report.Quantity(unit.KindLength, found), Needed: report.Quantity(unit.KindLength, needed), Short: report.Quantity(unit.KindLength, short)}
	}
	warm := report.Part{Found: report.Quantity(unit.KindTemperature, 330), Needed: report.Quantity(unit.KindTemperature, 320), Short: report.Quantity(unit.KindTemperatureDifference, 10)}
	tests := []struct {
		name           string
		part           report.Part
		label, content string
	}{
		{"too little", length(0.5, 1, 0.5), "short by", ", 50 % of the limit"},
		{"too much", length(1.5, 1, 0.5), "over by", ", 50 % of the limit"},
		{"a hair", length(0.999, 1, 0.001), "short by", ", less than 1 % of the limit"},
		{"over a limit of nothing has no share", length(0.05, 0, 0.05), "over by", "50 mm"},
		{"a share of a temperature means nothing", warm, "over by", "10 K"},
		{"words have no size", report.Part{Found: report.Words("taped"), Needed: report.Words("cap"), Short: report.Words("?")}, "short by", "?"},
		{"nothing said", report.Part{}, "", ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			label, content := short(&tt.part)
			if label != tt.label || !strings.Contains(content, tt.content) || tt.part.Short == nil && content != "" {
				t.Errorf("short = %q, %q; want %q, and in it %q", label, content, tt.label, tt.content)
			}
			if strings.Contains(content, "%") != strings.Contains(tt.content, "%") {
				t.Errorf("short = %q: a share where none is meant, or none where one is", content)
			}
		})
	}
}

func TestFurtherPartsAreFewAndCounted(t *testing.T) {
	f := vent(func(f *report.Finding) {
		for _, name := range []string{"a", "b", "c", "d", "e", "f", "g"} {
			f.Parts = append(f.Parts, report.Part{Outcome: report.NotMet, About: "shelf " + name, Found: report.Words("near"), Needed: report.Words("far")})
		}
		f.Parts = append(f.Parts, report.Part{Outcome: report.Within, About: "shelf far away"})
	})
	got := written(t, one(f), Options{Width: 80})
	says(t, got, "also shelf a: found near, needed far", "also shelf e", "also and 2 more that are not met")
	if strings.Contains(got, "shelf f:") || strings.Contains(got, "far away") {
		t.Errorf("too much is told:\n%s", got)
	}
}

func TestAFurtherPartKeepsItsOwnMend(t *testing.T) {
	f := vent(func(f *report.Finding) {
		f.Parts = append(f.Parts,
			report.Part{Outcome: report.NotMet, Source: &report.Source{Rule: "at most 0 mm"}, Found: report.Words("50 mm"), Needed: report.Words("0 mm"), Mend: &report.Mend{Text: "Take the sill out."}},
			report.Part{Outcome: report.NotMet, About: "the other", Mend: &report.Mend{Text: "At least 43 cm2 gross."}})
	})
	got := written(t, one(f), Options{Width: 80})
	says(t, got, "also at most 0 mm: found 50 mm, needed 0 mm", "Take the sill out.", "also the other")
	if strings.Count(got, "At least 43 cm2 gross.") != 1 {
		t.Errorf("the same mend is told twice:\n%s", got)
	}
}

func TestAFindingOfPracticeSaysThatTheCodeIsSilent(t *testing.T) {
	f := vent(func(f *report.Finding) {
		f.Parts[0].Source = &report.Source{Provenance: "common-practice"}
		f.Parts = append(f.Parts, report.Part{Outcome: report.NotApplicable, Reason: report.NotCovered})
	})
	says(t, written(t, one(f), Options{Width: 80}), "source common practice of the trade, no source; the code is silent on this")
}

func unknown(check, label string, word report.Signal, missing ...report.Missing) report.Finding {
	return report.Finding{Check: check, Label: label, Asks: "Is it so?", Word: word, Outcome: report.NotKnown, Reason: report.MissingInput,
		Parts: []report.Part{{Outcome: report.NotKnown, Missing: missing}}}
}

func TestAMissingThingIsToldOnceWithAllThatWait(t *testing.T) {
	gross := report.Missing{What: "gross", Measure: "The whole hole.", Place: report.Place{File: "bus.json", Line: 31, Column: 9, Pointer: "/lockers/rear/vents/low/gross"}}
	list := report.Missing{What: "the list openEnds ({} states that there are none)", Measure: "Every end.", Place: report.Place{File: "bus.json", Line: 1, Column: 1, Pointer: "/openEnds"}}
	got := written(t, one(
		unknown("cylinder.in-locker", "cylinder a", report.Danger, gross), unknown("cylinder.in-locker", "cylinder b", report.Danger, gross),
		unknown("locker.high-vent", "locker rear", report.Warning, gross, list), unknown("line.open-end", "openEnds", report.Caution, list),
	), Options{Width: 80})
	says(t, got, "NOT KNOWN 4: what is not known is never taken as good. To be found out and stated: 2 things.",
		"DANGER /lockers/rear/vents/low/gross", "bus.json:31:9", "measure The whole hole.",
		"waits cylinder.in-locker (cylinder a, cylinder b), locker.high-vent (locker rear)",
		"WARNING the list openEnds ({} states that there are none)", "bus.json:1:1 /openEnds", "waits locker.high-vent (locker rear), line.open-end (openEnds)")
	if strings.Count(got, "The whole hole.") != 1 {
		t.Errorf("how to measure one thing is told more than once:\n%s", got)
	}
}

func TestManyThatWaitAreCounted(t *testing.T) {
	gross := report.Missing{What: "gross", Place: report.Place{Pointer: "/x/gross"}}
	var findings []report.Finding
	for _, label := range []string{"a", "b", "c", "d", "e"} {
		findings = append(findings, unknown("ignition.near-gas", label, report.Danger, gross))
	}
	says(t, written(t, one(findings...), Options{Width: 80}), "waits ignition.near-gas (a, b, c and 2 more)")
}

func TestNotKnownWithoutAnythingMissingIsStillTold(t *testing.T) {
	says(t, written(t, one(unknown("a.b", "cylinder a", report.Danger)), Options{Width: 80}), "NOT KNOWN 1", "DANGER a.b, cylinder a", "Is it so? Not known.")
}

func TestFigures(t *testing.T) {
	at := func(pointer string) report.Missing {
		return report.Missing{What: pointer[strings.LastIndex(pointer, "/")+1:], Place: report.Place{Pointer: pointer}}
	}
	run := one()
	run.Files[0].Figures = []report.Figure{
		{Title: "connected load", Value: report.Words("4.25 kW")},
		{Title: "floor area", Subject: "/lockers/rear", Label: "locker rear", Value: report.Words("0.3 m2"), Note: "of what is listed"},
		{Title: "run time", Missing: []report.Missing{at("/cylinders/a/role"), at("/a/b"), at("/a/b"), at("/c/d")}},
		{Title: "drop", Note: "the code is silent"},
	}
	says(t, written(t, run, Options{Width: 80}), "FIGURES",
		"connected load 4.25 kW", "locker rear: floor area 0.3 m2, of what is listed", "run time missing /cylinders/a/role, /a/b and 1 more", "drop not known the code is silent")
}

func TestWhatIsNeitherMissedNorUnknown(t *testing.T) {
	as := func(check string, outcome report.Outcome, reason report.Reason, part report.Part) report.Finding {
		part.Outcome, part.Reason = outcome, reason
		return report.Finding{Check: check, Label: "locker rear", Asks: "Is it so?", Word: report.Danger, Outcome: outcome, Reason: reason, Parts: []report.Part{part}}
	}
	run := one(
		as("locker.sealed", report.Within, report.ToProve, report.Part{About: "space cabin", Found: report.Words("gas-tight")}),
		as("locker.bare", report.Within, report.ToProve, report.Part{}),
		as("alarm.co", report.NotApplicable, report.AskFitter, report.Part{Text: "Must there be one?", Source: &report.Source{Document: "24 CFR 3280.211", Provenance: "memory"}}),
		as("alarm.mute", report.NotApplicable, report.AskFitter, report.Part{Outcome: report.Within}),
		as("alarm.gas", report.NotApplicable, report.NotCovered, report.Part{}), as("alarm.gas", report.NotApplicable, report.NotCovered, report.Part{}),
		as("line.open-end", report.NotApplicable, report.NoSubject, report.Part{}),
		as("appliance.flue", report.NotApplicable, report.RuleExempts, report.Part{}),
		as("cylinder.fill", report.Within, report.NoReason, report.Part{}),
	)
	run.Files[0].Claims = []report.Claim{
		{Subject: "locker rear, seal from cabin", States: "seal: gas-tight", Basis: "stated", Checks: []string{"locker.sealed"}},
		{Subject: "locker rear, gland", States: "gland: bulkhead", Basis: "photographed", Checks: []string{"locker.bare", "locker.sealed"}},
		{Subject: "locker rear, seal from berth", States: "seal: gas-tight", Basis: "stated", Checks: []string{"locker.sealed"}},
	}
	got := written(t, run, Options{Width: 100})
	says(t, got,
		"FOR THE FITTER TO PROVE 3", "2 answers within limit rest on it",
		"locker rear, seal from cabin; locker rear, seal from berth: seal: gas-tight (stated), for locker.sealed",
		"locker rear, gland: gland: bulkhead (photographed), for locker.bare, locker.sealed",
		"ASK THE FITTER 2", "alarm.co, locker rear: Must there be one? [24 CFR 3280.211; only remembered, never judged]",
		"NOT COVERED 2: no code was chosen that could answer", "alarm.gas (2)",
		"WITHIN LIMIT, AS STATED 3", "cylinder.fill, locker.bare, locker.sealed",
		"NOT APPLICABLE 2", "the file states that there is none: line.open-end", "the question does not arise: appliance.flue",
		"3 within limit as stated (2 to prove); 2 not covered; 2 for the fitter; 2 not applicable; 0 waived.")
}

func TestCodeLine(t *testing.T) {
	borrowed := &report.Code{ID: "some-code", Title: "Some code", Edition: "2021", Borrowed: "it governs houses, and this is a van."}
	tests := []struct {
		name       string
		code       *report.Code
		candidates []report.Code
		want       []string
		never      string
	}{
		{"governs", &report.Code{ID: "some-code", Title: "Some code", Governs: true}, nil, []string{"code Some code [some-code]"}, "orrowed"},
		{"borrowed", borrowed, nil, []string{"code Some code [some-code]; 2021", "Borrowed yardstick: it governs houses, and this is a van.",
			"Some code is a borrowed yardstick here: it is not shown to be the law for this dwelling.", "Result"}, ""},
		{"none, and some fit", nil, []report.Code{{ID: "a-code", Title: "A code"}}, []string{
			"code none chosen, so only the law on the thing itself, common practice and this program's own rules are judged.", "fits --code a-code (A code)", "/where/code"}, "orrowed"},
		{"none, and none fits", nil, nil, []string{"code none chosen", "No built-in code is shown to be the law"}, "--code"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			run := one()
			run.Files[0].Code, run.Files[0].Candidates = tt.code, tt.candidates
			got := written(t, run, Options{Width: 80})
			says(t, got, tt.want...)
			if tt.never != "" && strings.Contains(got, tt.never) {
				t.Errorf("%q stands in:\n%s", tt.never, got)
			}
		})
	}
}

func TestHeadSaysWhatIsUrgentFirst(t *testing.T) {
	run := one(vent(nil))
	run.Files[0].Title, run.Files[0].Gas = "Heron", "the file says that gas IS CONNECTED now"
	run.Files[0].Waivers = []report.Waiver{{ID: "w", Check: "locker.low-vent", Subject: "/lockers/rear", Reason: "Spring.", DecidedBy: "owner", Until: "2027", State: report.WaiverExpired}}
	says(t, written(t, run, Options{Width: 80}), "bus.json: Heron", "gas now the file says that gas IS CONNECTED now", "asked 1 check, 1 subject",
		"waivers 1 waiver written into the file, 0 in force; none changes an outcome", "DANGER", "WAIVERS 1", "w, expired: locker.low-vent of /lockers/rear by owner until 2027: Spring.")
}

func TestFaults(t *testing.T) {
	run := one()
	run.Files[0] = report.FileReport{File: "bus.json", Faults: []report.Fault{
		{Place: report.Place{File: "bus.json", Line: 12, Column: 8, EndLine: 12, EndColumn: 14, Pointer: "/lockers/rear/gros"}, What: "the key is not known", Expected: "one of the keys", Mend: "write gross",
			Related: []report.Place{{File: "bus.json", Line: 3, Column: 1}}},
		{Place: report.Place{File: "bus.json"}, What: "there is no such file"},
	}}
	got := written(t, run, Options{Width: 80, Excerpt: line(`"gros": "30 cm2",`)})
	says(t, got, "UNUSABLE bus.json: 2 faults, and so nothing in it was judged", "bus.json:12:8 /lockers/rear/gros", "12 |", "^^",
		"what the key is not known", "expected one of the keys", "mend write gross", "see also bus.json:3:1", "what there is no such file",
		"Result of this file check: the file can't be used, and nothing was judged. Nothing was inspected.")
	if strings.Contains(got, "Counted") || strings.Contains(got, "FIGURES") {
		t.Errorf("a file that can't be used has a verdict:\n%s", got)
	}
}

func TestResultLine(t *testing.T) {
	notice := vent(func(f *report.Finding) { f.Word = report.Notice })
	as := func(outcome report.Outcome, reason report.Reason) report.Finding {
		return report.Finding{Check: "a.b", Word: report.Danger, Outcome: outcome, Reason: reason}
	}
	law, borrowed := &report.Code{Title: "Some code", Governs: true}, &report.Code{Title: "Some code"}
	tests := []struct {
		name     string
		code     *report.Code
		findings []report.Finding
		want     string
	}{
		{"clean", law, nil, "no finding at WARNING or above in what the file states."},
		{"below the threshold", law, []report.Finding{notice}, "no finding at WARNING or above in what the file states, 1 below that."},
		{"not met and not known", law, []report.Finding{vent(nil), unknown("a.b", "x", report.Warning), notice}, "1 not met and 1 not known at WARNING or above, 1 below that."},
		{"no code leaves a question open", nil, nil, "no finding at WARNING or above in what the file states; still open: which code is the law here."},
		{"so does a borrowed one", borrowed, nil, "in what the file states; still open: whether this code is the law here."},
		{"and what only the fitter can tell", law, []report.Finding{as(report.Within, report.ToProve), as(report.NotApplicable, report.AskFitter), as(report.NotApplicable, report.NotCovered)},
			"in what the file states; still open: 1 for the fitter to prove, 1 for the fitter to answer, 1 not covered."},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			run := one(tt.findings...)
			run.Files[0].Code = tt.code
			says(t, written(t, run, Options{Width: 80}), "Result of this file check: ", tt.want, report.KeepOff)
		})
	}
}

func TestSeveralFilesEndInOneResult(t *testing.T) {
	run, law := one(vent(nil)), &report.Code{Governs: true}
	run.Files[0].Code = law
	run.Files = append(run.Files, report.FileReport{File: "van.json", Faults: []report.Fault{{What: "broken"}}}, report.FileReport{File: "boat.json", Code: law})
	got := written(t, run, Options{Width: 120})
	says(t, got, "bus.json: 1 not met and 0 not known at WARNING or above.", "van.json: the file can't be used, and nothing was judged.",
		"boat.json: no finding at WARNING or above in what the file states.",
		"Result of this file check: 3 files, of which 1 can't be used and 1 have findings at WARNING or above. Nothing was inspected.")
	if n := strings.Count(flat(got), "Keep the gas off"); n != 1 {
		t.Errorf("the last sentence stands %d times", n)
	}
}

// Words of approval that no report may use: a file check approves nothing.
func TestNoReportApproves(t *testing.T) {
	run := one(vent(func(f *report.Finding) { f.Outcome = report.Within }))
	words := strings.FieldsFunc(strings.ToLower(written(t, run, Options{Width: 80})), func(r rune) bool { return (r < 'a' || r > 'z') && r != '✓' && r != '✔' })
	for _, word := range words {
		switch word {
		case "safe", "pass", "passed", "ok", "okay", "verdict", "approved", "compliant", "score", "certified", "✓", "✔":
			t.Errorf("the report says %q", word)
		}
	}
}

func TestExcerptsOfWideCharactersStayInThePage(t *testing.T) {
	got := written(t, one(vent(nil)), Options{Width: 60, Excerpt: line(strings.Repeat("廚房", 60))})
	says(t, got, "27 | …", "^^")
}

func TestTally(t *testing.T) {
	if diff := cmp.Diff("a, b (2), c", tally([]string{"b", "c", "b", "a"})); diff != "" {
		t.Error(diff)
	}
}

type noRoom struct{}

func (noRoom) Write([]byte) (int, error) { return 0, errors.New("no room on the disk") }

func TestWriteTellsOfItsWriter(t *testing.T) {
	if err := Write(noRoom{}, one(), Options{}); err == nil {
		t.Error("an error of the writer was lost")
	}
}

func BenchmarkWrite(b *testing.B) {
	var findings []report.Finding
	for range 40 {
		findings = append(findings, vent(nil), unknown("cylinder.fill", "cylinder a", report.Danger, report.Missing{What: "propane", Measure: "Weigh it.", Place: report.Place{Pointer: "/cylinders/a/propane"}}),
			vent(func(f *report.Finding) { f.Outcome = report.Within }))
	}
	run, o := one(findings...), Options{Width: 100, Excerpt: line(`"gross": "30 cm2",`)}
	b.ReportAllocs()
	for b.Loop() {
		written(b, run, o)
	}
}
