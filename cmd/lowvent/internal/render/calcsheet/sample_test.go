package calcsheet

import (
	"bytes"
	"encoding/csv"
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// sample is a run in which every text that a file or a code could bring is drawn by a
// function.
func sample(draw func() string) *report.Run {
	si, low, high := -0.018, -0.02, 0.016
	place := report.Place{File: draw(), Line: 3, Column: 7, Pointer: draw()}
	amount := &report.Amount{Kind: "length", SI: &si, Low: &low, High: &high, Unit: "m", Text: draw()}
	missing := []report.Missing{{What: draw(), Measure: draw(), Place: place}}
	lines := []report.Line{
		{Role: "read", Symbol: draw(), What: place.Pointer, Value: amount, Place: &place},
		{Role: "step", Symbol: draw(), What: draw(), Formula: draw(), Valid: draw(), Source: draw(), Value: amount},
		{Role: "limit", What: draw(), Value: report.Words(draw())},
	}
	return &report.Run{Program: report.Program{Name: "lowvent", Version: draw()}, On: "2026-11-25", Caution: report.Cautions(), Files: []report.FileReport{{
		File: draw(), Title: draw(), SHA256: "0123456789abcdef", Gas: draw(), Code: &report.Code{ID: draw(), Title: draw(), Edition: draw(), Borrowed: draw(), File: draw()},
		Overlay: &report.Overlay{Title: draw()},
		Findings: []report.Finding{{Check: "locker.low-vent", Asks: draw(), Why: draw(), Subject: draw(), Label: draw(), Outcome: report.NotMet, Word: report.Danger, MayAct: report.LicensedFitter,
			Place: place, Waiver: &report.Waiver{Reason: draw(), State: report.WaiverInForce, Place: place},
			Parts: []report.Part{{Outcome: report.NotMet, About: draw(), Text: draw(), Found: amount, Needed: amount, Short: amount, Place: place, Missing: missing, Working: lines,
				Inputs: []report.Input{{Pointer: place.Pointer, Basis: "measured"}},
				Source: &report.Source{Document: draw(), Clause: draw(), Edition: draw(), Address: draw(), Rule: draw(), Note: draw(), Provenance: "read"}}}}},
		Figures: []report.Figure{{ID: "regulator.cold-course", Title: draw(), Subject: draw(), Label: draw(), Note: draw(), Missing: missing, Working: lines,
			Course: &report.Course{Across: report.Axis{Title: draw(), Kind: "duration"}, Up: report.Axis{Title: draw(), Kind: "temperature"},
				Points: [][2]float64{{0, 270}, {3600, 265}, {7200, 268}}}}},
	}}}
}

// hostile draws texts that a file could bring to break out of a cell, a tag or a style.
func hostile(t *rapid.T) func() string {
	pieces := []string{"<script>alert(1)</script>", "</style>", "</table>", "]]>", "<!--", "-->", "&amp;", "&", "\"", "'", "`", ",", ";", "=1+1", "+1", "-1", "@SUM(A1)",
		"\r\n", "\n", "\t", "\x00", "\x1b[2J", "\u202e", "\ufffe", "\uffff", "\xff", "javascript:alert(1)", "http://example.org/", "＝1", "{{.}}", "a", " ", "漢", "é", "𝄞"}
	return func() string {
		return strings.Join(rapid.SliceOfN(rapid.SampledFrom(pieces), 0, 4).Draw(t, "text"), "")
	}
}

func plainly() func() string {
	return func() string { return "plain" }
}

func rowsOf(t interface {
	Fatal(...any)
	Fatalf(string, ...any)
}, run *report.Run) []row {
	var out bytes.Buffer
	if err := CSV(&out, run); err != nil {
		t.Fatal(err)
	}
	if text := out.String(); strings.Count(text, "\r\n") != strings.Count(text, "\n") || strings.Count(text, "\r") != strings.Count(text, "\n") {
		t.Fatalf("an end of a line that is not CR LF: %q", text)
	}
	all, err := csv.NewReader(&out).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []row
	for _, cells := range all[1:] {
		r := row{}
		for i, column := range Columns() {
			r[column] = cells[i]
		}
		rows = append(rows, r)
	}
	return rows
}

type noRoom struct{}

func (noRoom) Write([]byte) (int, error) { return 0, errors.New("no room on the disk") }

func TestFormsTellWhatWentWrong(t *testing.T) {
	for name, err := range map[string]error{"html": HTML(noRoom{}, sample(plainly())), "csv": CSV(noRoom{}, sample(plainly()))} {
		if err == nil || !strings.Contains(err.Error(), "no room on the disk") {
			t.Errorf("%s: the error is %v", name, err)
		}
	}
}

func TestKindOf(t *testing.T) {
	for _, k := range unit.Kinds() {
		if kindOf(k.String()) != k {
			t.Errorf("%s is not found by its name", k)
		}
	}
	if kindOf("words") != 0 {
		t.Error("words are no kind")
	}
}
