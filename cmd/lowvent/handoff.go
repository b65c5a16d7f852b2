package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"lowvent.example/cmd/lowvent/internal/handoff"
	"lowvent.example/cmd/lowvent/internal/paper"
	"lowvent.example/cmd/lowvent/internal/render/calendar"
	"lowvent.example/cmd/lowvent/internal/render/html"
	"lowvent.example/cmd/lowvent/internal/render/pdf"
	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/term"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

type handoffFlags struct {
	out   outFlag
	books bookFlags
	on    dateFlag
	since string
	sheet choice
}

// paperwork is what the forms are written from. The whole paper is put together once, however
// many forms ask for it.
type paperwork struct {
	matter *handoff.Matter
	whole  func() *paper.Document
}

func paperworkOf(m *handoff.Matter) *paperwork {
	return &paperwork{m, sync.OnceValue(func() *paper.Document { return wholePaper(handoff.Paper(m)) })}
}

// handoffForm is one form in which a hand-off is written.
type handoffForm struct {
	name   string
	binary bool // nothing to read at a terminal
	write  func(io.Writer, *paperwork, pdf.Sheet) error
}

func handoffForms() []handoffForm {
	return []handoffForm{
		{"html", false, func(w io.Writer, p *paperwork, _ pdf.Sheet) error { return html.Write(w, p.whole()) }},
		{"pdf", true, func(w io.Writer, p *paperwork, s pdf.Sheet) error { return pdf.Write(w, p.whole(), s) }},
		{"card", true, func(w io.Writer, p *paperwork, s pdf.Sheet) error {
			return pdf.Write(w, wholePaper(handoff.Card(p.matter)), s)
		}},
		{"calendar", false, func(w io.Writer, p *paperwork, _ pdf.Sheet) error {
			m := p.matter
			of := calendar.Of{Title: m.Report.Title, On: m.Run.On, Program: m.Run.Program.Name + " " + m.Run.Program.Version}
			return calendar.Write(w, of, handoff.Dates(m.Layout))
		}},
	}
}

func handoffNames() []string {
	var names []string
	for _, each := range handoffForms() {
		names = append(names, each.name)
	}
	return names
}

// The sheets that a PDF is laid out for; of the country is the usual one where the dwelling is used.
const (
	sheetOfCountry = "by-country"
	sheetA4        = "a4"
	sheetLetter    = "letter"
)

func sheetNames() []string { return []string{sheetOfCountry, sheetA4, sheetLetter} }

