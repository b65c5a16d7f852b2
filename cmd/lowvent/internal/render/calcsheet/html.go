package calcsheet

import (
	"bytes"
	"embed"
	"fmt"
	"html/template"
	"io"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/report"
)

//go:embed page.html part.html chart.html page.css
var templates embed.FS

// HTML writes the working of a run as one page that stands for itself: no script, no
// picture, font or style from elsewhere, no link. It is well-formed XML too, for
// programs that read it. The error is that of the writer.
func HTML(w io.Writer, run *report.Run) error {
	var out bytes.Buffer
	if err := parsed().ExecuteTemplate(&out, "page.html", pageOf(run)); err != nil {
		return fmt.Errorf("the page could not be made: %w", err)
	}
	lines := strings.Split(out.String(), "\n")
	for i, each := range lines {
		lines[i] = clean(each)
	}
	_, err := io.WriteString(w, strings.Join(lines, "\n"))
	return err
}

// parsed reads the templates, which are part of the program.
func parsed() *template.Template {
	style, err := templates.ReadFile("page.css")
	if err != nil {
		panic(err)
	}
	t := template.New("").Funcs(template.FuncMap{
		"answer": saying.Answer, "cite": saying.Cite, "waived": waived, "result": result, "compared": compared, "at": saying.At, "exact": exact,
		"picture": picture,
		"meaning": func(s report.Signal) string { return s.Meaning() },
	})
	t = template.Must(t.ParseFS(templates, "*.html"))
	return template.Must(t.New("style").Parse(string(style)))
}

// page is what the templates lay out.
type page struct {
	Name, Title, Hash, KeepOff string
	Cautions                   []string
	Files                      []*sheet
}

// sheet is the part of a page about one file.
type sheet struct {
	Head     []entry
	Faults   []report.Fault
	Findings []*question
	Figures  []*figure
}

type question struct {
	*report.Finding
	Parts []*clause
}

type clause struct {
	*report.Part
	Number int
	Rows   []rung
}

type figure struct {
	*report.Figure
	Rows  []rung
	Chart *chart
}

func pageOf(run *report.Run) *page {
	p := &page{Name: subject(run), KeepOff: report.KeepOff, Cautions: run.Caution}
	p.Title = strings.TrimSuffix("Calculation sheet: "+p.Name, ": ")
	for i := range run.Files {
		f := &run.Files[i]
		p.Hash = f.SHA256[:min(len(f.SHA256), 12)]
		p.Files = append(p.Files, sheetOf(run, f))
	}
	return p
}

func sheetOf(run *report.Run, f *report.FileReport) *sheet {
	s := &sheet{Head: head(run, f), Faults: f.Faults}
	for i := range f.Findings {
		q := &question{Finding: &f.Findings[i]}
		for j := range q.Finding.Parts {
			p := &q.Finding.Parts[j]
			q.Parts = append(q.Parts, &clause{Part: p, Number: j + 1, Rows: rungs(f.File, p.Working, bases(p.Inputs))})
		}
		s.Findings = append(s.Findings, q)
	}
	for i := range f.Figures {
		one := &figure{Figure: &f.Figures[i], Rows: rungs(f.File, f.Figures[i].Working, nil)}
		if c := f.Figures[i].Course; c != nil && len(c.Points) > 0 {
			one.Chart = chartOf(c, fmt.Sprintf("course-%d", i+1))
		}
		s.Figures = append(s.Figures, one)
	}
	return s
}
