package main

import (
	"fmt"
	"os"
	"strconv"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"lowvent.example/cmd/lowvent/internal/render/text"
)

// viewFlags are the flags on the look of what is printed for people.
type viewFlags struct {
	colour choice
	width  widthFlag
}

func (v *viewFlags) register(root *cobra.Command) {
	v.colour = choice{what: "way to colour", kind: "WHEN", value: "auto", allowed: colourWords()}
	root.PersistentFlags().Var(&v.colour, "color", "colour the words: always, never, or auto: by NO_COLOR, CLICOLOR_FORCE, TERM and the terminal")
	root.PersistentFlags().Var(&v.width, "width", fmt.Sprintf("columns of the page, %d to %d (default the terminal's, else %d)", text.Narrowest, text.Widest, text.Usual))
	complete(root, "color", colourWords)
}

func colourWords() []string { return []string{"always", "never", "auto"} }

// view is the look of one output.
type view struct {
	width  int
	colour bool
	shown  shown // of the terminal form
}

// onTerminal is the look of standard output.
func (a *app) onTerminal(v *viewFlags) view {
	width, is := a.terminal()
	if !is || width <= 0 {
		width = text.Usual
	}
	if v.width != 0 {
		width = int(v.width)
	}
	return view{width: width, colour: a.coloured(v.colour.value, is)}
}

// inFile is the look of a report that goes into a file: never coloured unless
// that was asked for by name.
func (a *app) inFile(v *viewFlags) view {
	width := text.Usual
	if v.width != 0 {
		width = int(v.width)
	}
	return view{width: width, colour: v.colour.value == "always"}
}

// coloured decides on colour: the flag, then NO_COLOR, then CLICOLOR_FORCE, then
// a terminal that says that it is dumb, then whether there is a terminal.
func (a *app) coloured(flag string, terminal bool) bool {
	set := func(name string) string { v, _ := a.env(name); return v }
	switch {
	case flag != "auto":
		return flag == "always"
	case set("NO_COLOR") != "":
		return false
	case set("CLICOLOR_FORCE") != "" && set("CLICOLOR_FORCE") != "0":
		return true
	case set("TERM") == "dumb":
		return false
	}
	return terminal
}

func terminalOf(f *os.File) func() (int, bool) {
	return func() (int, bool) {
		fd := int(f.Fd())
		if !term.IsTerminal(fd) {
			return 0, false
		}
		width, _, err := term.GetSize(fd)
		if err != nil {
			return 0, true
		}
		return width, true
	}
}

// widthFlag is a number of columns; 0 is none given.
type widthFlag int

func (w *widthFlag) Set(s string) error {
	n, err := strconv.Atoi(s)
	if err != nil || n < text.Narrowest || n > text.Widest {
		return fmt.Errorf("a page has %d to %d columns", text.Narrowest, text.Widest)
	}
	*w = widthFlag(n)
	return nil
}

func (w *widthFlag) String() string {
	if w == nil || *w == 0 {
		return ""
	}
	return strconv.Itoa(int(*w))
}

// Type names the flag's value in help.
func (w *widthFlag) Type() string { return "N" }

// page begins a page of that look.
func (v view) page() *text.Page {
	if v.colour {
		return text.New(v.width, text.Colours())
	}
	return text.New(v.width, nil)
}

// print writes a page to standard output.
func (a *app) print(p *text.Page) error {
	if _, err := p.WriteTo(a.stdout); err != nil {
		return fmt.Errorf("could not write to standard output: %w", err)
	}
	return nil
}