func (a *app) handoffCommand(v *viewFlags) *cobra.Command {
	f := &handoffFlags{
		out:   outFlag{allowed: handoffNames()},
		sheet: choice{what: "sheet", kind: "SHEET", value: sheetOfCountry, allowed: sheetNames()},
	}
	cmd := &cobra.Command{
		Use:   "handoff FILE --out FORMAT=FILE",
		Short: "Write the papers for the licensed gas fitter, with drawings, and a card for the wall",
		Long: `Handoff writes what a builder hands to a licensed gas fitter: who may work and what
is live, what was found, worst first, what is not known, drawings to scale, and the
pages on which the fitter works: claims to prove, plates, schedules, a test sheet,
notes. It is no certificate, and every page says so.

The forms: "html", one file to read on a screen or to print; "pdf", the same paper
with the layout file enclosed; "card", a card for the wall as PDF; "calendar", the
dates that fall due as iCalendar, each a reminder and no proof.

It takes the file as it is: edits that stand in no file belong to "lowvent trial", and
are nothing to hand to anybody.

Exit status: 0 the papers were written, whatever they tell (no approval of the
installation), 2 a file or the command line can't be used, 3 a fault of the program.`,
		Example: `  lowvent handoff layout.json --out html=handoff.html --out pdf=handoff.pdf
  lowvent handoff layout.json --since last-visit.json --out pdf=handoff.pdf
  lowvent handoff layout.json --out card=card.pdf --out calendar=due.ics`,
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return []string{"json"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(cmd *cobra.Command, args []string) error { return a.handoff(cmd, v, f, args) },
	}
	flags := cmd.Flags()
	flags.Var(&f.out, "out", "write the papers in one of the forms into a file, whole or not at all; may be repeated. As FILE, - is standard output, and nothing else goes there. The forms: "+strings.Join(handoffNames(), ", "))
	flags.StringVar(&f.since, "since", "", "tell what has changed since this older `FILE`, that of the last visit")
	flags.Var(&f.sheet, "sheet", "sheet of a PDF: "+strings.Join(sheetNames(), ", ")+" (letter in the United States, Canada and Mexico, else A4)")
	f.books.register(flags)
	flags.Var(&f.on, "on", "judge as on this day (default today)")
	complete(cmd, "sheet", sheetNames)
	complete(cmd, "code", codeIDs)
	cmd.SetFlagErrorFunc(noTrial)
	return cmd
}

// noTrial says of the flags of a trial why a hand-off has none of them.
func noTrial(cmd *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	if !errors.As(err, &unknown) || !slices.Contains([]string{"set", "unset", "sweep"}, unknown.GetSpecifiedName()) {
		return flagError(cmd, err)
	}
	name := "--" + unknown.GetSpecifiedName()
	return advice{fmt.Errorf("edits that stand in no file are nothing to hand to anybody, so handoff takes no %s", name),
		"To try one: lowvent trial layout.json --set /path=VALUE. To hand it off: put it into the file, once it is built and measured"}
}

// handoff judges the layout, makes every paper, and only then writes any.
func (a *app) handoff(cmd *cobra.Command, v *viewFlags, f *handoffFlags, names []string) error {
	switch {
	case len(names) != 1:
		return errors.New("name the one layout to hand off: lowvent handoff layout.json --out pdf=handoff.pdf")
	case len(f.out.asked) == 0:
		return advice{errors.New("say into which file the papers go"), "For example: lowvent handoff " + names[0] + " --out html=handoff.html --out pdf=handoff.pdf"}
	}
	if err := a.noBinaryAtTerminal(f.out.onStandardOutput()); err != nil {
		return err
	}
	books, bookFiles, unusable, err := a.books(f.books)
	if err != nil {
		return err
	}
	var both []input
	for _, name := range append(names, since(f.since)...) {
		in, err := a.oneInput(name)
		if err != nil {
			return err
		}
		both = append(both, in)
	}
	j := judging{set: a.set(), books: books, failAt: report.Warning,
		options: check.Options{On: a.day(f.on), Workers: workersFlag(0).count(), Overlay: books.overlay, Working: true}}
	files := unusable
	if files == nil {
		files, bookFiles = j.all(cmd.Context(), both), both
	}
	run := a.reportOf(j, files)
	to, look := a.beside(v, f.out.onStandardOutput() != "")
	if run.Status == statusUnusable {
		return a.tellFaults(to, run, term.Options{Width: look.width, Colour: look.colour, Excerpt: excerpts(bookFiles)})
	}
	m, err := a.matter(j, both, run)
	if err != nil {
		return err
	}
	return a.handOver(to, look, f, m)
}

func since(name string) []string {
	if name == "" {
		return nil
	}
	return []string{name}
}

// matter is what the papers are made from.
func (a *app) matter(j judging, both []input, run *report.Run) (*handoff.Matter, error) {
	l, _, faults := j.load(both[0])
	if faults != nil {
		return nil, faults
	}
	alone := *run
	alone.Files = run.Files[:1]
	m := &handoff.Matter{Layout: l, Report: &run.Files[0], Run: &alone, Data: both[0].file.Data}
	if len(both) > 1 {
		m.Old = &run.Files[1]
		m.Changes = report.Compare(m.Old, m.Report)
	}
	return m, nil
}

// handOver makes every paper and writes them, and tells what it wrote.
func (a *app) handOver(to io.Writer, look view, f *handoffFlags, m *handoff.Matter) error {
	bodies, from := make([][]byte, len(f.out.asked)), paperworkOf(m)
	for i, each := range f.out.asked {
		bodies[i] = paperIn(each.format, from, sheetFor(f.sheet.value, m.Layout))
	}
	status, wrote := statusNothing, []string{}
	for i, each := range f.out.asked {
		name, err := a.writePaper(each, bodies[i])
		if err != nil {
			a.say("%s", err)
			status = statusUnusable
			continue
		}
		wrote = append(wrote, name)
	}
	if _, err := wrotePage(look, m, wrote).WriteTo(to); err != nil {
		return fmt.Errorf("what was written could not be told: %w", err)
	}
	return exit(status)
}

// wrotePage tells what was written, between the words that every report begins and ends with.
func wrotePage(look view, m *handoff.Matter, wrote []string) *text.Page {
	p := look.page()
	for _, each := range m.Run.Caution {
		p.Para(text.Strong, 0, each)
	}
	p.Blank()
	for _, each := range wrote {
		p.Item(text.Plain, 0, 2, "Wrote "+each)
	}
	p.Blank()
	p.Para(text.Strong, 0, saying.Result(m.Run))
	return p
}

// paperIn makes one form in memory, so that none is ever half a paper.
func paperIn(name string, from *paperwork, sheet pdf.Sheet) []byte {
	var out bytes.Buffer
	for _, each := range handoffForms() {
		if each.name != name {
			continue
		}
		if err := each.write(&out, from, sheet); err != nil {
			panic(fmt.Errorf("the hand-off as %s could not be made: %w", name, err))
		}
	}
	return out.Bytes()
}

// wholePaper is a paper that any page can show.
func wholePaper(d *paper.Document) *paper.Document {
	if err := d.Check(); err != nil {
		panic(err) // what is in a paper is the program's own
	}
	return d
}

// sheetFor is the sheet that was asked for, else that of the country of use.
func sheetFor(word string, l *layout.Layout) pdf.Sheet {
	country, _ := l.Where.Country.Get()
	american := country == "US" || country == "CA" || country == "MX"
	if word == sheetLetter || word == sheetOfCountry && american {
		return pdf.Letter
	}
	return pdf.A4
}
