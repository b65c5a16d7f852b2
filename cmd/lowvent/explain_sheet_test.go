package main

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/cmd/lowvent/internal/render/calcsheet"
	"lowvent.example/gas/solve/physicstest"
	"lowvent.example/schema/check"
	"lowvent.example/schema/report"
)

// forms is one working in all its forms.
type forms struct {
	run  report.Run
	html *node
	csv  []map[string]string
}

// TestSheets takes both faces of the demonstration, with the working of every check and
// figure. They are judged in one run and written on one sheet, which takes far less time
// than one by one; TestSheetsOfOneCheck holds that the command does the same.
func TestSheets(t *testing.T) {
	for _, layout := range []string{"sorrel.json", "sorrel-faulty.json"} {
		t.Run(layout, func(t *testing.T) {
			t.Parallel()
			f := allForms(t, filepath.Join("..", "..", "testdata", "layouts", layout))
			for name, hold := range map[string]func(*testing.T, *forms){
				"the working, to reckon again": holdTheWorking, "what every report says": holdTheWords,
				"what was compared": holdWhatWasCompared, "courses": holdCourses,
			} {
				t.Run(name, func(t *testing.T) { hold(t, f) })
			}
		})
	}
}

func allForms(t *testing.T, layout string) *forms {
	t.Helper()
	a, _, _ := bench(nil)
	j := judging{set: a.set(), failAt: report.Warning, options: check.Options{On: a.today(), Working: true, Workers: 2}}
	run := a.reportOf(j, j.all(t.Context(), []input{read(layout)}))
	if len(run.Files[0].Findings) < 100 || len(run.Files[0].Figures) < 30 {
		t.Fatalf("only %d findings and %d figures", len(run.Files[0].Findings), len(run.Files[0].Figures))
	}
	var page, table bytes.Buffer
	if err := errors.Join(calcsheet.HTML(&page, run), calcsheet.CSV(&table, run)); err != nil {
		t.Fatal(err)
	}
	return &forms{*run, wellFormed(t, page.String()), recordsOf(t, table.String())}
}

// recordsOf reads a table after RFC 4180 and takes the guards off its texts.
func recordsOf(t *testing.T, text string) []map[string]string {
	t.Helper()
	if strings.Count(text, "\n") != strings.Count(text, "\r\n") || !strings.HasSuffix(text, "\r\n") {
		t.Fatal("a line of the table does not end in CR LF")
	}
	all, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(calcsheet.Columns(), all[0]); diff != "" {
		t.Fatal(diff)
	}
	var records []map[string]string
	for _, cells := range all[1:] {
		record := map[string]string{}
		for i, column := range all[0] {
			record[column] = strings.TrimPrefix(cells[i], "'")
		}
		records = append(records, record)
	}
	return records
}

// working is one table of lines, whatever form it was in.
type working struct {
	of    string // the check or figure, its subject and its clause
	lines []lineShown
}

type lineShown struct {
	role, symbol, what, formula, valid, source, value, pointer string
	si, low, high                                              string
	line, column                                               int
}

// workingsOf are the workings of the JSON form, with numbers written by a function.
func workingsOf(r *report.Run, write func(float64) string) []working {
	var all []working
	for _, f := range r.Files[0].Findings {
		for i, p := range f.Parts {
			all = append(all, working{fmt.Sprint(f.Check, f.Subject, " ", i+1), linesOf(p.Working, write)})
		}
	}
	for _, f := range r.Files[0].Figures {
		all = append(all, working{f.ID + f.Subject + " ", linesOf(f.Working, write)})
	}
	return slices.DeleteFunc(all, func(w working) bool { return len(w.lines) == 0 })
}

