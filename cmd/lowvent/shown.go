package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"lowvent.example/cmd/lowvent/internal/render/term"
	"lowvent.example/schema/report"
)

// shownFlags choose what the terminal form shows of a report. They change neither what
// is judged nor any other form.
type shownFlags struct {
	by    choice
	only  onlyFlag
	brief bool
	list  listFlag
}

// The words of --by, the usual one first.
const (
	byWord    = "word"
	bySubject = "subject"
)

func byWords() []string { return []string{byWord, bySubject} }

func (f *shownFlags) register(cmd *cobra.Command) {
	f.by = choice{what: "order", kind: "ORDER", value: byWord, allowed: byWords()}
	flags := cmd.Flags()
	flags.Var(&f.by, "by", "order of the findings: word, the worst signal word first; or subject, under each part of the installation, the worst part first")
	flags.Var(&f.only, "only", "show only these: a check (locker.low-vent), a family of checks (locker.), or a thing by label or pointer (\"locker rear\", /lockers/rear); may be repeated. All else is judged and counted all the same")
	flags.BoolVar(&f.brief, "brief", false, "show a short block for each finding, and one line for each that is not known")
	flags.Var(&f.list, "show", "list one by one what is otherwise counted: "+strings.Join(listWords(), ", ")+"; may be repeated")
	complete(cmd, "by", byWords)
	complete(cmd, "show", listWords)
}

// shown is what of a report an output shows, when it is in the terminal form.
type shown = term.View

func (f *shownFlags) view() shown {
	return shown{BySubject: f.by.value == bySubject, Brief: f.brief, Only: term.Only(f.only),
		Within: slices.Contains(f.list, listWithin), NotCovered: slices.Contains(f.list, listNotCovered), NotApplicable: slices.Contains(f.list, listNotApplicable)}
}

// refuse tells why what was asked to be shown can't be shown of a run: no output is in the
// form that these flags are for, or they name what no file has. A file that can't be used
// may have what a name stands for, so with one in the run no name is refused.
func (f *shownFlags) refuse(run *report.Run, forms []string) error {
	v := f.view()
	if asked := v.BySubject || v.Brief || len(v.Only) > 0 || len(f.list) > 0; !asked {
		return nil
	}
	if !slices.Contains(forms, terminalForm) {
		return advice{errors.New("--by, --only, --brief and --show are for the terminal form, and no output is in that form"),
			"Every other form is always whole. Leave these flags out, or ask for the terminal form as well: --out terminal=FILE"}
	}
	if run.Status == statusUnusable {
		return nil
	}
	if strange := v.Only.Strange(run); len(strange) > 0 {
		return nothingNamed(strange[0], term.Nameable(run))
	}
	return nil
}

func nothingNamed(name string, known []string) error {
	near := meant(name, known)
	if near == "" {
		near = sameThing(name, known)
	}
	return advice{fmt.Errorf("nothing that was judged is named %q%s", name, near),
		`--only takes a check ("lowvent explain" lists them), a family of checks such as "locker.", or a thing as the report names it: "locker rear" or /lockers/rear.`}
}

// sameThing names the label or pointer that ends with a name: "hob" for "appliance hob".
func sameThing(name string, known []string) string {
	for _, each := range known {
		if strings.HasSuffix(each, " "+name) || strings.HasSuffix(each, "/"+name) {
			return fmt.Sprintf("; did you mean %q?", each)
		}
	}
	return ""
}

// onlyFlag collects the names that --only gives.
type onlyFlag []string

func (o *onlyFlag) Set(s string) error {
	if strings.TrimSpace(s) == "" {
		return errors.New("a check, a family of checks or a thing is wanted")
	}
	*o = append(*o, strings.TrimSpace(s))
	return nil
}

func (o *onlyFlag) String() string { return "" }

// Type names the flag's value in help.
func (o *onlyFlag) Type() string { return "NAME" }

// The lists of --show.
const (
	listWithin        = "within"
	listNotCovered    = "not-covered"
	listNotApplicable = "not-applicable"
)

func listWords() []string { return []string{listWithin, listNotCovered, listNotApplicable} }

// listFlag collects the lists that --show asks for.
type listFlag []string

func (l *listFlag) Set(s string) error {
	for each := range strings.SplitSeq(s, ",") {
		word, err := oneWord("list", strings.TrimSpace(each), listWords())
		if err != nil {
			return err
		}
		*l = append(*l, word)
	}
	return nil
}

func (l *listFlag) String() string { return "" }

// Type names the flag's value in help.
func (l *listFlag) Type() string { return "LIST" }
