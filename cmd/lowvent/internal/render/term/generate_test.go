package term

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"

	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// anyRun draws a whole report: every outcome and reason that the engine can
// make, with texts that a hostile file could hold.
func anyRun() *rapid.Generator[*report.Run] {
	return rapid.Custom(func(t *rapid.T) *report.Run {
		run := &report.Run{Format: report.Format, On: "2026-11-25", FailAt: rapid.SampledFrom(report.Signals()).Draw(t, "failAt"), Caution: report.Cautions()}
		for i := range rapid.IntRange(1, 3).Draw(t, "files") {
			run.Files = append(run.Files, anyFile(t, fmt.Sprintf("file%d.json", i), run.FailAt))
		}
		return run
	})
}

func anyFile(t *rapid.T, name string, failAt report.Signal) report.FileReport {
	f := report.FileReport{File: name}
	if rapid.IntRange(0, 4).Draw(t, "usable") == 0 {
		f.Faults = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) report.Fault { return anyFault(t, name) }), 1, 3).Draw(t, "faults")
		return f
	}
	f.Title, f.Gas = prose().Draw(t, "title"), prose().Draw(t, "gas")
	if rapid.Bool().Draw(t, "chosen") {
		f.Code = &report.Code{ID: "some-code", Title: prose().Draw(t, "code"), Edition: prose().Draw(t, "edition"), Governs: rapid.Bool().Draw(t, "governs"), Borrowed: prose().Draw(t, "borrowed")}
		f.NotCovered = rapid.SliceOfN(prose(), 0, 3).Draw(t, "notCovered")
	} else {
		f.Candidates = rapid.SliceOfN(rapid.Just(report.Code{ID: "a", Title: "A"}), 0, 2).Draw(t, "candidates")
	}
	f.Findings = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) report.Finding { return anyFinding(t, name) }), 0, 8).Draw(t, "findings")
	f.Figures = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) report.Figure { return anyFigure(t, name) }), 0, 3).Draw(t, "figures")
	f.Waivers = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) report.Waiver { return anyWaiver(t, name) }), 0, 2).Draw(t, "waivers")
	report.Sort(f.Findings)
	f.Counts = report.Count(f.Findings, failAt)
	return f
}

// ends are the ways in which a question can end.
var ends = []struct {
	outcome report.Outcome
	reason  report.Reason
}{
	{report.NotMet, report.NoReason}, {report.NotKnown, report.MissingInput}, {report.NotKnown, report.NotSurveyed},
	{report.Within, report.NoReason}, {report.Within, report.ToProve}, {report.NotApplicable, report.NoSubject},
	{report.NotApplicable, report.RuleExempts}, {report.NotApplicable, report.NotCovered}, {report.NotApplicable, report.AskFitter},
}

func anyFinding(t *rapid.T, file string) report.Finding {
	end := rapid.SampledFrom(ends).Draw(t, "end")
	f := report.Finding{
		Check: rapid.StringMatching(`[a-z]{3,9}\.[a-z]{3,9}(-[a-z]{2,6})?`).Draw(t, "check"), Asks: prose().Draw(t, "asks"), Why: prose().Draw(t, "why"),
		Subject: "/lockers/" + prose().Draw(t, "subject"), Label: prose().Draw(t, "label"), Outcome: end.outcome, Reason: end.reason,
		Word: rapid.SampledFrom(report.Signals()).Draw(t, "word"), MayAct: report.LicensedFitter, Place: anyPlace(t, file),
	}
	for i := range rapid.IntRange(0, 9).Draw(t, "parts") {
		part := anyPart(t, file)
		if i == 0 {
			part.Outcome, part.Reason = end.outcome, end.reason
		}
		f.Parts = append(f.Parts, part)
	}
	if rapid.IntRange(0, 5).Draw(t, "waived") == 0 {
		w := anyWaiver(t, file)
		f.Waiver = &w
	}
	return f
}

