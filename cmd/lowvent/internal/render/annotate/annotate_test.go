package annotate

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/render/rendertest"
	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

func written(t interface {
	Helper()
	Fatal(...any)
}, r *report.Run) []string {
	t.Helper()
	var out bytes.Buffer
	if err := Write(&out, r); err != nil {
		t.Fatal(err)
	}
	return strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n")
}

func TestWrite(t *testing.T) {
	place := report.Place{File: "a, b:100%.json", Line: 3, Column: 7, EndLine: 3, EndColumn: 9}
	wide := place
	wide.EndLine = 5
	got := written(t, &report.Run{Caution: []string{"Care."}, FailAt: report.Warning, Files: []report.FileReport{
		{File: "a, b:100%.json", Findings: []report.Finding{
			{Check: "line.size", Label: "line x", Word: report.Notice, Outcome: report.NotMet, Place: wide},
			{Check: "cylinder.fill", Label: "cylinder A", Word: report.Danger, Outcome: report.NotMet, Place: place, MayAct: report.LicensedFitter,
				Parts: []report.Part{{Outcome: report.NotMet, Found: report.Words("100 %"), Needed: report.Words("80 %")}}},
			{Check: "alarm.gas", Label: "space c", Word: report.Caution, Outcome: report.NotKnown, Place: report.Place{File: "<stdin>", Line: 2}},
			{Check: "cylinder.upright", Word: report.Danger, Outcome: report.Within, Place: place}}},
		{File: "broken.json", Faults: []report.Fault{{Place: report.Place{File: "broken.json"}, What: "it is\nempty"}}}}})
	want := []string{
		"Care.",
		"::error file=broken.json,title=UNUSABLE::it is empty",
		"::error file=a%2C b%3A100%25.json,line=3,endLine=3,col=7,title=DANGER cylinder.fill%2C cylinder A::not met: found 100 %25, needed 80 %25. May act: licensed gas fitter.",
		"::warning title=CAUTION alarm.gas%2C space c::not known.",
		"::notice file=a%2C b%3A100%25.json,line=3,endLine=5,title=NOTICE line.size%2C line x::not met.",
		"::notice title=lowvent%3A file check%2C not inspection::Result of this file check: 2 files, of which 1 can't be used and 0 have findings at WARNING or above. " + report.KeepOff,
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// TestNoMoreThanAreShown: at most ten of a kind, the worst of them, and the rest counted.
func TestNoMoreThanAreShown(t *testing.T) {
	f := report.FileReport{File: "x.json", Faults: []report.Fault{{What: "a fault"}}}
	for i := range 12 {
		for _, w := range report.Signals() {
			f.Findings = append(f.Findings, report.Finding{Check: fmt.Sprintf("a.%02d", i), Word: w, Outcome: report.NotMet})
		}
	}
	got := written(t, &report.Run{FailAt: report.Warning, Files: []report.FileReport{f}})
	kinds := map[string][]string{}
	for _, line := range got {
		c, _, _ := read(line)
		kinds[c.name] = append(kinds[c.name], c.properties["title"])
	}
	if len(kinds["error"]) != 10 || len(kinds["warning"]) != 10 || len(kinds["notice"]) != 10 {
		t.Errorf("%v", kinds)
	}
	if kinds["error"][0] != "UNUSABLE" || kinds["error"][1] != "DANGER a.00," || kinds["error"][9] != "DANGER a.08," {
		t.Errorf("the worst are not first: %q", kinds["error"])
	}
	last := got[len(got)-1]
	if !strings.Contains(last, "Not shown beside the file: 15 errors, 2 warnings, 3 notices, for") || !strings.HasSuffix(last, report.KeepOff) {
		t.Errorf("the last line is %q", last)
	}
}

// TestNothingOfAFileBecomesACommand: whatever the report holds, each line is one that
// this package meant, a runner reads back from it what was told, and none is lost uncounted.
func TestNothingOfAFileBecomesACommand(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rendertest.Run().Draw(t, "run")
		lines := written(t, r)
		n := map[string]int{}
		for i, line := range lines {
			c, old, is := read(line)
			if old || is != (i >= len(report.Cautions())) {
				t.Fatalf("line %d is read as a command, or is not: %q", i, line)
			}
			if line != text.Clean(line) {
				t.Fatalf("%q can steer a terminal", line)
			}
			n[c.name]++
			for key := range c.properties {
				if !strings.Contains(" file line endLine col title ", " "+key+" ") {
					t.Fatalf("%q has a property %q", line, key)
				}
			}
		}
		if n["error"]+n["warning"]+n["notice"]+n[""] != len(lines) || max(n["error"], n["warning"], n["notice"]) > mostOfAKind {
			t.Fatalf("%v in\n%s", n, strings.Join(lines, "\n"))
		}
		faults := 0
		for i := range r.Files {
			faults += len(r.Files[i].Faults)
		}
		told := n["error"] + n["warning"] + n["notice"] - 1
		if left := len(saying.Worst(r)) + faults - told; left != notShown(t, lines[len(lines)-1]) {
			t.Fatalf("%d are left out, and the last line says %q", left, lines[len(lines)-1])
		}
	})
}

// notShown adds up what the last line counts.
func notShown(t *rapid.T, line string) int {
	_, words, is := strings.Cut(line, "Not shown beside the file: ")
	if !is {
		return 0
	}
	words, _, _ = strings.Cut(words, ", for which")
	sum := 0
	for _, each := range strings.Split(words, ", ") {
		n, err := strconv.Atoi(strings.Fields(each)[0])
		if err != nil {
			t.Fatal(err)
		}
		sum += n
	}
	return sum
}

// FuzzPlace: a runner reads the name of any file back as it is, but for what could steer
// a terminal.
func FuzzPlace(f *testing.F) {
	for _, each := range rendertest.Hostile() {
		f.Add(each + ".json")
	}
	f.Fuzz(func(t *testing.T, file string) {
		if strings.TrimSpace(file) != file || strings.ContainsAny(file, "\ue000\ue001") || file == saying.StandardInput {
			return // a property loses its outer space, which no escape can keep; the rest is for this test's own marks, and what is no file
		}
		c, _, is := read("::error " + where(report.Place{File: file, Line: 1, EndLine: 2}) + "title=x::y")
		want := text.Clean(strings.NewReplacer("\r", "\ue000", "\n", "\ue001").Replace(file))
		want = strings.NewReplacer("\ue000", "\r", "\ue001", "\n").Replace(want)
		if !is || c.properties["file"] != want || c.properties["title"] != "x" || c.data != "y" {
			t.Errorf("%q is read as %+v", file, c)
		}
	})
}

type noRoom struct{}

func (noRoom) Write([]byte) (int, error) { return 0, errors.New("no room on the disk") }

func TestWriteTellsWhatWentWrong(t *testing.T) {
	if err := Write(noRoom{}, &report.Run{Caution: report.Cautions()}); err == nil || err.Error() != "no room on the disk" {
		t.Errorf("the error is %v", err)
	}
}
