package handoff

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/demos"
	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// verdict is a word that a reader could take for a verdict.
var verdict = regexp.MustCompile(`(?i)\b(safe|safely|safety|compliant|compliance|conforms|approved|approves|approval|pass|passed|passes|certified|certifies|verdict|ok|okay)\b`)

// innocent are the phrases in which such a word is none, each with why.
var innocent = []struct{ phrase, why string }{
	{`That is no approval: nothing was inspected`, "says that it is none"},
	{`approved[,]? (for|by)|Is the appliance approved|Must the appliance be approved|is approved for dwellings`, "of what an appliance's plate says, and asked"},
	{`Name each kind of dwelling for which the plate or the manual says that it is approved`, "how to read a plate"},
	{`Must the installation have been inspected and certified as it is now`, "asks of a fitter's earlier certificate"},
	{`safety relief|"safety valve"`, "the name of a part"},
	{`(hose|connector|line|it) pass(es)? through|passes through (no|nothing)|hole that it passes`, "a pipe through a wall"},
	{`that air passes, gas passes|air can pass|gas passes straight through`, "air and gas through a gap or a tee"},
	{`regulator pass(es)?|each jet pass`, "gas through a part"},
	{`pass through its door`, "a cylinder through a locker's door"},
	{`for which it was last passed`, "asks of the stamp on a cylinder"},
}

// TestNoVerdict: nowhere does a paper say a word that a reader could take for a verdict.
func TestNoVerdict(t *testing.T) {
	used := map[string]bool{}
	every(t, func(t *testing.T, m *Matter, d *paper.Document) {
		texts := append(d.Texts(), Card(m).Texts()...)
		for i, text := range texts {
			if text == m.Report.Title || !verdict.MatchString(text) {
				continue
			}
			rest := text
			for _, each := range innocent {
				if found := regexp.MustCompile(each.phrase); found.MatchString(rest) {
					used[each.phrase] = true
					rest = found.ReplaceAllString(rest, "…")
				}
			}
			if word := verdict.FindString(rest); word != "" {
				t.Errorf("text %d says %q: %s", i, word, text)
			}
		}
	})
	for _, each := range innocent {
		if !used[each.phrase] {
			t.Errorf("the exception %q (%s) is used by nothing", each.phrase, each.why)
		}
	}
}

// TestVerdictsAreFound: the search itself finds what it looks for.
func TestVerdictsAreFound(t *testing.T) {
	for text, want := range map[string]bool{"The gas is safe.": true, "PASSED": true, "all OK": true, "compliant with": true, "unsafe situation": false, "a passage": false, "Not a certificate.": false} {
		if verdict.MatchString(text) != want {
			t.Errorf("%q: found %t", text, !want)
		}
	}
}

// TestCertificateIsDenied: a paper speaks of a certificate only to say that it is none, or
// of that which a fitter wrote before.
func TestCertificateIsDenied(t *testing.T) {
	every(t, func(t *testing.T, _ *Matter, d *paper.Document) {
		for _, title := range []string{d.Title, d.Subject} {
			if strings.Contains(strings.ToLower(title), "certificate") {
				t.Errorf("the paper calls itself %q", title)
			}
		}
		if !strings.HasSuffix(d.Foot, "Not inspected. Not a certificate.") {
			t.Errorf("the foot is %q", d.Foot)
		}
	})
}

// TestNotKnownInWords: what is not stated is told in words by every kind of value.
func TestNotKnownInWords(t *testing.T) {
	a := new(layout.Appliance)
	for name, got := range map[string]string{
		"word": word(&a.Kind), "yes": yes(new(layout.Given[bool])), "number": number(new(layout.Given[int])), "date": date(new(layout.Given[layout.Date])),
		"amount": amount(&a.Plate.Input), "words": words(&a.Plate.ApprovedFor), "size": size(new(layout.Line)), "each": each(notStated, notStated),
		"figure": (&Matter{Report: &report.FileReport{}}).figure("a.b", "/c"),
	} {
		if got != "not known" {
			t.Errorf("%s: %q", name, got)
		}
	}
	if got := each("a", notStated, "c"); got != "a, not known, c" {
		t.Errorf("of three, one of them not known: %q", got)
	}
}

