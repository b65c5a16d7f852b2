package main

import (
	"encoding/json"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/report"
)

// shownOf lists the layouts that come with the program, and those of this package's tests.
func shownOf() []string {
	return []string{"../../testdata/layouts/sorrel.json", "../../testdata/layouts/sorrel-faulty.json", "../../testdata/layouts/teal.json",
		"testdata/layouts/bare.json", "testdata/layouts/sedge.json", "testdata/layouts/willow.json"}
}

func checked(path string, flags ...string) outcome {
	return run(nil, append([]string{"check", "--on", "2026-11-25", path}, flags...)...)
}

// judgedAs is the report of a layout, from the JSON form.
func judgedAs(t *testing.T, path string) report.FileReport {
	t.Helper()
	var r report.Run
	if err := json.Unmarshal([]byte(checked(path, "--format", "json").stdout), &r); err != nil {
		t.Fatal(err)
	}
	return r.Files[0]
}

// TestListsTellAll: each finding of the JSON form that is within its limit, not covered or
// not applicable stands in its list.
func TestListsTellAll(t *testing.T) {
	told := 0
	for _, path := range shownOf() {
		f := judgedAs(t, path)
		within, silent, exempt := listed(checked(path, "--show", "within", "--width", "200").stdout, "WITHIN"),
			listed(checked(path, "--show", "not-covered").stdout, "NOT COVERED"), listed(checked(path, "--show", "not-applicable").stdout, "NOT APPLICABLE")
		for _, one := range f.Findings {
			told++
			switch {
			case one.Outcome == report.Within:
				says(t, within, one.Check+", "+one.Label+": within limit, as stated")
				if prove := one.Check + ", " + one.Label + ": within limit, as stated; nobody has shown it, and a fitter must prove it"; strings.Contains(within, prove) != (one.Reason == report.ToProve) {
					t.Errorf("%s: %s, %s is told wrongly as one to prove", path, one.Check, one.Label)
				}
			case one.Reason == report.NotCovered:
				listsUnder(t, silent, &one)
			case one.Reason == report.NoSubject || one.Reason == report.RuleExempts:
				listsUnder(t, exempt, &one)
			default:
				told--
			}
		}
	}
	if told < 1000 {
		t.Errorf("%d findings in all", told)
	}
}

// listed is what stands from a heading on to the next that is in capitals.
func listed(page, heading string) string {
	from := strings.Index(page, "\n"+heading)
	if from < 0 {
		return ""
	}
	rest := page[from+1:]
	if to := regexp.MustCompile(`\n\n([A-Z]{4,}|Counted)`).FindStringIndex(rest); to != nil {
		return rest[:to[0]]
	}
	return rest
}

// listsUnder holds that a thing stands under its check.
func listsUnder(t *testing.T, list string, f *report.Finding) {
	t.Helper()
	_, under, there := strings.Cut(flat(list), " "+f.Check+": "+flat(f.Asks))
	if next := regexp.MustCompile(` [a-z-]+\.[a-z-]+: `).FindStringIndex(under); next != nil {
		under = under[:next[0]]
	}
	if !there || !strings.Contains(under, f.Label) {
		t.Errorf("%s of %s is not listed in:\n%s", f.Check, f.Label, list)
	}
}

// TestEveryFindingOnce: each finding that is not met, and each that is not known, has its
// head once in the brief form and once under its part of the installation.
func TestEveryFindingOnce(t *testing.T) {
	head := regexp.MustCompile(`(?m)^(DANGER|WARNING|CAUTION|NOTICE) +([a-z.-]+, .+?)(: not known, .*)?$`)
	for _, path := range shownOf() {
		var want []string
		for _, one := range judgedAs(t, path).Findings {
			if one.Outcome == report.NotMet || one.Outcome == report.NotKnown {
				want = append(want, string(one.Word)+" "+one.Check+", "+one.Label)
			}
		}
		for _, flags := range [][]string{{"--brief"}, {"--brief", "--by", "subject"}} {
			var got []string
			for _, m := range head.FindAllStringSubmatch(checked(path, append(flags, "--width", "200")...).stdout, -1) {
				got = append(got, m[1]+" "+m[2])
			}
			if diff := cmp.Diff(counts(want), counts(got)); diff != "" {
				t.Errorf("%s %v (-json +shown):\n%s", path, flags, diff)
			}
		}
		whole := checked(path, "--by", "subject", "--width", "200").stdout
		for _, one := range judgedAs(t, path).Findings {
			if n := strings.Count(whole, "\n"+padded(one.Word)+one.Check+", "+one.Label+"\n"); one.Outcome == report.NotMet && n != 1 {
				t.Errorf("%s: %s, %s stands %d times by subject", path, one.Check, one.Label, n)
			}
		}
	}
}

