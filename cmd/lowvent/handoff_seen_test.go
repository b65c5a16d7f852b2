//go:build seen

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/browser"
	"lowvent.example/cmd/lowvent/internal/letter"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/check"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// handedOver is the papers of one layout, as the command wrote them, with the report that
// they tell of.
type handedOver struct {
	data      []byte // of the layout
	html, pdf []byte
	report    *report.FileReport
	page      *browser.Page // the HTML as a browser shows it
}

// TestSeenHandoff looks at the papers of each demonstration as their readers do.
func TestSeenHandoff(t *testing.T) {
	b := browser.Start(t)
	for _, name := range []string{"../../testdata/layouts/sorrel.json", "../../testdata/layouts/sorrel-faulty.json", "../../testdata/layouts/teal.json",
		"testdata/layouts/willow.json", "testdata/layouts/sedge.json"} {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".json"), func(t *testing.T) {
			h := handOver(t, b, name)
			t.Run("html tells all", func(t *testing.T) { tellsAll(t, h.report, packed(shownBy(t, h.page)), text.Clean) })
			t.Run("pdf tells all", func(t *testing.T) {
				tellsAll(t, h.report, packed(browser.Poppler(t, "pdftotext", h.pdf, "-raw", "-")), letter.Printable)
			})
			t.Run("pdf is whole", func(t *testing.T) { pdfIsWhole(t, h) })
			t.Run("same bytes again", func(t *testing.T) { sameAgain(t, h, name) })
			t.Run("screens", func(t *testing.T) { onScreens(t, h.page, 1200, 400) })
			t.Run("to scale", func(t *testing.T) { spansToScale(t, h) })
			t.Run("labels", func(t *testing.T) { labelsApart(t, h.page) })
			t.Run("printed", func(t *testing.T) { handoffPrinted(t, h) })
		})
	}
}

func handOver(t *testing.T, b *browser.Browser, name string) *handedOver {
	t.Helper()
	h := &handedOver{report: judged(t, name)}
	h.html, h.pdf = papers(t, name)
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	h.data, h.page = data, b.Open(t, h.html, 1200)
	keep(t, filepath.Base(name)+".pdf", h.pdf)
	return h
}

// papers runs the command.
func papers(t *testing.T, name string) (html, pdf []byte) {
	t.Helper()
	folder := t.TempDir()
	at := func(form string) string { return filepath.Join(folder, "paper."+form) }
	if out := run(nil, "handoff", name, "--on", "2026-11-25", "--out", "html="+at("html"), "--out", "pdf="+at("pdf")); out.status != statusNothing {
		t.Fatalf("status %d: %s", out.status, out.stderr)
	}
	var both [2][]byte
	for i, form := range []string{"html", "pdf"} {
		data, err := os.ReadFile(at(form))
		if err != nil {
			t.Fatal(err)
		}
		both[i] = data
	}
	return both[0], both[1]
}

// judged is the report that the command makes its papers from, with every figure.
func judged(t *testing.T, name string) *report.FileReport {
	t.Helper()
	a, _, _ := bench(nil)
	books, _, _, err := a.books(bookFlags{})
	if err != nil {
		t.Fatal(err)
	}
	in, err := a.oneInput(name)
	if err != nil {
		t.Fatal(err)
	}
	j := judging{set: a.set(), books: books, failAt: report.Warning, options: check.Options{On: unit.Date{Year: 2026, Month: 11, Day: 25}, Workers: 1, Working: true}}
	r := j.one(t.Context(), in)
	if len(r.Findings) < 100 || len(r.Figures) < 10 {
		t.Fatalf("%d findings, %d figures: the test says little", len(r.Findings), len(r.Figures))
	}
	return &r
}

// shownBy is the text of all that the browser built from the page.
func shownBy(t *testing.T, p *browser.Page) string {
	t.Helper()
	var all string
	p.Eval("document.body.textContent", &all)
	return all
}

// packed is a text without white space: lines break where a column or a page ends.
func packed(s string) string { return strings.Join(strings.Fields(s), "") }

// tellsAll: every finding stands in the paper's text with its check and its thing, and
// every figure with its title, its thing and its value.
func tellsAll(t *testing.T, r *report.FileReport, paper string, letters func(string) string) {
	t.Helper()
	wants := append(findingRows(r), figureRows(r)...)
	for _, want := range wants {
		if !strings.Contains(paper, packed(letters(want))) {
			t.Errorf("the paper lacks %q", want)
		}
	}
}

// findingRows is how each finding is named: by its number and its thing under the question
// that it asks, by its number and its check beside what is to be measured for it, in its
// row, or in that of its check where the questions have no answer.
func findingRows(r *report.FileReport) (rows []string) {
	type key struct{ check, why string }
	alike, order := map[key][]string{}, []key{}
	n := 0
	for _, f := range r.Findings { // not met first, then not known
		switch f.Outcome {
		case report.NotMet:
			n++
			rows = append(rows, fmt.Sprintf("%d %s", n, f.Label), "check"+f.Check)
		case report.NotKnown:
			n++
			rows = append(rows, fmt.Sprintf("%d %s, %s", n, f.Check, f.Label))
		case report.Within:
			rows = append(rows, f.Check+f.Label)
		default:
			k := key{f.Check, string(f.Reason)}
			if f.Reason == report.NoSubject || f.Reason == report.RuleExempts {
				k.why = "does not arise"
			}
			if alike[k] == nil {
				order = append(order, k)
			}
			alike[k] = append(alike[k], f.Label)
		}
	}
	for _, k := range order {
		rows = append(rows, k.check+strings.Join(alike[k], ", "))
	}
	return rows
}

func figureRows(r *report.FileReport) (rows []string) {
	for _, f := range r.Figures {
		row := f.Title + f.Label
		if f.Value != nil && (f.ID == "line.least-bore" || f.ID == "line.least-size") { // in the row of its line
			rows = append(rows, f.Value.Text)
			continue
		}
		switch {
		case f.Value != nil:
			row += f.Value.Text
		case f.Course == nil:
			row += "missing"
		}
		rows = append(rows, row)
	}
	return rows
}

// keep puts a file where somebody wants to look at it.
func keep(t *testing.T, name string, data []byte) {
	t.Helper()
	folder := os.Getenv("SEEN")
	if folder == "" {
		return
	}
	if err := os.WriteFile(filepath.Join(folder, name), data, 0o600); err != nil {
		t.Fatal(err)
	}
}