// TestSize: a line's size is told value by value.
func TestSize(t *testing.T) {
	for _, d := range demos.All(t) {
		for _, line := range d.Layout.Lines.All() {
			got := size(line)
			if line.Outside.Known() && !strings.HasPrefix(got, amount(&line.Outside)+", "+amount(&line.Wall)) {
				t.Errorf("%s: %s is %q", d.Name, line.Label(), got)
			}
			if nominal, known := line.Nominal.Get(); known && !strings.HasSuffix(got, "; nominal "+nominal) {
				t.Errorf("%s: %s is %q", d.Name, line.Label(), got)
			}
		}
	}
	sorrel := demos.One(t, "sorrel")
	trunk := sorrel.Layout.Lines.Get("trunk")
	m := reloaded(sorrel, leaveOut(sorrel, trunk.Wall.Spot().Pointer())...)
	if m == nil {
		t.Fatal("the bus without the wall of its trunk does not load")
	}
	if got, want := size(m.Layout.Lines.Get("trunk")), amount(&trunk.Outside)+", not known; nominal 5/8 in OD"; got != want {
		t.Errorf("without its wall the trunk is %q, want %q", got, want)
	}
}

// TestValueOf is how a figure's value is told.
func TestValueOf(t *testing.T) {
	for _, tt := range []struct {
		f    report.Figure
		want string
	}{
		{report.Figure{}, "not known"},
		{report.Figure{Note: "for ever"}, "not known for ever"},
		{report.Figure{Value: report.Words("3 kW")}, "3 kW"},
		{report.Figure{Value: report.Words("3 kW"), Note: "at most"}, "3 kW, at most"},
		{report.Figure{Course: &report.Course{}}, "drawn as a chart"},
	} {
		if got := valueOf(&tt.f); got != tt.want {
			t.Errorf("%+v: %q, want %q", tt.f, got, tt.want)
		}
	}
}

// TestCompared is what a comparison says, with or without a thing that it is about.
func TestCompared(t *testing.T) {
	found, needed, short := report.Words("2 in"), report.Words("3 in"), report.Words("1 in")
	for _, tt := range []struct {
		p    report.Part
		want string
	}{
		{report.Part{}, ""},
		{report.Part{About: "shelf", Text: "over it"}, "shelf: over it"},
		{report.Part{Text: "over it", Found: found}, "over it: 2 in"},
		{report.Part{About: "shelf", Found: found, Needed: needed, Short: short}, "shelf: 2 in; needed 3 in; they differ by 1 in"},
		{report.Part{Needed: needed}, "needed 3 in"},
		{report.Part{About: "shelf", Found: report.Words("")}, "shelf"},
	} {
		if got := compared(&tt.p); got != tt.want {
			t.Errorf("%+v: %q, want %q", tt.p, got, tt.want)
		}
	}
}

// TestDeciding is the comparison that stands nearest to its limit.
func TestDeciding(t *testing.T) {
	near, far := 0.01, 0.5
	part := func(name string, margin *float64) report.Part {
		return report.Part{Outcome: report.Within, Found: report.Words(name), Margin: margin}
	}
	bare := report.Part{Outcome: report.Within}
	for name, tt := range map[string]struct {
		parts []report.Part
		want  string
	}{
		"the nearest":         {[]report.Part{part("far", &far), part("near", &near)}, "near"},
		"whatever the order":  {[]report.Part{part("near", &near), part("far", &far)}, "near"},
		"else the first":      {[]report.Part{bare, part("first", nil), part("second", nil)}, "first"},
		"a margin before all": {[]report.Part{part("first", nil), part("far", &far)}, "far"},
		"none":                {[]report.Part{bare}, ""},
	} {
		if p := deciding(&report.Finding{Outcome: report.Within, Parts: tt.parts}); label(p.Found) != tt.want {
			t.Errorf("%s: %q, want %q", name, label(p.Found), tt.want)
		}
	}
}

// TestClause is where a limit stands, and how it is known where nobody read the text.
func TestClause(t *testing.T) {
	for _, tt := range []struct {
		source *report.Source
		want   string
	}{
		{nil, ""},
		{&report.Source{Document: "CFR", Clause: "3280.704", Edition: "2006", Provenance: "read"}, "CFR 3280.704"},
		{&report.Source{Document: "CFR", Provenance: "read"}, "CFR"},
		{&report.Source{Document: "CFR", Clause: "1", Provenance: "second-hand"}, "CFR 1, second-hand: somebody's account of the text was read, not the text"},
		{&report.Source{Provenance: "common-practice"}, "common practice of the trade, no source"},
	} {
		if got := clause(tt.source); got != tt.want {
			t.Errorf("%+v: %q, want %q", tt.source, got, tt.want)
		}
	}
}

// TestCounts: one finding, two findings.
func TestCounts(t *testing.T) {
	if got := fmt.Sprint(of(0, "check"), of(1, "check"), of(2, "check")); got != "0 checks1 check2 checks" {
		t.Error(got)
	}
}
