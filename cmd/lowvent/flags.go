package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// choice is a flag that takes one of a few words, in any case.
type choice struct {
	what    string // "format", in messages
	kind    string // "FORMAT", in help
	value   string
	allowed []string
	given   bool // on the command line
}

func (c *choice) Set(s string) error {
	word, err := oneWord(c.what, s, c.allowed)
	if err != nil {
		return err
	}
	c.value, c.given = word, true
	return nil
}

func (c *choice) String() string { return c.value }

// Type names the flag's value in help.
func (c *choice) Type() string { return c.kind }

// oneWord finds a word among those allowed, or tells which may be meant.
func oneWord(what, s string, allowed []string) (string, error) {
	i := slices.IndexFunc(allowed, func(each string) bool { return strings.EqualFold(each, s) })
	if i >= 0 {
		return allowed[i], nil
	}
	return "", unknownWord(what, s, allowed)
}

func unknownWord(what, s string, allowed []string) error {
	return advice{fmt.Errorf("there is no %s %q%s", what, s, meant(s, allowed)), "There are: " + strings.Join(allowed, ", ")}
}

// meant is the end of a message that names the word that was probably meant:
// the nearest, or the only one that begins so; "" when there is none.
func meant(word string, known []string) string {
	near := source.Nearest(word, known)
	if near == "" {
		near = onlyWithPrefix(word, known)
	}
	if near == "" {
		return ""
	}
	return fmt.Sprintf("; did you mean %q?", near)
}

func onlyWithPrefix(prefix string, known []string) string {
	found := ""
	for _, each := range known {
		if prefix == "" || !strings.HasPrefix(each, strings.ToLower(prefix)) {
			continue
		}
		if found != "" {
			return ""
		}
		found = each
	}
	return found
}

// dateFlag is a full day; the zero dateFlag is none given.
type dateFlag struct{ unit.Date }

func (d *dateFlag) Set(s string) error {
	date, err := unit.ParseDate(s)
	if err != nil {
		return err
	}
	if date.Day == 0 {
		return fmt.Errorf("%q is not a whole day; it is written YYYY-MM-DD, for example \"2026-11-25\"", s)
	}
	d.Date = date
	return nil
}

// Type names the flag's value in help.
func (d *dateFlag) Type() string { return "YYYY-MM-DD" }

// complete offers words for a flag to the shell, which are worked out only when
// the shell asks.
func complete(cmd *cobra.Command, flag string, words func() []string) {
	err := cmd.RegisterFlagCompletionFunc(flag, func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return words(), cobra.ShellCompDirectiveNoFileComp
	})
	if err != nil {
		panic(err) // the flag was defined a line above
	}
}

// noArguments refuses what follows a command that takes nothing.
func noArguments(cmd *cobra.Command, args []string) error {
	if len(args) > 0 {
		return fmt.Errorf("%s takes no arguments, and was given %q", cmd.CommandPath(), args[0])
	}
	return nil
}
