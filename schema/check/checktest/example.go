package checktest

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// What an example is about unless it says otherwise.
const (
	DefaultBase = "testdata/layouts/sorrel.json"
	DefaultCode = "us-mobile-structure"
)

// Example is one check's file of examples.
type Example struct {
	Check string // id of the check: the name of the file
	File  string // path of the file
	Prose string // what the cases show, for people
	Base  string // path of the layout that is patched, from the top of the module
	Cases []Case // in the order of the file
}

// Case is one patch and what the check then says.
type Case struct {
	Name  string // "good", "bad", "at-limit-us" …
	Code  string // id of a built-in profile, or the path of a profile file from the top of the module
	Patch string // as written, with its comments
	Edits []source.Edit
	Want  []Verdict
}

// Verdict is what a check says of one subject.
type Verdict struct {
	Subject string // "lockers/skirt", or "dwelling"
	Outcome report.Outcome
	Reason  report.Reason
}

// String gives the verdict as a line of a file of examples.
func (v Verdict) String() string {
	return strings.TrimSpace(fmt.Sprintf("%s %s %s", v.Subject, v.Outcome, v.Reason))
}

// Of is the verdict that a finding carries.
func Of(f report.Finding) Verdict {
	v := Verdict{Subject: strings.TrimPrefix(f.Subject, "/"), Outcome: f.Outcome, Reason: f.Reason}
	if v.Subject == "" {
		v.Subject = "dwelling"
	}
	return v
}

// Case gives the first case whose name begins with the word, or nil.
func (e *Example) Case(word string) *Case {
	i := slices.IndexFunc(e.Cases, func(c Case) bool { return strings.HasPrefix(c.Name, word) })
	if i < 0 {
		return nil
	}
	return &e.Cases[i]
}

// Read reads every file of examples in a folder, sorted by check.
func Read(folder string) ([]Example, error) {
	paths, err := filepath.Glob(filepath.Join(folder, "*.txtar"))
	if err != nil {
		return nil, err
	}
	if len(paths) == 0 {
		return nil, fmt.Errorf("%s holds no file of examples; expected <check id>.txtar", folder)
	}
	var all []Example
	for _, path := range paths {
		data, err := os.ReadFile(path)
		if err != nil {
			return nil, err
		}
		e, err := Parse(path, data)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", path, err)
		}
		all = append(all, e)
	}
	return all, nil
}

// Parse reads one file of examples. The error names the part that is wrong and
// what was expected there.
func Parse(path string, data []byte) (Example, error) {
	words, files := split(string(data))
	e := Example{Check: strings.TrimSuffix(filepath.Base(path), ".txtar"), File: path, Prose: strings.TrimSpace(words), Base: DefaultBase}
	if e.Prose == "" {
		return e, errors.New("there are no words before the first file; expected what the examples show")
	}
	code := DefaultCode
	for _, file := range files {
		name, kind, isCase := strings.Cut(file.name, ".")
		switch {
		case file.name == "base":
			e.Base = strings.TrimSpace(file.text)
		case file.name == "code":
			code = strings.TrimSpace(file.text)
		case !isCase || name == "":
			return e, fmt.Errorf("the file %q is not known; expected base, code, <name>.patch, <name>.code or <name>.want", file.name)
		default:
			if err := e.caseOf(name).take(kind, file.text); err != nil {
				return e, fmt.Errorf("%s: %w", file.name, err)
			}
		}
	}
	return e, e.finish(code)
}

// caseOf gives the case of that name, and begins it where it is new.
func (e *Example) caseOf(name string) *Case {
	i := slices.IndexFunc(e.Cases, func(c Case) bool { return c.Name == name })
	if i < 0 {
		e.Cases = append(e.Cases, Case{Name: name})
		i = len(e.Cases) - 1
	}
	return &e.Cases[i]
}

func (c *Case) take(kind, text string) error {
	switch kind {
	case "patch":
		return c.takePatch(text)
	case "want":
		return c.takeWant(text)
	case "code":
		c.Code = strings.TrimSpace(text)
		return nil
	}
	return fmt.Errorf("%q is not known; expected patch, code or want", kind)
}

func (c *Case) takePatch(text string) error {
	c.Patch = text
	for _, line := range lines(text) {
		if strings.HasPrefix(line, "#") {
			continue
		}
		edit, err := source.ParseEdit(line)
		if err != nil {
			return err
		}
		c.Edits = append(c.Edits, edit)
	}
	return nil
}

func (c *Case) takeWant(text string) error {
	for _, line := range lines(text) {
		words := strings.Fields(line)
		if len(words) < 2 || len(words) > 3 {
			return fmt.Errorf("%q; expected a subject, an outcome and perhaps a reason", line)
		}
		v := Verdict{Subject: words[0], Outcome: report.Outcome(words[1])}
		if len(words) == 3 {
			v.Reason = report.Reason(words[2])
		}
		if slices.ContainsFunc(c.Want, func(other Verdict) bool { return other.Subject == v.Subject }) {
			return fmt.Errorf("%s is listed twice", v.Subject)
		}
		c.Want = append(c.Want, v)
	}
	return nil
}

// finish gives each case its code and refuses one that wants nothing.
func (e *Example) finish(code string) error {
	if len(e.Cases) == 0 {
		return errors.New("there is no case; expected <name>.patch and <name>.want")
	}
	for i := range e.Cases {
		c := &e.Cases[i]
		if len(c.Want) == 0 {
			return fmt.Errorf("the case %q wants nothing; expected a file %s.want", c.Name, c.Name)
		}
		if c.Code == "" {
			c.Code = code
		}
	}
	return nil
}

// lines gives the lines that hold something, without blanks at their ends.
func lines(text string) []string {
	var kept []string
	for _, line := range strings.Split(text, "\n") {
		if line = strings.TrimSpace(line); line != "" {
			kept = append(kept, line)
		}
	}
	return kept
}
