package jsonout

import (
	"bytes"
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

func someRun() *report.Run {
	return &report.Run{Format: report.Format, Program: report.Program{Name: "lowvent", Version: "v1"}, On: "2026-11-25", FailAt: report.Warning,
		Caution: report.Cautions(), Status: 1, Files: []report.FileReport{{File: "<stdin>", Title: "Küche & <Gas>", Findings: []report.Finding{{
			Check: "locker.low-vent", Outcome: report.NotMet, Word: report.Danger,
			Parts: []report.Part{{Outcome: report.NotMet, Found: report.Quantity(unit.KindArea, 0.0021)}}}}}}}
}

func TestWriteCanBeReadBackWhole(t *testing.T) {
	var out bytes.Buffer
	if err := Write(&out, someRun()); err != nil {
		t.Fatal(err)
	}
	var back report.Run
	dec := json.NewDecoder(bytes.NewReader(out.Bytes()))
	dec.DisallowUnknownFields()
	if err := dec.Decode(&back); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(someRun(), &back); diff != "" {
		t.Errorf("what was read back differs (-written +read):\n%s", diff)
	}
}

func TestWriteIsMeantForReadingToo(t *testing.T) {
	var out bytes.Buffer
	if err := Write(&out, someRun()); err != nil {
		t.Fatal(err)
	}
	got := out.String()
	if !strings.HasSuffix(got, "}\n") || strings.HasSuffix(got, "\n\n") {
		t.Errorf("it does not end in one line break: %q", got[max(0, len(got)-10):])
	}
	for _, want := range []string{"\n  \"program\": {\n", `"Küche & <Gas>"`, `"file": "<stdin>"`, `"exitStatus": 1`} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing in:\n%s", want, got)
		}
	}
}

type noRoom struct{}

func (noRoom) Write([]byte) (int, error) { return 0, errors.New("no room on the disk") }

func TestWriteTellsWhatWentWrong(t *testing.T) {
	if err := Write(noRoom{}, someRun()); err == nil {
		t.Error("an error of the writer was lost")
	}
	run := someRun()
	run.Files[0].Findings[0].Parts[0].Found.SI = new(float64)
	*run.Files[0].Findings[0].Parts[0].Found.SI = math.NaN()
	if err := Write(&bytes.Buffer{}, run); err == nil {
		t.Error("a number that JSON can't hold was written as something else")
	}
}
