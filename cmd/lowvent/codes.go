package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/code"
	"lowvent.example/schema/report"
)

func (a *app) codesCommand(v *viewFlags) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "codes",
		Short: "List the codes that a layout can be judged by, and the books that stand beside them",
		Long: `Codes lists every book of limits that the program carries: the codes, of which a
layout or --code chooses one, and the three books that every run is judged by.
How each limit is known is counted: what is only remembered is never judged.`,
		Example: `  lowvent codes
  lowvent codes show us-mobile-structure
  lowvent codes diff us-mobile-structure eu-leisure-vehicle`,
		Args: a.unknownCodesWord,
		RunE: func(*cobra.Command, []string) error { return a.listCodes(a.onTerminal(v)) },
	}
	cmd.AddCommand(&cobra.Command{
		Use:     "show ID",
		Short:   "Show every limit of one code, what it rests on and what the code does not cover",
		Example: "  lowvent codes show common-practice",
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return bookIDs(), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return fmt.Errorf("name one code: %s", strings.Join(bookIDs(), ", "))
			}
			id, err := oneWord("code", args[0], bookIDs())
			if err != nil {
				return err
			}
			return a.showCode(a.onTerminal(v), id)
		},
	}, a.codesDiffCommand(v))
	return cmd
}

// unknownCodesWord helps those who leave out "show".
func (a *app) unknownCodesWord(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	if id, err := oneWord("code", args[0], bookIDs()); err == nil {
		return fmt.Errorf("to see that code: lowvent codes show %s", id)
	}
	return unknownWord("subcommand of codes", args[0], []string{"show", "diff"})
}

// bookIDs lists every book that the program carries.
func bookIDs() []string {
	var ids []string
	for _, p := range code.Profiles() {
		ids = append(ids, p.ID)
	}
	return ids
}

// codeIDs lists the codes that can be chosen.
func codeIDs() []string {
	var ids []string
	for _, p := range code.Profiles() {
		if p.Book == code.BookProfile {
			ids = append(ids, p.ID)
		}
	}
	return ids
}

func (a *app) listCodes(v view) error {
	p := v.page()
	p.Para(text.Strong, 0, "Codes that can be chosen, with --code ID or in the file under /where/code")
	for _, each := range code.Profiles() {
		if each.Book == code.BookProfile {
			codeEntry(p, each)
		}
	}
	p.Blank()
	p.Para(text.Strong, 0, "Books that every run is judged by")
	for _, each := range code.Profiles() {
		if each.Book != code.BookProfile {
			codeEntry(p, each)
		}
	}
	return a.print(p)
}

func codeEntry(p *text.Page, each *code.Profile) {
	p.Blank()
	p.Item(text.Strong, 0, 2, each.ID)
	p.Para(text.Plain, 2, each.Title)
	p.Field(text.Plain, 2, "edition", 9, text.Plain, each.Edition)
	if each.Book == code.BookProfile {
		p.Field(text.Plain, 2, "scope", 9, text.Plain, each.Scope.Text)
	}
	p.Field(text.Plain, 2, "limits", 9, text.Plain, limitCounts(each))
}

// limitCounts counts the limits of a book by how they are known.
func limitCounts(p *code.Profile) string {
	n := map[code.Provenance]int{}
	for _, e := range p.Entries {
		n[e.Provenance]++
	}
	var parts []string
	for _, each := range []code.Provenance{code.Read, code.SecondHand, code.Memory, code.CommonPractice, code.OwnRule} {
		if n[each] > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n[each], each))
		}
	}
	return fmt.Sprintf("%d: %s", len(p.Entries), strings.Join(parts, ", "))
}

func (a *app) showCode(v view, id string) error {
	p := v.page()
	showBook(p, bookByID(id))
	return a.print(p)
}

func showBook(p *text.Page, book *code.Profile) {
	codeEntry(p, book)
	p.Field(text.Plain, 2, "law in", 9, text.Plain, book.Jurisdiction)
	if book.Note != "" {
		p.Field(text.Plain, 2, "note", 9, text.Plain, book.Note)
	}
	terms := map[string]*code.Term{}
	for _, t := range code.Terms() {
		terms[t.ID] = t
	}
	for i := range book.Entries {
		p.Blank()
		showEntry(p, terms[book.Entries[i].Term], &book.Entries[i])
	}
	if len(book.NotCovered) > 0 {
		p.Blank()
		p.Para(text.Strong, 0, "What it does not answer here")
		for _, each := range book.NotCovered {
			p.Item(text.Plain, 2, 2, "- "+each)
		}
	}
}

func showEntry(p *text.Page, t *code.Term, e *code.Entry) {
	p.Item(text.Strong, 2, 2, e.Term)
	field := func(label, content string) {
		if content != "" {
			p.Field(text.Plain, 4, label, 10, text.Plain, content)
		}
	}
	field("asks", t.Asks)
	field("says", e.Says)
	field("rule", ruleWords(t, e))
	field("document", strings.TrimSpace(e.Cite()+edition(e)))
	field("seen at", e.Address)
	field("known", saying.Provenance(report.Provenance(e.Provenance)))
	field("for", firstUse(e))
	field("note", e.Note)
}

// ruleWords tells a rule with its sense, such as "at least 24 in".
func ruleWords(t *code.Term, e *code.Entry) string {
	switch t.Sense {
	case code.Least:
		return "at least: " + e.Rule.String()
	case code.Most:
		return "at most: " + e.Rule.String()
	}
	return e.Rule.String()
}

func edition(e *code.Entry) string {
	if e.Edition == "" {
		return ""
	}
	return " (" + e.Edition + ")"
}

func firstUse(e *code.Entry) string {
	var parts []string
	if !e.From.IsZero() {
		parts = append(parts, "what was first used on "+e.From.String()+" or later")
	}
	if !e.Until.IsZero() {
		parts = append(parts, "what was first used before "+e.Until.String())
	}
	return strings.Join(parts, ", and ")
}
