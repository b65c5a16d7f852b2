package main

import (
	"encoding/json"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"lowvent.example/schema/report"
)

// holdTheWords: cautions first, what was judged by what before the
// working, and the words to keep the gas off at the end.
func holdTheWords(t *testing.T, f *forms) {
	body := f.html.all("body", "")[0]
	words := body.says()
	if !strings.HasPrefix(words, flat(strings.Join(report.Cautions(), " "))) || !strings.HasSuffix(words, report.KeepOff) {
		t.Errorf("the page begins %.80q and ends %q", words, words[len(words)-80:])
	}
	for i, each := range report.Cautions() {
		if f.csv[i]["role"] != "caution" || f.csv[i]["what"] != each {
			t.Errorf("row %d of the table is %v", i+1, f.csv[i])
		}
	}
	if last := f.csv[len(f.csv)-1]; last["role"] != "keep-off" || last["what"] != report.KeepOff {
		t.Errorf("the table ends with %v", last)
	}
	file := &f.run.Files[0]
	onPage, inTable := body.all("dl", "head")[0].says(), ""
	for _, r := range f.csv {
		if r["role"] == "head" {
			inTable += " " + r["what"] + " " + r["value"]
		}
	}
	for _, each := range []string{file.File, file.SHA256, f.run.On, file.Code.Title, file.Code.ID, "borrowed yardstick", file.Code.Borrowed, file.Gas} {
		if each == "" || !strings.Contains(onPage, flat(each)) || !strings.Contains(flat(inTable), flat(each)) {
			t.Errorf("%q is not told before the working", each)
		}
	}
}

// holdWhatWasCompared: what was found, needed and short stands beside every
// clause in both forms, as does what is missing.
func holdWhatWasCompared(t *testing.T, f *forms) {
	var want, onPage, inTable []string
	put := func(all *[]string, role, text string) { *all = append(*all, role+" "+flat(text)) }
	for _, each := range f.run.Files[0].Findings {
		for _, p := range each.Parts {
			for role, amount := range map[string]*report.Amount{"found": p.Found, "needed": p.Needed, "short": p.Short} {
				if amount != nil {
					put(&want, role, amount.Text)
				}
			}
		}
	}
	for _, r := range f.csv {
		if slices.Contains([]string{"found", "needed", "short"}, r["role"]) {
			put(&inTable, r["role"], r["value"])
		}
	}
	for _, table := range f.html.all("table", "compared") {
		for _, row := range table.all("tbody", "")[0].all("tr", "") {
			put(&onPage, row.one("th", ""), row.one("td", ""))
		}
	}
	sorted := cmpopts.SortSlices(strings.Compare)
	if diff := cmp.Diff(want, inTable, sorted); diff != "" || len(want) < 500 {
		t.Errorf("csv, of %d: %s", len(want), diff)
	}
	if diff := cmp.Diff(want, onPage, sorted); diff != "" {
		t.Errorf("html: %s", diff)
	}
}

// holdCourses: each has a picture with a title and a text in its stead, and
// all of its points in the page and in the table.
func holdCourses(t *testing.T, f *forms) {
	var want, inTable [][2]string
	var onPage [][2]string
	courses := 0
	for _, figure := range f.run.Files[0].Figures {
		if figure.Course != nil {
			courses++
			for _, p := range figure.Course.Points {
				want = append(want, [2]string{exactly(p[0]), exactly(p[1])})
			}
		}
	}
	for _, r := range f.csv {
		if r["role"] == "course" {
			inTable = append(inTable, [2]string{r["across_si"], r["si_value"]})
		}
	}
	if diff := cmp.Diff(want, inTable); diff != "" || courses < 4 {
		t.Errorf("%d courses: %s", courses, diff)
	}
	pictures := f.html.all("svg", "")
	for _, svg := range pictures {
		title, desc := svg.all("title", ""), svg.all("desc", "")
		if svg.attr["role"] != "img" || svg.attr["aria-labelledby"] != title[0].attr["id"]+" "+desc[0].attr["id"] || len(desc[0].says()) < 80 || len(svg.all("text", "")) < 6 {
			t.Errorf("a picture without words: %v", svg.attr)
		}
	}
	for _, details := range f.html.all("details", "") {
		for _, row := range details.all("tbody", "")[0].all("tr", "") {
			numbers := row.all("td", "number")
			onPage = append(onPage, [2]string{numbers[0].says(), numbers[1].says()})
		}
	}
	for i := range want {
		for j := range want[i] {
			x, err := strconv.ParseFloat(want[i][j], 64)
			if err != nil {
				t.Fatal(err)
			}
			want[i][j] = twelveDigits(x)
		}
	}
	if diff := cmp.Diff(want, onPage); diff != "" || len(pictures) != courses {
		t.Errorf("%d pictures of %d courses: %s", len(pictures), courses, diff)
	}
}

