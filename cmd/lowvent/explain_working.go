package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/check"
	"lowvent.example/schema/report"
)

// showWorking judges one layout by one check or figure, and shows every line of
// the working. It explains: it is no judgement of the layout, so the exit status
// tells only whether the layout could be used.
func (a *app) showWorking(cmd *cobra.Command, v *viewFlags, f *explainFlags, only check.Set, name string) error {
	books, bookFiles, unusable, err := a.books(f.books)
	if err != nil {
		return err
	}
	in, err := a.oneInput(name)
	if err != nil {
		return err
	}
	j := judging{set: only, books: books, failAt: report.Warning,
		options: check.Options{On: a.day(f.on), Working: true, Workers: 1, Overlay: books.overlay}}
	files := unusable
	if files == nil {
		bookFiles = []input{in}
		files = j.all(cmd.Context(), bookFiles)
	}
	status := statusNothing
	if len(files[0].Faults) > 0 {
		status = statusUnusable
	} else if err := pick(&files[0], f.subject); err != nil {
		return err
	}
	to := delivery{forms: workingForms(), screen: f.format.value, files: f.out.asked}
	return a.deliver(to, a.reportOf(j, files), status, v, excerpts(bookFiles))
}

// pick keeps the findings and figures of one subject.
func pick(f *report.FileReport, subject string) error {
	if subject == "" {
		return nil
	}
	want := "/" + strings.Trim(subject, "/")
	var findings []report.Finding
	var figures []report.Figure
	var known []string
	for _, each := range f.Findings {
		known = append(known, strings.TrimPrefix(each.Subject, "/"))
		if each.Subject == want {
			findings = append(findings, each)
		}
	}
	for _, each := range f.Figures {
		known = append(known, strings.TrimPrefix(each.Subject, "/"))
		if each.Subject == want {
			figures = append(figures, each)
		}
	}
	if len(findings)+len(figures) == 0 {
		return noSubject(subject, known)
	}
	f.Findings, f.Figures = findings, figures
	return nil
}

func noSubject(subject string, known []string) error {
	return advice{fmt.Errorf("it is not asked of %q in this layout%s", subject, meant(subject, known)), "It is asked of: " + strings.Join(known, ", ")}
}

func workingPage(v view, f *report.FileReport, on string) *text.Page {
	p := v.page()
	for _, each := range report.Cautions() {
		p.Para(text.Strong, 0, each)
	}
	p.Blank()
	p.Item(text.Plain, 0, 2, fmt.Sprintf("Working for %s, judged on %s%s", f.File, on, byCode(f.Code)))
	for i := range f.Findings {
		findingWorking(p, &f.Findings[i])
	}
	for i := range f.Figures {
		figureWorking(p, &f.Figures[i])
	}
	p.Blank()
	p.Para(text.Strong, 0, report.KeepOff)
	return p
}

func byCode(c *report.Code) string {
	switch {
	case c == nil:
		return ", by no code: none was chosen"
	case !c.Governs:
		return ", by " + c.Title + ", a borrowed yardstick: it is not shown to be the law here"
	}
	return ", by " + c.Title
}

func findingWorking(p *text.Page, f *report.Finding) {
	p.Blank()
	p.Item(text.Strong, 0, 2, fmt.Sprintf("%s  %s: %s", f.Check, f.Label, saying.Answer(f.Outcome, f.Reason)))
	p.Item(text.Plain, 2, 2, f.Asks)
	for i := range f.Parts {
		p.Blank()
		partWorking(p, &f.Parts[i])
	}
}

func partWorking(p *text.Page, part *report.Part) {
	head := saying.Answer(part.Outcome, part.Reason)
	if part.About != "" {
		head = part.About + ": " + head
	}
	if part.Text != "" {
		head += ": " + part.Text
	}
	p.Item(text.Plain, 2, 2, "- "+head)
	field := func(label, content string) {
		if content != "" {
			p.Field(text.Plain, 4, label, 8, text.Plain, content)
		}
	}
	if part.Found != nil {
		field("found", part.Found.Text)
	}
	if part.Needed != nil {
		field("needed", part.Needed.Text)
	}
	if part.Source != nil {
		field("rule", part.Source.Rule)
		field("source", saying.Cite(part.Source))
		field("note", part.Source.Note)
	}
	lacking(p, part.Missing)
	workingLines(p, part.Working)
}

func figureWorking(p *text.Page, f *report.Figure) {
	p.Blank()
	value := "not known"
	switch {
	case f.Value != nil:
		value = f.Value.Text
	case f.Course != nil:
		value = "a course, at the values as written"
	}
	p.Item(text.Strong, 0, 2, fmt.Sprintf("%s  %s: %s: %s", f.ID, f.Label, f.Title, value))
	if f.Note != "" {
		p.Item(text.Plain, 2, 2, f.Note)
	}
	lacking(p, f.Missing)
	if f.Course != nil {
		plot(p, f.Course)
	}
	workingLines(p, f.Working)
}

func lacking(p *text.Page, missing []report.Missing) {
	for _, m := range missing {
		what := m.What
		if strings.HasSuffix(m.Place.Pointer, "/"+what) {
			what = m.Place.Pointer
		}
		p.Field(text.Plain, 4, "missing", 8, text.Plain, what+"  "+saying.At(m.Place))
		p.Para(text.Plain, 14, m.Measure)
	}
}

// workingLines shows each value with what it is, then where it stands or how it
// was computed. A line that two clauses share is shown once.
func workingLines(p *text.Page, lines []report.Line) {
	column := 0
	for i := range lines {
		column = max(column, text.Width(symbol(&lines[i]))+2)
	}
	column = min(column, 24)
	shown := map[string]bool{}
	for i := range lines {
		l := &lines[i]
		value := ""
		if l.Value != nil {
			value = l.Value.Text
		}
		rest := behind(l)
		key := symbol(l) + "\n" + value + "\n" + strings.Join(rest, "\n")
		if shown[key] {
			continue
		}
		shown[key] = true
		p.Field(text.Plain, 4, symbol(l), column, text.Strong, value)
		for _, each := range rest {
			p.Item(text.Plain, 4+column, 2, each)
		}
	}
}

// symbol names a line: by its symbol, or by the key that it was read from.
func symbol(l *report.Line) string {
	switch {
	case l.Symbol != "":
		return l.Symbol
	case l.Place != nil:
		return l.Place.Pointer[strings.LastIndex(l.Place.Pointer, "/")+1:]
	}
	return l.Role
}

// behind tells what a line of a working rests on.
func behind(l *report.Line) []string {
	var out []string
	add := func(s string) {
		if s != "" {
			out = append(out, s)
		}
	}
	add(l.Formula)
	switch {
	case l.Place != nil:
		add(strings.TrimSpace(saying.At(*l.Place) + " " + l.What))
	case l.Value == nil || l.What != l.Value.Text:
		add(l.What)
	}
	add(l.Source)
	if l.Valid != "" {
		add("holds for: " + l.Valid)
	}
	return out
}
