package saying

import (
	"testing"

	"lowvent.example/schema/report"
)

func TestHowAQuestionEnded(t *testing.T) {
	tests := []struct {
		outcome report.Outcome
		reason  report.Reason
		want    string
	}{
		{report.Within, report.NoReason, "within limit, as stated"},
		{report.Within, report.ToProve, "within limit, as stated (for the fitter to prove)"},
		{report.NotMet, report.NoReason, "not met"},
		{report.NotKnown, report.MissingInput, "not known (something is not stated)"},
		{report.NotKnown, report.NotSurveyed, "not known (a list is not stated complete)"},
		{report.NotApplicable, report.NotCovered, "not judged (the code is silent)"},
		{report.NotApplicable, report.AskFitter, "not judged (a question for the fitter)"},
		{report.NotApplicable, report.NoSubject, "not judged (the file states that there is none)"},
		{report.NotApplicable, report.RuleExempts, "not judged (the question does not arise)"},
	}
	for _, tt := range tests {
		if got := Answer(tt.outcome, tt.reason); got != tt.want {
			t.Errorf("Answer(%s, %s) = %q, want %q", tt.outcome, tt.reason, got, tt.want)
		}
	}
}

func TestEnded(t *testing.T) {
	part := func(about string, found, needed string) report.Part {
		p := report.Part{Outcome: report.NotMet, About: about}
		if found != "" {
			p.Found = report.Words(found)
		}
		if needed != "" {
			p.Needed = report.Words(needed)
		}
		return p
	}
	missing := report.Part{Outcome: report.NotKnown, Missing: []report.Missing{{What: "gross", Place: report.Place{Pointer: "/v/gross"}}}}
	tests := []struct {
		name string
		f    *report.Finding
		want string
	}{
		{"not listed", nil, "not listed"},
		{"nothing was compared", &report.Finding{Outcome: report.NotMet}, "not met"},
		{"found and needed", &report.Finding{Outcome: report.NotMet, Parts: []report.Part{part("the gap", "1 m", "2 m")}}, "not met: the gap: found 1 m, needed 2 m"},
		{"no more parts than are told", &report.Finding{Outcome: report.NotMet, Parts: []report.Part{part("a", "", ""), part("b", "", ""), part("c", "", ""), part("d", "", "")}}, "not met: a; b; c; 1 more"},
		{"the same once", &report.Finding{Outcome: report.NotMet, Parts: []report.Part{part("a", "", ""), part("a", "", "")}}, "not met: a"},
		{"parts that ended otherwise", &report.Finding{Outcome: report.NotMet, Parts: []report.Part{missing}}, "not met"},
		{"missing", &report.Finding{Outcome: report.NotKnown, Parts: []report.Part{missing}}, "not known: /v/gross"},
		{"silent", &report.Finding{Outcome: report.NotApplicable, Reason: report.NotCovered}, "the code does not cover it"},
		{"a fitter's", &report.Finding{Outcome: report.NotApplicable, Reason: report.AskFitter}, "for the fitter to answer"},
		{"no subject", &report.Finding{Outcome: report.NotApplicable}, "does not apply"},
		{"within", &report.Finding{Outcome: report.Within}, "within, as stated"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Ended(tt.f); got != tt.want {
				t.Errorf("got %q, want %q", got, tt.want)
			}
		})
	}
}

func TestAWaiverIsToldBesideTheEnd(t *testing.T) {
	f := &report.Finding{Outcome: report.NotMet, Waiver: &report.Waiver{State: report.WaiverExpired}}
	if got, want := EndedWithWaiver(f), "not met (a waiver is written for it, expired)"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestLackingNamesFew(t *testing.T) {
	lacks := func(whats ...string) (all []report.Missing) {
		for _, w := range whats {
			all = append(all, report.Missing{What: w, Place: report.Place{Pointer: "/at/" + w}})
		}
		return all
	}
	named := report.Missing{What: "whether it is shut", Place: report.Place{Pointer: "/at/shut"}}
	tests := []struct {
		missing []report.Missing
		want    string
	}{
		{nil, ""},
		{[]report.Missing{named}, "whether it is shut"},
		{lacks("a", "b"), "/at/a, /at/b"},
		{lacks("a", "a", "b", "c", "d"), "/at/a, /at/b and 2 more"},
	}
	for _, tt := range tests {
		if got := Lacking(tt.missing); got != tt.want {
			t.Errorf("got %q, want %q", got, tt.want)
		}
	}
}

func TestPlaces(t *testing.T) {
	tests := []struct {
		place     report.Place
		at, where string
	}{
		{report.Place{File: "a.json", Line: 3, Column: 4, Pointer: "/x"}, "a.json:3:4", "a.json:3:4  /x"},
		{report.Place{File: "a.json", Pointer: "/x"}, "a.json", "a.json  /x"},
		{report.Place{File: "a.json"}, "a.json", "a.json"},
	}
	for _, tt := range tests {
		if at, where := At(tt.place), Where(tt.place); at != tt.at || where != tt.where {
			t.Errorf("got %q and %q, want %q and %q", at, where, tt.at, tt.where)
		}
	}
}
