package calcsheet

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

func TestGuard(t *testing.T) {
	for s, want := range map[string]string{
		"": "", "a": "a", "a=b": "a=b", "-2 degC (28.4 degF)": "'-2 degC (28.4 degF)", "=1+1": "'=1+1", "+1": "'+1", "@A1": "'@A1",
		"  =1": "'  =1", "'quoted'": "''quoted'", "＝1": "'＝1", "−1": "'−1", " a": " a", "1 - 2": "1 - 2",
	} {
		if got := guard(s); got != want {
			t.Errorf("guard(%q) = %q, want %q", s, got, want)
		}
	}
}

// TestGuardCanBeTakenOff: no guarded text begins like a formula, and taking one
// apostrophe away gives the text back.
func TestGuardCanBeTakenOff(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringOf(rapid.SampledFrom([]rune("=+-@'＝＋－＠− \u00a0a1"))).Draw(t, "s")
		got := guard(s)
		if first := strings.TrimSpace(got); first != "" && strings.ContainsRune("=+-@＝＋－＠−", []rune(first)[0]) {
			t.Fatalf("%q is no guard of %q", got, s)
		}
		if strings.TrimPrefix(got, "'") != s {
			t.Fatalf("%q can't be had back from %q", s, got)
		}
	})
}

// TestCSVHoldsAnyText: whatever the texts, the table can be read, each cell holds a
// number, nothing, or a text that no spreadsheet takes for a formula.
func TestCSVHoldsAnyText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run := sample(hostile(t))
		rows := rowsOf(t, run)
		for _, r := range rows {
			for column, s := range r {
				if slices.Contains(numbers, column) {
					if _, err := strconv.ParseFloat(s, 64); s != "" && err != nil {
						t.Fatalf("%s holds %q", column, s)
					}
					continue
				}
				if strings.ContainsAny(strings.TrimLeft(s, " ")[:min(1, len(strings.TrimLeft(s, " ")))], "=+-@\t\r\n\x00") {
					t.Fatalf("%s holds %q", column, s)
				}
			}
		}
		formula := run.Files[0].Findings[0].Parts[0].Working[1].Formula
		if i := slices.IndexFunc(rows, func(r row) bool { return r["role"] == "step" }); rows[i]["formula"] != guard(clean(formula)) {
			t.Fatalf("the formula %q became %q", formula, rows[i]["formula"])
		}
	})
}

func TestCSVRows(t *testing.T) {
	rows := rowsOf(t, sample(plainly()))
	var roles []string
	for _, r := range rows {
		if r["role"] != "head" {
			roles = append(roles, r["role"])
		}
	}
	want := []string{"caution", "caution", "question", "waiver", "answer", "rule", "found", "needed", "short", "missing", "read", "step", "limit",
		"result", "missing", "read", "step", "limit", "course", "course", "course", "keep-off"}
	if diff := cmp.Diff(want, roles); diff != "" {
		t.Fatal(diff)
	}
	read := rows[slices.IndexFunc(rows, func(r row) bool { return r["role"] == "read" })]
	wanted := row{"check": "locker.low-vent", "clause": "1", "outcome": "not-met", "si_value": "-0.018", "si_low": "-0.02", "si_high": "0.016", "si_unit": "m",
		"basis": "measured", "line": "3", "column": "7"}
	for column, text := range wanted {
		if read[column] != text {
			t.Errorf("%s is %q, want %q", column, read[column], text)
		}
	}
	course := rows[slices.IndexFunc(rows, func(r row) bool { return r["point"] == "2" })]
	wanted = row{"check": "regulator.cold-course", "role": "course", "across_si": "3600", "across_unit": "s", "si_value": "265", "si_unit": "K", "value": "'-8.2 degC (17.3 degF)"}
	for column, text := range wanted {
		if course[column] != text {
			t.Errorf("%s is %q, want %q", column, course[column], text)
		}
	}
}

// TestCSVOfFaults: what makes a file unusable is told with its place.
func TestCSVOfFaults(t *testing.T) {
	run := &report.Run{Caution: report.Cautions(), Files: []report.FileReport{{File: "x.json", Faults: []report.Fault{
		{Place: report.Place{File: "x.json"}, What: "it is empty", Expected: "a layout", Mend: "write one"}}}}}
	rows := rowsOf(t, run)
	at := slices.IndexFunc(rows, func(r row) bool { return r["role"] == "fault" })
	if at < 0 || rows[at]["what"] != "it is empty" || rows[at]["valid"] != "a layout" || rows[at]["value"] != "write one" || rows[at]["file"] != "x.json" || rows[at]["line"] != "" {
		t.Errorf("%v", rows)
	}
	for _, r := range rows {
		if strings.Contains(r["what"], "code") && r["role"] == "head" {
			t.Errorf("a file that was not judged has a code: %v", r)
		}
	}
}

func TestCleanHoldsWhatBothFormsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		got := clean(hostile(t)())
		if strings.ContainsAny(got, "\x00\x1b\n\r\t\ufffe\uffff\u202e") || text.Clean(got) != got {
			t.Fatalf("%q", got)
		}
	})
}
