package junit

import (
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

func faultCase(f *report.Fault) testcase {
	said := []string{saying.At(f.Place)}
	for _, each := range f.Related {
		said = append(said, "see also "+saying.At(each))
	}
	return testcase{Class: "file.unusable", Name: strings.TrimSpace(text.Clean(saying.At(f.Place) + " " + f.Place.Pointer)),
		Error: &outcome{Type: "UNUSABLE", Message: saying.OneLine(saying.Fault(f)), Body: body(said)}}
}

func findingCase(run *report.Run, f *report.Finding) testcase {
	c := testcase{Class: text.Clean(f.Check), Name: text.Clean(f.Label)}
	ended := &outcome{Type: string(f.Word), Message: saying.OneLine(string(f.Word) + ": " + saying.EndedWithWaiver(f))}
	switch {
	case f.Counts(run.FailAt) && !(run.Accept && f.Waived()):
		c.Failure, ended.Body = ended, details(f)
	case saying.Told(f):
		ended.Message += notCounted(run, f)
		c.Skipped, ended.Body = ended, details(f)
	case f.Outcome == report.Within && f.Reason == report.ToProve:
		c.Skipped = &outcome{Message: "stated, and only a fitter can prove it"}
	case f.Outcome == report.Within:
		c.Out = "Within limit, as stated. Nothing was inspected."
	default:
		c.Skipped = &outcome{Message: reason(f)}
	}
	return c
}

// notCounted tells why a finding is no failure.
func notCounted(run *report.Run, f *report.Finding) string {
	if f.Counts(run.FailAt) {
		return "; the finding stands, and by --accept-waivers does not count towards the exit status"
	}
	return "; the finding stands, and is below what counts towards the exit status"
}

// reason tells why a question has no answer.
func reason(f *report.Finding) string {
	switch f.Reason {
	case report.NoSubject:
		return "the file states that there is none"
	case report.RuleExempts:
		return "the question does not arise"
	}
	return saying.OneLine(saying.Ended(f))
}

func details(f *report.Finding) string {
	return body(append(append([]string{saying.At(f.Place) + " " + f.Place.Pointer}, saying.Why(f)...), places(f)...))
}

// places lists where the parts of a finding stand that ended like the whole.
func places(f *report.Finding) []string {
	var all []string
	for i := range f.Parts {
		if p := &f.Parts[i]; p.Outcome == f.Outcome && p.Place != f.Place {
			one := report.Finding{Outcome: p.Outcome, Parts: []report.Part{*p}}
			all = append(all, saying.At(p.Place)+": "+saying.EndedWithWaiver(&one))
		}
	}
	return all
}

// body puts each text on a line of its own.
func body(texts []string) string {
	var out strings.Builder
	for _, each := range texts {
		out.WriteString("\n" + saying.OneLine(each))
	}
	return out.String() + "\n"
}