// TestSheetsOfOneCheck: the command writes the same forms to standard output and into
// files, of one check and of one thing, and gives status 0 whatever the answer is.
func TestSheetsOfOneCheck(t *testing.T) {
	layout := filepath.Join("..", "..", "testdata", "layouts", "sorrel-faulty.json")
	for _, id := range []string{"locker.low-vent", "regulator.cold-course", "dwelling.connected-load"} {
		dir := t.TempDir()
		args := []string{"explain", id, layout, "--on", "2026-11-25"}
		for _, form := range workingFormats() {
			args = append(args, "--out", form+"="+filepath.Join(dir, form))
		}
		if got := run(nil, args...); got.status != statusNothing {
			t.Fatalf("%s: %+v", id, got)
		}
		files := tree(t, dir)
		for _, form := range workingFormats() {
			got := run(nil, "explain", id, layout, "--on", "2026-11-25", "--format", form)
			if diff := cmp.Diff(got.stdout, files[form]); diff != "" || got.status != statusNothing {
				t.Errorf("%s, %s: status %d (-standard output +file):\n%s", id, form, got.status, diff)
			}
		}
		var r report.Run
		if err := json.Unmarshal([]byte(files["json"]), &r); err != nil {
			t.Fatal(err)
		}
		options := cmp.AllowUnexported(working{}, lineShown{})
		if diff := cmp.Diff(workingsOf(&r, exactly), workingsInCSV(t, recordsOf(t, files["csv"])), options); diff != "" {
			t.Errorf("%s: %s", id, diff)
		}
		if page := wellFormed(t, files["html"]); page.one("h1", "") != "Calculation sheet: "+id || page.one("title", "") != "Calculation sheet: "+id {
			t.Errorf("%s: the heading is %q", id, page.one("h1", ""))
		}
	}
}

// TestSheetsOfWhatCannotBeUsed: the faults stand in every form, with status 2, and
// nothing is reckoned.
func TestSheetsOfWhatCannotBeUsed(t *testing.T) {
	for _, form := range workingFormats() {
		got := run(nil, "explain", "locker.low-vent", in(t, "broken.json"), "--format", form)
		if got.status != statusUnusable || !strings.Contains(got.stdout, "is not known here") || !strings.Contains(flat(got.stdout), "Local codes") {
			t.Errorf("%s: status %d\n%s", form, got.status, got.stdout)
		}
		switch form {
		case "html":
			says(t, wellFormed(t, got.stdout).says(), "The file can't be used, and nothing was reckoned", "did you mean", report.KeepOff)
		case "csv":
			roles := map[string]int{}
			for _, r := range recordsOf(t, got.stdout) {
				roles[r["role"]]++
			}
			if roles["fault"] == 0 || roles["question"]+roles["result"] > 0 || roles["keep-off"] != 1 {
				t.Errorf("rows by role: %v", roles)
			}
		}
	}
}

// TestFormsAreOfAWorking: without a layout there is nothing to write.
func TestFormsAreOfAWorking(t *testing.T) {
	for _, args := range [][]string{{"--format", "html"}, {"--format", "csv"}, {"--out", "html=x.html"}} {
		dir := t.TempDir()
		for i, each := range args {
			args[i] = strings.Replace(each, "x.html", filepath.Join(dir, "x.html"), 1)
		}
		got := run(nil, append([]string{"explain", "locker.low-vent"}, args...)...)
		if got.status != statusUnusable || !strings.Contains(got.stderr, "name the layout") || len(tree(t, dir)) > 0 {
			t.Errorf("%v: %+v, %v", args, got, tree(t, dir))
		}
	}
	if got := run(nil, "explain", "locker.low-vent", "x.json", "--out", "lines=x"); got.status != statusUnusable || !strings.Contains(got.stderr, "terminal, json, html, csv") {
		t.Errorf("%+v", got)
	}
}
