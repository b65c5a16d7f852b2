package main

import (
	"cmp"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"lowvent.example/schema/check"
	"lowvent.example/schema/check/checktest"
	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// made stands at the head of a document that a test makes.
const made = "<!-- Made from the program by: go test ./cmd/lowvent -run Docs -update. Edit the checks and codes, not this. -->\n\n"

// TestDocsChecks holds docs/checks.md against the descriptors and the examples.
func TestDocsChecks(t *testing.T) {
	fresh(t, "docs/checks.md", checksDoc(t))
}

// markdown is a document that is being written.
type markdown struct{ strings.Builder }

func (m *markdown) line(format string, a ...any) { fmt.Fprintf(m, format+"\n", a...) }
func (m *markdown) para(format string, a ...any) { fmt.Fprintf(m, format+"\n\n", a...) }

// cell makes a text fit for the cell of a table.
func cell(text string) string {
	return strings.NewReplacer("|", "\\|", "\n", " ").Replace(prose(text))
}

// prose keeps what is meant as text from being taken for marks.
func prose(text string) string { return strings.NewReplacer("<", "&lt;", "*", "\\*").Replace(text) }

func checksDoc(t *testing.T) string {
	t.Helper()
	examples := examplesByCheck(t)
	a, _, _ := bench(nil)
	checks := slices.Clone(a.set().Checks)
	slices.SortFunc(checks, func(a, b check.Check) int { return cmp.Compare(a.ID, b.ID) })

	m := &markdown{}
	m.para("# The checks")
	m.WriteString(made)
	m.para("Each check asks one question of everything in a layout that it is about. `lowvent explain CHECK` prints the same, and with a layout the working. What is not met, not known, or not covered by the code stands in the report; nothing here is an instruction to do gas work, and a licensed fitter decides.")
	index(m, checks)
	words(m)
	notAsked(t, m, checks)
	for i := range checks {
		checkSection(m, &checks[i].Descriptor, examples[checks[i].ID])
	}
	return strings.TrimRight(m.String(), "\n") + "\n"
}

// unasked lists the questions that a fitter would ask and this program does not yet,
// each with the reason.
var unasked = []struct{ about, why string }{
	{"a low pocket with something to light gas and no opening, where no part of the installation is near (the milder case of `space.gas-trap`)", "afloat there is often no such opening to be had, so that every hull would fail"},
	{"awnings and tents at flues and exhausts; how high the lowest part of a cylinder hangs over the road", "a layout does not say where an awning is, nor where the ground is"},
}

func notAsked(t *testing.T, m *markdown, checks []check.Check) {
	t.Helper()
	m.para("## What is not asked yet")
	m.para("Each check says what it leaves out. Beside that, no check asks:")
	for _, each := range unasked {
		for _, c := range checks {
			if strings.Contains(each.about, "`"+c.ID+"`") && !strings.Contains(each.about, "the milder case of") {
				t.Errorf("%s is asked, and listed as not asked", c.ID)
			}
		}
		m.line("- %s: %s", each.about, each.why)
	}
	m.line("")
}

func examplesByCheck(t *testing.T) map[string]*checktest.Example {
	t.Helper()
	found := map[string]*checktest.Example{}
	for _, part := range parts() {
		all, err := checktest.Read(filepath.Join(moduleTop(t), part.name, "testdata"))
		if err != nil {
			t.Fatal(err)
		}
		for i := range all {
			found[all[i].Check] = &all[i]
		}
	}
	return found
}

func index(m *markdown, checks []check.Check) {
	m.line("| check | word | asks |")
	m.line("|---|---|---|")
	for _, c := range checks {
		m.line("| [%s](#%s) | %s | %s |", c.ID, anchor(c.ID), c.Word, cell(c.Asks))
	}
	m.line("")
}

// anchor is the fragment under which renderers of Markdown file a heading.
func anchor(heading string) string { return strings.ReplaceAll(heading, ".", "") }

func words(m *markdown) {
	m.para("## The signal words")
	m.para("They are those of ANSI Z535.4 and ISO 3864-2 and speak of people: what happens when the answer is no.")
	for _, w := range report.Signals() {
		m.line("- **%s**: it %s.", w, w.Meaning())
	}
	m.line("")
}

func checkSection(m *markdown, d *check.Descriptor, e *checktest.Example) {
	m.para("## %s", d.ID)
	m.para("**%s** (%s)", prose(d.Asks), d.Word)
	m.para("Why: %s", prose(d.Why))
	m.para("What it leaves out: %s", prose(d.NotCovered))
	m.para("Who may act: %s.", d.MayAct)
	if d.NeverWaive {
		m.para("Never set aside: no waiver and no local overlay counts against it.")
	}
	limitsSection(m, d)
	readsSection(m, d)
	surveysSection(m, d)
	pointers(m, "What you can state and only a fitter can prove", d.Claims)
	if len(d.Sources) > 0 {
		m.para("### Physics and geometry after")
		for _, each := range d.Sources {
			m.line("- %s", prose(each))
		}
		m.line("")
	}
	exampleSection(m, d, e)
}

func limitsSection(m *markdown, d *check.Descriptor) {
	m.para("### Limits")
	for _, t := range d.Limits {
		m.line("- `%s`: %s", t.ID, prose(t.Asks))
		for _, book := range code.Profiles() {
			if book.Book == t.Book {
				m.line("  - %s", limitLine(book, t))
			}
		}
	}
	m.line("")
}

// limitLine is what one book says to a term, or that it is silent.
func limitLine(book *code.Profile, t *code.Term) string {
	e := book.Entry(t)
	if e == nil {
		return book.ID + ": silent, so it is not judged by this code"
	}
	line := book.ID + ": " + stated(t, e) + " [" + grounds(e) + "]"
	if e.Note != "" {
		line += " Note: " + e.Note
	}
	return prose(line)
}

func readsSection(m *markdown, d *check.Descriptor) {
	m.para("### What to measure")
	for _, template := range d.Reads {
		m.line("- `%s`%s: %s", template, insteadOf(d, template), prose(howTo(template)))
	}
	m.line("")
}

func surveysSection(m *markdown, d *check.Descriptor) {
	if len(d.Surveys)+len(d.Inventory) == 0 {
		return
	}
	m.para("### Lists that must be stated complete")
	for _, each := range d.Surveys {
		m.line("- `%s`, under `surveyed` of the spaces, lockers and the outside that it looks at: %s", each,
			prose(layout.Meaning("/spaces/any/surveyed/complete", string(each))))
	}
	for _, each := range d.Inventory {
		m.line("- `%s`, under `surveyedBy`: %s", each, prose(layout.Meaning("/surveyedBy/complete", string(each))))
	}
	m.line("")
}

func pointers(m *markdown, title string, templates []string) {
	if len(templates) == 0 {
		return
	}
	m.para("### %s", title)
	for _, each := range templates {
		m.line("- `%s`", each)
	}
	m.line("")
}

func exampleSection(m *markdown, d *check.Descriptor, e *checktest.Example) {
	m.para("### Example")
	m.para("%s", prose(e.Prose))
	for _, word := range []string{"good", "bad"} {
		c := e.Case(word)
		m.para("%s, on `%s` by %s:", map[string]string{"good": "Within", "bad": "Not met"}[word], e.Base, exampleCode(c))
		patch := strings.TrimRight(c.Patch, "\n")
		if patch == "" {
			patch = "# as it is"
		}
		m.para("```text\n%s\n```", patch)
		var said []string
		for _, v := range c.Want {
			said = append(said, "`"+v.String()+"`")
		}
		m.para("%s then says: %s.", d.ID, strings.Join(said, ", "))
	}
}

// exampleCode names the code of an example.
func exampleCode(c *checktest.Case) string {
	if strings.HasSuffix(c.Code, ".json") {
		return "an invented code, `" + c.Code + "`"
	}
	return "`" + c.Code + "`"
}
