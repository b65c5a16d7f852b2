// Package rendertest draws whole reports for the tests of the forms for machines: every
// end that a question can have, in files with names and texts that a hostile file could
// bring.
package rendertest

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"

	"lowvent.example/schema/report"
)

// Hostile are texts that break a form which does not escape them.
func Hostile() []string {
	return []string{"::error file=x::y", "##[add-mask]x", "a%0Ab", "100 %", "a,b:c", "]]>", "<b>&amp;", `"q" 'q'`, "{0} {", "[link](http://x)",
		"\x1b[2J", "\x00", "\ufffe", "\u202e", "\xff", "a\nb", "a\r\n::warning::b", "tab\t", "é 廚房 \U0001f525", "#frag?query", "C:\\x", "::"}
}

// Run draws the report of a run. No two questions of a file have the same check and
// subject, as in every report of the program.
func Run() *rapid.Generator[*report.Run] {
	return rapid.Custom(func(t *rapid.T) *report.Run {
		r := &report.Run{Format: report.Format, Program: report.Program{Name: "lowvent", Version: Text().Draw(t, "version")}, On: "2026-11-25",
			FailAt: rapid.SampledFrom(report.Signals()).Draw(t, "failAt"), Accept: rapid.Bool().Draw(t, "accept"), Caution: report.Cautions()}
		for i := range rapid.IntRange(1, 3).Draw(t, "files") {
			r.Files = append(r.Files, file(t, name().Draw(t, "name")+fmt.Sprint(i, ".json"), r.FailAt))
		}
		r.Status = status(r)
		return r
	})
}

// Text draws a text, at times a hostile one.
func Text() *rapid.Generator[string] {
	word := rapid.OneOf(rapid.StringMatching(`[A-Za-z]{1,9}`), rapid.SampledFrom(Hostile()), rapid.String())
	return rapid.Custom(func(t *rapid.T) string {
		return strings.Join(rapid.SliceOfN(word, 0, 5).Draw(t, "words"), " ")
	})
}

// name draws the beginning of a file's name.
func name() *rapid.Generator[string] {
	return rapid.OneOf(Text(), rapid.SampledFrom([]string{"", "a b/", "../", "/abs/", "./", "a//b", "<stdin>"}))
}

// status is the exit status that the program gives for such a run.
func status(r *report.Run) int {
	s := 0
	for i := range r.Files {
		f := &r.Files[i]
		counted := f.Counts.AtOrAbove
		if r.Accept {
			counted -= f.Counts.Excused
		}
		switch {
		case len(f.Faults) > 0:
			return 2
		case counted > 0:
			s = 1
		}
	}
	return s
}

func file(t *rapid.T, name string, failAt report.Signal) report.FileReport {
	f := report.FileReport{File: name}
	if rapid.IntRange(0, 4).Draw(t, "usable") == 0 {
		for range rapid.IntRange(1, 3).Draw(t, "faults") {
			f.Faults = append(f.Faults, report.Fault{Place: place(t, name), What: Text().Draw(t, "what"), Expected: Text().Draw(t, "expected"),
				Mend: Text().Draw(t, "mend"), Related: []report.Place{place(t, name)}})
		}
		return f
	}
	f.Title, f.Gas, f.SHA256 = Text().Draw(t, "title"), Text().Draw(t, "gas"), "00ff"
	for i := range rapid.IntRange(0, 25).Draw(t, "findings") {
		f.Findings = append(f.Findings, finding(t, name, i))
	}
	report.Sort(f.Findings)
	for i := range f.Findings {
		if w := f.Findings[i].Waiver; w != nil {
			f.Waivers = append(f.Waivers, *w)
		}
	}
	f.Counts = report.Count(f.Findings, failAt)
	return f
}

// ends are the ways in which a question can end; the first two are the ones to tell.
var ends = []report.Part{
	{Outcome: report.NotMet}, {Outcome: report.NotKnown, Reason: report.MissingInput}, {Outcome: report.Within}, {Outcome: report.Within, Reason: report.ToProve},
	{Outcome: report.NotApplicable, Reason: report.NoSubject}, {Outcome: report.NotApplicable, Reason: report.RuleExempts},
	{Outcome: report.NotApplicable, Reason: report.NotCovered}, {Outcome: report.NotApplicable, Reason: report.AskFitter},
}

func finding(t *rapid.T, file string, i int) report.Finding {
	end := rapid.OneOf(rapid.SampledFrom(ends[:2]), rapid.SampledFrom(ends)).Draw(t, "end")
	f := report.Finding{Check: fmt.Sprintf("area.question-%c", 'a'+i%5), Subject: fmt.Sprintf("/things/%d", i), Label: Text().Draw(t, "label"),
		Asks: Text().Draw(t, "asks"), Why: Text().Draw(t, "why"), Outcome: end.Outcome, Reason: end.Reason,
		Word: rapid.SampledFrom(report.Signals()).Draw(t, "word"), MayAct: report.LicensedFitter, Place: place(t, file)}
	for range rapid.IntRange(0, 4).Draw(t, "parts") {
		f.Parts = append(f.Parts, part(t, file, end))
	}
	if rapid.IntRange(0, 4).Draw(t, "waived") == 0 && (f.Outcome == report.NotMet || f.Outcome == report.NotKnown) {
		f.Waiver = &report.Waiver{ID: "w", Check: f.Check, Subject: f.Subject, Reason: Text().Draw(t, "reason"), DecidedBy: Text().Draw(t, "by"),
			Until: "2027", State: report.WaiverInForce, Place: place(t, file)}
	}
	return f
}

func part(t *rapid.T, file string, end report.Part) report.Part {
	p := end
	p.About, p.Place = Text().Draw(t, "about"), place(t, file)
	p.Found, p.Needed = report.Words(Text().Draw(t, "found")), report.Words(Text().Draw(t, "needed"))
	p.Source = &report.Source{Document: Text().Draw(t, "document"), Rule: Text().Draw(t, "rule"), Provenance: "read"}
	p.Mend = &report.Mend{Text: Text().Draw(t, "mend")}
	if p.Outcome == report.NotKnown {
		p.Missing = []report.Missing{{What: Text().Draw(t, "missing"), Measure: Text().Draw(t, "measure"), Place: place(t, file)}}
	}
	return p
}

func place(t *rapid.T, file string) report.Place {
	line := rapid.IntRange(0, 99).Draw(t, "line")
	p := report.Place{File: file, Pointer: rapid.SampledFrom([]string{"", "/lockers/a", "/cylinders/~0x"}).Draw(t, "pointer")}
	if line > 0 {
		p.Line, p.Column, p.EndLine, p.EndColumn = line, 3, line+rapid.IntRange(0, 1).Draw(t, "lines"), 9
	}
	return p
}