func linesOf(lines []report.Line, write func(float64) string) []lineShown {
	var all []lineShown
	for _, l := range lines {
		s := lineShown{role: l.Role, symbol: l.Symbol, what: flat(l.What), formula: flat(l.Formula), valid: flat(l.Valid), source: flat(l.Source)}
		if l.Value != nil {
			s.value = flat(l.Value.Text)
			for to, si := range map[*string]*float64{&s.si: l.Value.SI, &s.low: l.Value.Low, &s.high: l.Value.High} {
				if si != nil {
					*to = write(*si)
				}
			}
		}
		if l.Place != nil {
			s.pointer, s.line, s.column = l.Place.Pointer, l.Place.Line, l.Place.Column
		}
		all = append(all, s)
	}
	return all
}

func exactly(x float64) string      { return strconv.FormatFloat(x, 'g', -1, 64) }
func twelveDigits(x float64) string { return strconv.FormatFloat(x, 'g', 12, 64) }

// lineRoles are the roles of lines of a working, as opposed to what stands around them.
var lineRoles = []string{"read", "limit", "figure", "step", "constant"}

func workingsInCSV(t *testing.T, records []map[string]string) []working {
	t.Helper()
	var all []working
	for _, r := range records {
		if !slices.Contains(lineRoles, r["role"]) {
			continue
		}
		of := r["check"] + r["subject"] + " " + r["clause"]
		if len(all) == 0 || all[len(all)-1].of != of {
			all = append(all, working{of: of})
		}
		s := lineShown{role: r["role"], symbol: r["symbol"], what: flat(r["what"]), formula: flat(r["formula"]), valid: flat(r["valid"]), source: flat(r["source"]),
			value: flat(r["value"]), pointer: r["pointer"], si: r["si_value"], low: r["si_low"], high: r["si_high"]}
		if r["line"] != "" {
			s.line, s.column = whole(t, r["line"]), whole(t, r["column"])
		}
		all[len(all)-1].lines = append(all[len(all)-1].lines, s)
	}
	return all
}

func whole(t *testing.T, s string) int {
	t.Helper()
	n, err := strconv.Atoi(s)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// reckonAgain evaluates each formula of a working by the numbers that are shown, and
// counts them.
func reckonAgain(t *testing.T, w working, tolerance float64) (reckoned int) {
	t.Helper()
	symbols := map[string]float64{}
	for i, l := range w.lines {
		si, err := strconv.ParseFloat(l.si, 64)
		if l.si != "" && err != nil {
			t.Fatalf("%s, line %d: %v", w.of, i+1, err)
		}
		if l.formula != "" {
			reckoned++
			symbol, value, err := physicstest.Evaluate(l.formula, symbols)
			if off := max(value-si, si-value); err != nil || symbol != l.symbol || !(off <= tolerance*max(value, -value, si, -si)) {
				t.Errorf("%s, line %d: %s gives %s = %v, shown is %s = %v (%v)", w.of, i+1, l.formula, symbol, value, l.symbol, l.si, err)
			}
		}
		if l.symbol != "" && l.si != "" {
			symbols[l.symbol] = si
		}
	}
	return reckoned
}

// holdTheWorking: every line of the JSON form stands in
// the page and in the table, in the same order, and the numbers that they show give the
// results that they show. The page has twelve digits, of which a formula may lose half.
func holdTheWorking(t *testing.T, f *forms) {
	options := cmp.AllowUnexported(working{}, lineShown{})
	inCSV, inHTML := workingsInCSV(t, f.csv), workingsInHTML(t, f.html)
	if diff := cmp.Diff(workingsOf(&f.run, exactly), inCSV, options); diff != "" {
		t.Errorf("csv (-json +csv):\n%s", diff)
	}
	want := workingsOf(&f.run, twelveDigits)
	for i := range want {
		want[i].of = ""
	}
	if diff := cmp.Diff(want, inHTML, options); diff != "" {
		t.Errorf("html (-json +html):\n%s", diff)
	}
	inTable, onPage := 0, 0
	for i := range inCSV {
		inTable += reckonAgain(t, inCSV[i], 1e-9)
	}
	for i := range inHTML {
		onPage += reckonAgain(t, inHTML[i], 1e-6)
	}
	if inTable != onPage || inTable < 1000 {
		t.Errorf("%d formulas were reckoned in the table, %d on the page", inTable, onPage)
	}
}