func padded(word report.Signal) string { return (string(word) + "          ")[:10] }

func counts(all []string) map[string]int {
	n := map[string]int{}
	for _, each := range all {
		n[each]++
	}
	return n
}

// TestUnderEachPartStandsTheSame: each block of a finding by subject is that by word, line
// for line.
func TestUnderEachPartStandsTheSame(t *testing.T) {
	for _, path := range shownOf() {
		byWord, bySubject := blocks(checked(path).stdout), blocks(checked(path, "--by", "subject").stdout)
		for block := range byWord {
			if strings.Contains(block, "\n          may act ") && !bySubject[block] {
				t.Errorf("%s: by subject there is not\n%s", path, block)
			}
		}
	}
}

// blocks are the parts of a page between empty lines.
func blocks(page string) map[string]bool {
	all := map[string]bool{}
	for each := range strings.SplitSeq(page, "\n\n") {
		all[strings.TrimSpace(each)] = true
	}
	return all
}

// TestNoViewChangesWhatIsJudged: status, counts and result are the same whatever is shown,
// the page keeps to its columns, and the other forms are whole.
func TestNoViewChangesWhatIsJudged(t *testing.T) {
	views := [][]string{{"--brief"}, {"--by", "subject"}, {"--only", "locker."}, {"--only", "the dwelling", "--brief"}, {"--show", "within"},
		{"--show", "within,not-covered,not-applicable", "--brief", "--by", "subject", "--only", "locker.", "--only", "the dwelling"}}
	end := regexp.MustCompile(`Counted: .*$`)
	for _, path := range shownOf() {
		whole, lines := checked(path), checked(path, "--format", "lines").stdout
		for i, v := range views {
			for _, width := range []int{60, 80 + 20*i, 200} {
				got := checked(path, append(v, "--width", strconv.Itoa(width))...)
				if got.status != whole.status || got.stderr != "" {
					t.Errorf("%s %v: status %d, and %d when all is shown; %s", path, v, got.status, whole.status, got.stderr)
				}
				inPage(t, got.stdout, width)
				if diff := cmp.Diff(end.FindString(flat(whole.stdout)), end.FindString(flat(got.stdout))); diff != "" {
					t.Errorf("%s %v: counts or result (-whole +shown):\n%s", path, v, diff)
				}
			}
			dir := t.TempDir()
			checked(path, append(v, "--out", "lines="+dir+"/l")...)
			if files := tree(t, dir); files["l"] != lines {
				t.Errorf("%s %v: another form is not whole", path, v)
			}
		}
	}
}

func TestWhatCantBeShown(t *testing.T) {
	sedge := in(t, "sedge.json")
	tests := []struct {
		args []string
		want string
	}{
		{[]string{"--only", "locker.lowvent"}, `nothing that was judged is named "locker.lowvent"; did you mean "locker.low-vent"?`},
		{[]string{"--only", "locker"}, `did you mean "locker."?`},
		{[]string{"--only", "hob"}, `hob"?`},
		{[]string{"--only", "/lockers/rare"}, `did you mean "/lockers/rear"?`},
		{[]string{"--only", "regulator main", "--only", "qqqqqqqqqq"}, `nothing that was judged is named "qqqqqqqqqq"` + "\n"},
		{[]string{"--only", " "}, "a check, a family of checks or a thing is wanted"},
		{[]string{"--by", "part"}, `there is no order "part"`},
		{[]string{"--show", "within,met"}, `there is no list "met"`},
		{[]string{"--brief", "--format", "json"}, "no output is in that form"},
		{[]string{"--only", "locker.", "--format", "lines", "--out", "json=" + t.TempDir() + "/x"}, "no output is in that form"},
	}
	for _, tt := range tests {
		got := checked(sedge, tt.args...)
		if got.status != statusUnusable || got.stdout != "" || !strings.Contains(got.stderr, tt.want) {
			t.Errorf("%v: status %d, %q; want %q", tt.args, got.status, got.stderr, tt.want)
		}
	}
	if got := run(nil, "check", in(t, "broken.json"), sedge, "--only", "cylinder of the broken file"); got.status != statusUnusable || got.stderr != "" || !strings.Contains(flat(got.stdout), "shown 0 of 159 findings") {
		t.Errorf("a name that may be of the file that can't be used: status %d, %s", got.status, got.stderr)
	}
}
