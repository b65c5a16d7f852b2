package checktest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

const sound = `Words for people,
two lines of them.

-- base --
testdata/layouts/teal.json
-- code --
testdata/codes/every-term.json
-- good.patch --
# a comment

/a/b = "1 m"
delete /c
-- good.want --
lockers/skirt within to-prove
dwelling not-known missing-input
-- silent.code --
us-mobile-structure
-- silent.want --
lockers/skirt not-applicable not-covered
`

func TestParse(t *testing.T) {
	got, err := Parse("some/where/locker.sealed.txtar", []byte(sound))
	if err != nil {
		t.Fatal(err)
	}
	want := Example{Check: "locker.sealed", File: "some/where/locker.sealed.txtar", Prose: "Words for people,\ntwo lines of them.", Base: "testdata/layouts/teal.json", Cases: []Case{
		{Name: "good", Code: "testdata/codes/every-term.json", Patch: "# a comment\n\n/a/b = \"1 m\"\ndelete /c\n",
			Edits: []source.Edit{{Pointer: "/a/b", Value: `"1 m"`}, {Pointer: "/c", Delete: true}},
			Want:  []Verdict{{"lockers/skirt", report.Within, report.ToProve}, {"dwelling", report.NotKnown, report.MissingInput}}},
		{Name: "silent", Code: "us-mobile-structure", Want: []Verdict{{"lockers/skirt", report.NotApplicable, report.NotCovered}}},
	}}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
	if c := got.Case("go"); c == nil || c.Name != "good" || got.Case("bad") != nil {
		t.Errorf("%+v", c)
	}
	short, err := Parse("x.txtar", []byte("Words.\n-- good.want --\ndwelling within\n"))
	if err != nil || short.Base != DefaultBase || short.Cases[0].Code != DefaultCode {
		t.Errorf("%+v, %v", short, err)
	}
}

func TestParseRefuses(t *testing.T) {
	for name, c := range map[string]struct{ text, says string }{
		"no words":         {"-- good.want --\ndwelling within\n", "expected what the examples show"},
		"no case":          {"Words.\n", "there is no case"},
		"a patch alone":    {"Words.\n-- good.patch --\n/a = 1\n", `the case "good" wants nothing`},
		"a want of blanks": {"Words.\n-- good.want --\n\n", `the case "good" wants nothing`},
		"no edit":          {"Words.\n-- good.patch --\nnonsense\n-- good.want --\ndwelling within\n", "good.patch: edit"},
		"one word":         {"Words.\n-- good.want --\ndwelling\n", `"dwelling"; expected a subject`},
		"four words":       {"Words.\n-- good.want --\ndwelling within to prove\n", "expected a subject"},
		"twice":            {"Words.\n-- good.want --\ndwelling within\ndwelling not-met\n", "dwelling is listed twice"},
		"an unknown file":  {"Words.\n-- readme --\n", `the file "readme" is not known`},
		"an unknown kind":  {"Words.\n-- good.wants --\n", `"wants" is not known`},
		"a case, no name":  {"Words.\n-- .want --\n", `the file ".want" is not known`},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := Parse("x.txtar", []byte(c.text))
			if err == nil || !strings.Contains(err.Error(), c.says) {
				t.Errorf("%v, want one that says %q", err, c.says)
			}
		})
	}
}

func TestSplit(t *testing.T) {
	for name, c := range map[string]struct {
		text, words string
		files       []part
	}{
		"nothing":        {"", "", nil},
		"words alone":    {"a\nb", "a\nb", nil},
		"a file":         {"a\n-- b --\nc\n", "a\n", []part{{"b", "c\n"}}},
		"no last line":   {"-- b --\nc", "", []part{{"b", "c"}}},
		"blanks about":   {"--   b c   --  \r\nd\n", "", []part{{"b c", "d\n"}}},
		"an empty file":  {"-- b --\n-- c --\n", "", []part{{"b", ""}, {"c", ""}}},
		"no name":        {"--  --\n-- --\n", "--  --\n-- --\n", nil},
		"not a marker":   {"a -- b --\n--b --\n-- b--\n", "a -- b --\n--b --\n-- b--\n", nil},
		"the same again": {"-- b --\n1\n-- b --\n2\n", "", []part{{"b", "1\n"}, {"b", "2\n"}}},
	} {
		t.Run(name, func(t *testing.T) {
			words, files := split(c.text)
			if words != c.words {
				t.Errorf("words %q, want %q", words, c.words)
			}
			if diff := cmp.Diff(c.files, files, cmp.AllowUnexported(part{})); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// FuzzParse: any bytes give either an error or an example in which every case has
// a name, a code and something that it wants.
func FuzzParse(f *testing.F) {
	f.Add(sound)
	f.Add("Words.\n-- a.want --\nb within\n-- a.patch --\n/x = {}\n-- a.code --\n")
	f.Add("-- --\n\x00-- \xff --")
	f.Fuzz(func(t *testing.T, text string) {
		e, err := Parse("x.txtar", []byte(text))
		if err != nil {
			return
		}
		for _, c := range e.Cases {
			if c.Name == "" || len(c.Want) == 0 || e.Case(c.Name) == nil {
				t.Fatalf("%q: %+v", text, c)
			}
			for _, v := range c.Want {
				if v.Subject == "" || v.Outcome == "" || len(strings.Fields(v.String())) < 2 {
					t.Fatalf("%q: %+v", text, v)
				}
			}
		}
	})
}

func TestRead(t *testing.T) {
	folder := t.TempDir()
	if _, err := Read(folder); err == nil || !strings.Contains(err.Error(), "no file of examples") {
		t.Errorf("an empty folder: %v", err)
	}
	write := func(name, text string) {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	write("b.two.txtar", sound)
	write("a.one.txtar", sound)
	write("notes.md", "not one of them")
	all, err := Read(folder)
	if err != nil || len(all) != 2 || all[0].Check != "a.one" || all[1].Check != "b.two" {
		t.Errorf("%+v, %v", all, err)
	}
	write("c.three.txtar", "")
	if _, err := Read(folder); err == nil || !strings.Contains(err.Error(), "c.three.txtar: there are no words") {
		t.Errorf("%v", err)
	}
}
