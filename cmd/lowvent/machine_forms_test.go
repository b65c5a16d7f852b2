package main

import (
	"encoding/json"
	"encoding/xml"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/report"
)

// demos are all layouts that the module brings to show something, the broken one included.
func demos(t *testing.T) []string {
	t.Helper()
	var all []string
	for _, folder := range []string{"../../testdata/layouts", "testdata/layouts"} {
		found, err := filepath.Glob(folder + "/*.json")
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, found...)
	}
	if len(all) < 7 {
		t.Fatalf("there are only %q", all)
	}
	return all
}

// inForm checks the layouts and gives the report in a form, and as the JSON form has it.
func inForm(t *testing.T, form string, args ...string) (outcome, report.Run) {
	t.Helper()
	args = append([]string{"check", "--on", "2026-11-25", "--format"}, append([]string{form}, args...)...)
	got := run(nil, args...)
	args[4] = "json"
	given := run(nil, args...)
	var r report.Run
	if err := json.Unmarshal([]byte(given.stdout), &r); err != nil || got.status != given.status {
		t.Fatalf("%v, status %d and %d", err, got.status, given.status)
	}
	return got, r
}

// findings lists what of a report is to be told, each as words.
func findings(r *report.Run, as func(*report.Finding) []string) (all [][]string) {
	for i := range r.Files {
		for j := range r.Files[i].Findings {
			if f := &r.Files[i].Findings[j]; f.Outcome == report.NotMet || f.Outcome == report.NotKnown {
				all = append(all, as(f))
			}
		}
	}
	return all
}

func TestSarifHasTheFindings(t *testing.T) {
	got, r := inForm(t, "sarif", demos(t)...)
	var log struct {
		Runs []struct {
			Tool struct {
				Driver struct{ Rules []struct{ ID string } }
			}
			Results []struct {
				RuleID, Kind, Level string
				Locations           []struct {
					PhysicalLocation struct {
						ArtifactLocation struct{ URI string }
						Region           struct{ StartLine, StartColumn, EndLine, EndColumn int }
					}
				}
				Properties *struct{ SignalWord, Subject string }
			}
		}
	}
	if err := json.Unmarshal([]byte(got.stdout), &log); err != nil {
		t.Fatal(err)
	}
	levels := map[report.Signal]string{report.Danger: "error", report.Warning: "error", report.Caution: "warning", report.Notice: "note"}
	want := findings(&r, func(f *report.Finding) []string {
		kind, level := "fail", levels[f.Word]
		if f.Outcome == report.NotKnown {
			kind, level = "open", "none"
		}
		return []string{f.Check, f.Subject, string(f.Word), kind, level, f.Place.File, strconv.Itoa(f.Place.Line), strconv.Itoa(f.Place.Column), strconv.Itoa(f.Place.EndLine), strconv.Itoa(f.Place.EndColumn)}
	})
	var have [][]string
	others := map[string]int{}
	for _, each := range log.Runs[0].Results {
		if each.Properties == nil {
			others[each.RuleID]++
			continue
		}
		p := each.Locations[0].PhysicalLocation
		have = append(have, []string{each.RuleID, each.Properties.Subject, each.Properties.SignalWord, each.Kind, each.Level, p.ArtifactLocation.URI,
			strconv.Itoa(p.Region.StartLine), strconv.Itoa(p.Region.StartColumn), strconv.Itoa(p.Region.EndLine), strconv.Itoa(p.Region.EndColumn)})
	}
	if diff := cmp.Diff(want, have); diff != "" || len(have) < 100 {
		t.Errorf("%d results (-json +sarif):\n%s", len(have), diff)
	}
	if diff := cmp.Diff(map[string]int{"file.unusable": faults(&r), "file.not-known": 2}, others); diff != "" {
		t.Errorf("results of files as a whole (-want +got):\n%s", diff)
	}
	var ids []string
	for _, each := range log.Runs[0].Tool.Driver.Rules {
		ids = append(ids, each.ID)
	}
	if diff := cmp.Diff(checkIDs(&r, "file.not-known", "file.unusable"), ids); diff != "" {
		t.Errorf("rules (-checks +sarif):\n%s", diff)
	}
}

func faults(r *report.Run) (n int) {
	for i := range r.Files {
		n += len(r.Files[i].Faults)
	}
	return n
}

