package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/code"
)

func (a *app) codesDiffCommand(v *viewFlags) *cobra.Command {
	return &cobra.Command{
		Use:   "diff A B",
		Short: "Show the questions that two codes answer differently",
		Long: `Diff puts two codes side by side, question by question: the rule of each in words
and how it is known, or "silent". What only one of them answers counts as a
difference. It says nothing of which one holds for a dwelling, and no run mixes
the figures of two codes.`,
		Example: "  lowvent codes diff us-mobile-structure eu-leisure-vehicle",
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 1 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return bookIDs(), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) != 2 {
				return fmt.Errorf("name two codes of: %s", strings.Join(bookIDs(), ", "))
			}
			var books [2]*code.Profile
			for i, word := range args {
				id, err := oneWord("code", word, bookIDs())
				if err != nil {
					return err
				}
				books[i] = bookByID(id)
			}
			p := a.onTerminal(v).page()
			diffBooks(p, books[0], books[1])
			return a.print(p)
		},
	}
}

// bookByID gives the book of an id that is known to be one.
func bookByID(id string) *code.Profile {
	for _, p := range code.Profiles() {
		if p.ID == id {
			return p
		}
	}
	return nil
}

// diffBooks tells of every term of the two books: the ones that differ in full,
// the others by name, so that none is left to be guessed.
func diffBooks(p *text.Page, left, right *code.Profile) {
	for _, book := range []*code.Profile{left, right} {
		p.Item(text.Strong, 0, 2, book.ID)
		p.Para(text.Plain, 2, book.Title)
	}
	var alike, silent []string
	for _, t := range code.Terms() {
		if t.Book != left.Book && t.Book != right.Book {
			continue
		}
		a, b := left.Entry(t), right.Entry(t)
		switch {
		case a == nil && b == nil:
			silent = append(silent, t.ID)
		case sameRule(t, a, b):
			alike = append(alike, t.ID)
		default:
			p.Blank()
			p.Item(text.Strong, 0, 2, t.ID)
			p.Para(text.Plain, 2, t.Asks)
			side(p, left, t, a)
			side(p, right, t, b)
		}
	}
	p.Blank()
	named(p, "The same rule in both: ", alike)
	named(p, "Silent in both: ", silent)
}

func named(p *text.Page, what string, ids []string) {
	if len(ids) == 0 {
		ids = []string{"none"}
	}
	p.Item(text.Plain, 0, 2, what+strings.Join(ids, ", "))
}

// sameRule tells whether two entries ask the same, by the words of their rules.
// A figure that is written in two ways counts as two: better one line too many.
// An entry that is only remembered is never judged, so it equals none that is.
func sameRule(t *code.Term, a, b *code.Entry) bool {
	if a == nil || b == nil {
		return a == b
	}
	judged := (a.Provenance == code.Memory) == (b.Provenance == code.Memory)
	return judged && ruleWords(t, a) == ruleWords(t, b) && a.From == b.From && a.Until == b.Until
}

// side tells what one book answers to a term.
func side(p *text.Page, book *code.Profile, t *code.Term, e *code.Entry) {
	if e == nil {
		p.Item(text.Plain, 2, 2, book.ID+": silent")
		return
	}
	p.Item(text.Plain, 2, 2, book.ID+": "+stated(t, e))
	p.Para(text.Plain, 4, cited(e))
	if dates := firstUse(e); dates != "" {
		p.Para(text.Plain, 4, "For "+dates)
	}
}