func anyPart(t *rapid.T, file string) report.Part {
	end := rapid.SampledFrom(ends).Draw(t, "partEnd")
	p := report.Part{Outcome: end.outcome, Reason: end.reason, About: prose().Draw(t, "about"), Text: prose().Draw(t, "text"), Place: anyPlace(t, file)}
	if rapid.Bool().Draw(t, "compared") {
		found, needed := rapid.Float64Range(0, 10).Draw(t, "found"), rapid.Float64Range(0, 10).Draw(t, "needed")
		p.Found, p.Needed = report.Apart(unit.KindLength, found, needed)
		p.Short = report.Quantity(unit.KindLength, max(found-needed, needed-found))
	}
	if rapid.Bool().Draw(t, "sourced") {
		p.Source = &report.Source{Document: prose().Draw(t, "document"), Clause: "(c)(2)", Edition: prose().Draw(t, "in"), Rule: prose().Draw(t, "rule"),
			Provenance: rapid.SampledFrom([]report.Provenance{"read", "second-hand", "memory", "common-practice", "own-rule", "other"}).Draw(t, "known")}
	}
	if rapid.Bool().Draw(t, "mendable") {
		p.Mend = &report.Mend{Text: prose().Draw(t, "mend")}
	}
	if end.outcome == report.NotKnown {
		p.Missing = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) report.Missing { return anyMissing(t, file) }), 0, 3).Draw(t, "missing")
	}
	return p
}

func anyMissing(t *rapid.T, file string) report.Missing {
	place := anyPlace(t, file)
	return report.Missing{What: rapid.OneOf(prose(), rapid.Just("gross")).Draw(t, "what"), Measure: prose().Draw(t, "measure"), Place: place}
}

func anyFigure(t *rapid.T, file string) report.Figure {
	f := report.Figure{ID: "dwelling.load", Title: prose().Draw(t, "figure"), Subject: rapid.SampledFrom([]string{"", "/lockers/a"}).Draw(t, "of"),
		Label: prose().Draw(t, "label"), Note: prose().Draw(t, "note")}
	if rapid.Bool().Draw(t, "known") {
		f.Value = report.Quantity(unit.KindGrossPower, rapid.Float64Range(0, 1e5).Draw(t, "value"))
	}
	f.Missing = rapid.SliceOfN(rapid.Custom(func(t *rapid.T) report.Missing { return anyMissing(t, file) }), 0, 4).Draw(t, "missing")
	return f
}

func anyWaiver(t *rapid.T, file string) report.Waiver {
	return report.Waiver{ID: "w", Check: "a.b", Subject: "/x", Reason: prose().Draw(t, "reason"), DecidedBy: prose().Draw(t, "by"), Until: "2027",
		State: rapid.SampledFrom([]string{report.WaiverInForce, report.WaiverExpired}).Draw(t, "state"), Place: anyPlace(t, file)}
}

func anyFault(t *rapid.T, file string) report.Fault {
	return report.Fault{Place: anyPlace(t, file), What: prose().Draw(t, "what"), Expected: prose().Draw(t, "expected"), Mend: prose().Draw(t, "mend"),
		Related: rapid.SliceOfN(rapid.Custom(func(t *rapid.T) report.Place { return anyPlace(t, file) }), 0, 2).Draw(t, "related")}
}

func anyPlace(t *rapid.T, file string) report.Place {
	line := rapid.IntRange(0, 999_999).Draw(t, "line")
	return report.Place{File: file, Line: line, Column: 1, EndLine: line, EndColumn: 4, Pointer: rapid.SampledFrom([]string{"", "/lockers/a/vents/low/gross", "/cylinders/" + strings.Repeat("x", 64) + "/propane"}).Draw(t, "pointer")}
}

// prose draws a text: mostly words, sometimes what no honest file holds.
func prose() *rapid.Generator[string] {
	word := rapid.OneOf(rapid.StringMatching(`[A-Za-z]{1,10}`), rapid.StringMatching(`[a-z/]{70,90}`), rapid.String(),
		rapid.SampledFrom([]string{"廚房用瓦斯", "\x1b[31m", "e\u0301", "❤\ufe0f", "\u202e", "30 cm2 (4.7 in2)", "\n", "\xff"}))
	return rapid.Custom(func(t *rapid.T) string {
		return strings.Join(rapid.SliceOfN(word, 0, 6).Draw(t, "words"), " ")
	})
}

// line stands for a file, of which every line is the same.
func line(text string) func(report.Place, int) source.Excerpt {
	f := source.NewFile("any", []byte(text))
	return func(p report.Place, width int) source.Excerpt {
		if p.Line == 0 {
			return source.Excerpt{}
		}
		e := source.Place{File: f, Span: source.Span{Start: int32(len(text) / 3), End: int32(len(text) / 2)}}.Excerpt(width)
		e.Line = p.Line
		return e
	}
}