// checkIDs lists the checks that were asked and some ids more, sorted. No check may have
// one of those.
func checkIDs(r *report.Run, more ...string) []string {
	ids := more
	for i := range r.Files {
		for j := range r.Files[i].Findings {
			if id := r.Files[i].Findings[j].Check; !slices.Contains(ids, id) {
				ids = append(ids, id)
			}
		}
	}
	slices.Sort(ids)
	return ids
}

func TestJUnitHasTheFindings(t *testing.T) {
	for _, flags := range [][]string{nil, {"--fail-at", "NOTICE"}, {"--fail-at", "NOTICE", "--accept-waivers"}} {
		for _, layout := range demos(t) {
			got, r := inForm(t, "junit", append(flags, layout)...)
			var root struct {
				Tests    int `xml:"tests,attr"`
				Failures int `xml:"failures,attr"`
				Errors   int `xml:"errors,attr"`
				Cases    []struct {
					Class   string    `xml:"classname,attr"`
					Name    string    `xml:"name,attr"`
					Failure *caseWord `xml:"failure"`
					Skipped *caseWord `xml:"skipped"`
				} `xml:"testsuite>testcase"`
			}
			if err := xml.Unmarshal([]byte(got.stdout), &root); err != nil {
				t.Fatal(err)
			}
			var have [][]string
			for _, c := range root.Cases {
				for how, word := range map[string]*caseWord{"failure": c.Failure, "skipped": c.Skipped} {
					if word != nil && word.Type != "" {
						have = append(have, []string{how, c.Class, c.Name, word.Type})
					}
				}
			}
			want := findings(&r, func(f *report.Finding) []string {
				how := "skipped"
				if f.Counts(r.FailAt) && !(r.Accept && f.Waived()) {
					how = "failure"
				}
				return []string{how, f.Check, f.Label, string(f.Word)}
			})
			if diff := cmp.Diff(want, have); diff != "" {
				t.Errorf("%s %s (-json +junit):\n%s", layout, flags, diff)
			}
			if asked := len(r.Files[0].Findings) + faults(&r); root.Tests != asked || root.Errors != faults(&r) || (root.Failures > 0) != (got.status == statusFindings) {
				t.Errorf("%s %s: %d cases, %d failures, %d errors; %d questions, status %d", layout, flags, root.Tests, root.Failures, root.Errors, asked, got.status)
			}
		}
	}
}

type caseWord struct {
	Type string `xml:"type,attr"`
}

// TestAnnotationsHaveTheFindings: as many of each kind as are shown, the worst first, and
// the last line counts the rest.
func TestAnnotationsHaveTheFindings(t *testing.T) {
	command := regexp.MustCompile(`(?m)^::(error|warning|notice) file=(.+?),line=(\d+),endLine=\d+,(?:col=(\d+),)?title=([A-Z]+)(?: ([a-z.-]+)%2C (.+?))?::`)
	kinds := map[report.Signal]string{report.Danger: "error", report.Warning: "error", report.Caution: "warning", report.Notice: "notice"}
	for _, layout := range demos(t) {
		got, r := inForm(t, "annotations", layout)
		var want [][]string
		for _, kind := range []string{"error", "warning", "notice"} {
			room := 10
			if kind == "notice" {
				room = 9
			}
			for _, f := range findings(&r, func(f *report.Finding) []string { return annotation(f, kinds[f.Word]) }) {
				if f[0] == kind && room > 0 {
					want, room = append(want, f), room-1
				}
			}
		}
		var have [][]string
		for _, m := range command.FindAllStringSubmatch(got.stdout, -1) {
			if m[5] != "UNUSABLE" {
				have = append(have, m[1:])
			}
		}
		if diff := cmp.Diff(want, have); diff != "" {
			t.Errorf("%s (-json +annotations):\n%s", layout, diff)
		}
		told := strings.Count(got.stdout, "\n::") - 1
		if left := len(findings(&r, func(*report.Finding) []string { return nil })) + faults(&r) - told; (left > 0) != strings.Contains(got.stdout, "Not shown beside the file") {
			t.Errorf("%s: %d are left out:\n%s", layout, left, got.stdout)
		}
	}
}

