package saying

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/render/rendertest"
	"lowvent.example/schema/report"
)

func TestOneLine(t *testing.T) {
	tests := []struct{ name, in, want string }{
		{"plain", "found 10 kg", "found 10 kg"},
		{"ends of line and tabs", " a\n\tb\r\nc ", "a b c"},
		{"a terminal's command", "\x1b[2J", "\ufffd[2J"},
		{"a CI's command at the start", " ::error::x", "./::error::x"},
		{"no command", "a ::error::x", "a ::error::x"},
		{"an old command anywhere", "a ##[add-mask]b", "a ## [add-mask]b"},
		{"an old command over an end of line", "##\n[add-mask]b", "## [add-mask]b"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := OneLine(tt.in); got != tt.want {
				t.Errorf("%q, want %q", got, tt.want)
			}
		})
	}
}

func TestNoTextLeavesItsLineOrCommands(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		got := OneLine(rendertest.Text().Draw(t, "text"))
		if strings.ContainsAny(got, "\r\n\x1b\x00") || strings.HasPrefix(got, "::") || strings.Contains(got, "##[") || !utf8.ValidString(got) {
			t.Fatalf("%q", got)
		}
		if again := OneLine(got); again != got {
			t.Fatalf("%q becomes %q when cleaned again", got, again)
		}
	})
}

func TestWhy(t *testing.T) {
	missing := func(names ...string) (all []report.Missing) {
		for _, n := range names {
			all = append(all, report.Missing{What: n, Measure: "Measure " + n + "."})
		}
		return all
	}
	tests := []struct {
		name string
		f    report.Finding
		want []string
	}{
		{"all that there is", report.Finding{Asks: "Is it?", Why: "It kills", MayAct: report.LicensedFitter, Parts: []report.Part{{
			Source: &report.Source{Document: "D", Clause: "c", Rule: "at most 1 m", Provenance: "read"}, Mend: &report.Mend{Text: "move it"}}},
			Waiver: &report.Waiver{DecidedBy: "me", Until: "2027", Reason: "soon."}},
			[]string{"Is it?", "It kills.", "Rule: at most 1 m.", "Source: D c; the text was read.", "Mend: move it.", "Waiver by me until 2027: soon; the finding stands.", "May act: licensed gas fitter."}},
		{"nothing", report.Finding{}, nil},
		{"as many to measure as are told", report.Finding{Parts: []report.Part{{Missing: missing("a", "b", "c")}}},
			[]string{"Measure: Measure a.", "Measure: Measure b.", "Measure: Measure c."}},
		{"more to measure", report.Finding{Parts: []report.Part{{Missing: missing("a", "b", "c")}, {Missing: missing("a", "d", "e")}}},
			[]string{"Measure: Measure a.", "Measure: Measure b.", "Measure: Measure c.", "And 2 more things to be measured."}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff(tt.want, Why(&tt.f)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestWorstIsInReadingOrderOverAllFiles(t *testing.T) {
	run := &report.Run{Files: []report.FileReport{
		{Findings: []report.Finding{{Check: "a", Word: report.Caution, Outcome: report.NotMet}, {Check: "b", Word: report.Danger, Outcome: report.NotKnown}}},
		{Findings: []report.Finding{{Check: "c", Word: report.Danger, Outcome: report.NotMet}, {Check: "d", Word: report.Danger, Outcome: report.Within}}}}}
	var got []string
	for _, f := range Worst(run) {
		got = append(got, f.Check)
	}
	if diff := cmp.Diff([]string{"c", "a", "b"}, got); diff != "" {
		t.Error(diff)
	}
}
