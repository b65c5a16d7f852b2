package main

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"lowvent.example/schema/code"
)

// TestDocsRequirements holds docs/requirements.md against the table of published
// requirements and the books, and that no row of it has fallen silent: each is a limit
// of some book, or is listed with the reason why it is none.
func TestDocsRequirements(t *testing.T) {
	rows, without := table(t, "requirements.csv"), table(t, "rows_without_entry.csv")
	limits := limitsByRow()
	for _, row := range rows[1:] {
		if len(limits[row[0]]) == 0 && !slices.ContainsFunc(without, func(r []string) bool { return r[0] == row[0] }) {
			t.Errorf("row %s, %s, is no limit and not said to be none", row[0], row[2])
		}
	}
	fresh(t, "docs/requirements.md", requirementsDoc(rows[1:], without[1:], limits))
}

func table(t *testing.T, name string) [][]string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(moduleTop(t), "schema", "code", "testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// limitsByRow gives the limits that were taken from each row: "code: term".
func limitsByRow() map[string][]string {
	limits := map[string][]string{}
	for _, p := range code.Profiles() {
		for _, e := range p.Entries {
			if e.Row != "" {
				limits[e.Row] = append(limits[e.Row], p.ID+": `"+e.Term+"`")
			}
		}
	}
	return limits
}

func requirementsDoc(rows, without [][]string, limits map[string][]string) string {
	reasons := map[string][]string{}
	for _, r := range without {
		reasons[r[0]] = r[1:]
	}
	m := &markdown{}
	m.para("# What became of each published requirement")
	m.WriteString(made)
	m.para("The requirements that were collected from published codes, in words of our own, and what this program makes of each: a limit of a code, or none, with the reason. How each is known is said as it was collected; [codes.md](codes.md) tells the limits themselves. Where two texts disagree, that is said too, and nothing is made of it: a code is a body of figures that were weighed against each other, so a figure of one is never mixed into another, not even the stricter.")
	count := map[string]int{}
	for _, row := range rows {
		switch r, none := reasons[row[0]]; {
		case len(limits[row[0]]) > 0:
			count["a limit"]++
		case none:
			count[r[0]]++
		}
	}
	m.line("| of the %d rows | so many |", len(rows))
	m.line("|---|---|")
	for _, kind := range []string{"a limit", "fitter's question", "computed", "compared", "no text", "no limit"} {
		m.line("| %s | %d |", kind, count[kind])
	}
	m.para("\n*No text* means that only fragments of a document were seen, so no code is offered for it; *compared*, that two texts were held against each other and nothing more; *computed*, that it is a matter of a figure and not of a limit.")
	topic := ""
	for _, row := range rows {
		if row[1] != topic {
			topic = row[1]
			m.para("\n## %s", topic)
			m.line("| row | text | known | here | disagrees |")
			m.line("|---|---|---|---|---|")
		}
		here := strings.Join(limits[row[0]], "; ")
		if here == "" {
			here = strings.Join(reasons[row[0]], ": ")
		}
		m.line("| %s | %s | %s | %s | %s |", row[0], cell(row[2]), row[6], cell(here), cell(row[7]))
	}
	return strings.TrimRight(m.String(), "\n") + "\n"
}
