package lineout

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/report"
)

func TestWrite(t *testing.T) {
	place := report.Place{File: "a b.json", Line: 3, Column: 7}
	run := &report.Run{Caution: []string{"Care."}, FailAt: report.Warning, Files: []report.FileReport{
		{File: "a b.json", Findings: []report.Finding{
			{Check: "cylinder.fill", Label: "cylinder \x1b[2J\nA", Word: report.Danger, Outcome: report.NotMet, Place: place, Waiver: &report.Waiver{State: report.WaiverInForce},
				Parts: []report.Part{{Outcome: report.NotMet, Found: report.Words("10 kg"), Needed: report.Words("9 kg")}}},
			{Check: "line.size", Label: "line x", Word: report.Caution, Outcome: report.NotKnown, Place: place,
				Parts: []report.Part{{Outcome: report.NotKnown, Missing: []report.Missing{{What: "how long it is", Place: place}}}}},
			{Check: "cylinder.upright", Label: "cylinder A", Word: report.Danger, Outcome: report.Within, Place: place},
			{Check: "alarm.gas", Word: report.Warning, Outcome: report.NotApplicable, Place: place}}},
		{File: "broken.json", Faults: []report.Fault{{Place: report.Place{File: "broken.json"}, What: "it is empty", Expected: "a layout"}}}}}
	var out bytes.Buffer
	if err := Write(&out, run); err != nil {
		t.Fatal(err)
	}
	got := strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n")
	want := []string{
		"Care.",
		"a b.json:3:7: DANGER: cylinder.fill, cylinder \ufffd[2J A: not met: found 10 kg, needed 9 kg (a waiver is written for it, in force)",
		"a b.json:3:7: CAUTION: line.size, line x: not known: how long it is",
		"broken.json: UNUSABLE: it is empty; expected a layout",
	}
	if diff := cmp.Diff(want, got[:len(got)-1]); diff != "" {
		t.Error(diff)
	}
	if last := got[len(got)-1]; !strings.HasPrefix(last, "Result of this file check: ") || !strings.Contains(last, "Keep the gas off") {
		t.Errorf("the last line is %q", last)
	}
}

type noRoom struct{}

func (noRoom) Write([]byte) (int, error) { return 0, errors.New("no room on the disk") }

func TestWriteTellsWhatWentWrong(t *testing.T) {
	if err := Write(noRoom{}, &report.Run{Caution: report.Cautions()}); err == nil || err.Error() != "no room on the disk" {
		t.Errorf("the error is %v", err)
	}
}