func annotation(f *report.Finding, kind string) []string {
	column := ""
	if f.Place.Line == f.Place.EndLine {
		column = strconv.Itoa(f.Place.Column)
	}
	return []string{kind, f.Place.File, strconv.Itoa(f.Place.Line), column, string(f.Word), f.Check, f.Label}
}

// TestAnyNumberOfWorkersGivesTheSameForm, and so does a second run.
func TestAnyNumberOfWorkersGivesTheSameForm(t *testing.T) {
	for _, form := range formatNames() {
		first := run(nil, append([]string{"check", "--on", "2026-11-25", "--format", form, "--workers", "1"}, demos(t)...)...)
		for _, workers := range []string{"2", "16"} {
			again := run(nil, append([]string{"check", "--on", "2026-11-25", "--format", form, "--workers", workers}, demos(t)...)...)
			if diff := cmp.Diff(first, again, cmp.AllowUnexported(outcome{})); diff != "" {
				t.Errorf("%s with %s workers:\n%s", form, workers, diff)
			}
		}
	}
}

// TestEveryFormCarriesTheWords: the cautions come first and the last words last, and no
// form says that anything is safe.
func TestEveryFormCarriesTheWords(t *testing.T) {
	approving := regexp.MustCompile(`(?i)\b(is safe|are safe|compliant|no problems?|all clear)\b`)
	for _, form := range []string{"sarif", "junit", "annotations", "lines"} {
		for _, layout := range demos(t) {
			out := run(nil, "check", "--on", "2026-11-25", "--format", form, layout).stdout
			first, last := strings.Index(out, report.Cautions()[0]), strings.LastIndex(out, report.KeepOff)
			if first < 0 || last < first || !strings.Contains(out, report.Cautions()[1]) {
				t.Errorf("%s of %s lacks the words", form, layout)
			}
			if word := approving.FindString(out); word != "" {
				t.Errorf("%s of %s says %q", form, layout, word)
			}
		}
	}
}

func TestStandardInputIsNoFileToAMachine(t *testing.T) {
	data, err := os.ReadFile(in(t, "sedge.json"))
	if err != nil {
		t.Fatal(err)
	}
	sarif := run(stdin(data), "check", "--on", "2026-11-25", "--format", "sarif", "-").stdout
	if strings.Contains(sarif, `"uri"`) || !strings.Contains(sarif, "Standard input: Sedge") || strings.Contains(sarif, "%3Cstdin%3E") {
		t.Error("SARIF gives standard input an address")
	}
	if notes := run(stdin(data), "check", "--on", "2026-11-25", "--format", "annotations", "-").stdout; strings.Contains(notes, "file=") || !strings.Contains(notes, "\n::error title=DANGER") {
		t.Errorf("annotations give standard input a file:\n%s", notes)
	}
}

// TestNoFileNameBecomesACommand drives the program over layouts with hostile names.
func TestNoFileNameBecomesACommand(t *testing.T) {
	data, err := os.ReadFile(in(t, "sedge.json"))
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"::error::x.json", "a b, c:d%0A.json", "a\n::add-mask::b.json", `"'.json`, "##[add-mask]x.json", "<&>.json", "a\tb\x1b[2J.json"} {
		t.Chdir(t.TempDir())
		put(t, ".", map[string]string{name: string(data)})
		for _, form := range []string{"annotations", "lines"} {
			got := run(nil, "check", "--on", "2026-11-25", "--format", form, name)
			if got.status != statusFindings {
				t.Fatalf("%q: status %d\n%s", name, got.status, got.stdout)
			}
			for _, line := range strings.Split(got.stdout, "\n") {
				ours := form == "annotations" && regexp.MustCompile(`^::(error|warning|notice) (file=[^:]+,line=\d+,endLine=\d+,(col=\d+,)?)?title=[^:]+::`).MatchString(line)
				if !ours && (strings.HasPrefix(strings.TrimSpace(line), "::") || strings.Contains(line, "##[")) || strings.ContainsRune(line, '\x1b') {
					t.Errorf("%q in %s: %q", name, form, line)
				}
			}
		}
		for _, form := range []string{"sarif", "junit"} {
			if got := run(nil, "check", "--on", "2026-11-25", "--format", form, name); got.status != statusFindings || strings.ContainsRune(got.stdout, '\x1b') {
				t.Errorf("%q in %s: status %d", name, form, got.status)
			}
		}
	}
}
