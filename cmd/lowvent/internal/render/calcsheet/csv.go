package calcsheet

import (
	"encoding/csv"
	"io"
	"strconv"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// Columns are the columns of the table, in order. Those of numbers hold a number or
// nothing; all others hold text, guarded (see guard).
func Columns() []string {
	return []string{"check", "subject", "clause", "about", "outcome", "reason", "role", "symbol", "what", "formula", "valid", "source",
		"value", "si_value", "si_low", "si_high", "si_unit", "basis", "pointer", "file", "line", "column", "point", "across_si", "across_unit"}
}

// CSV writes the working of a run as a table after RFC 4180: one header, lines that end
// in CR LF, quotes where a text needs them. What stands above and below the working on
// a page are rows with a role of their own, since RFC 4180 knows no comments: the first
// rows are the cautions, the last says to keep the gas off. The error is that of the
// writer.
func CSV(w io.Writer, run *report.Run) error {
	t := &table{out: csv.NewWriter(w)}
	t.out.UseCRLF = true
	t.record(Columns())
	for _, each := range run.Caution {
		t.put(row{"role": "caution", "what": each})
	}
	for i := range run.Files {
		t.file(run, &run.Files[i])
	}
	t.put(row{"role": "keep-off", "what": report.KeepOff})
	t.out.Flush()
	return t.out.Error()
}

// table writes rows. A csv.Writer keeps its first error for the end.
type table struct{ out *csv.Writer }

func (t *table) record(cells []string) { _ = t.out.Write(cells) }

func (t *table) put(rows ...row) {
	all := row{}
	for _, each := range rows {
		for column, text := range each {
			all[column] = text
		}
	}
	var cells []string
	for _, column := range Columns() {
		cells = append(cells, cell(column, all[column]))
	}
	t.record(cells)
}

func (t *table) file(run *report.Run, f *report.FileReport) {
	for _, each := range head(run, f) {
		t.put(row{"role": "head", "what": each.Label, "value": each.Text})
	}
	for i := range f.Faults {
		fault := &f.Faults[i]
		t.put(at(&fault.Place), row{"role": "fault", "what": fault.What, "valid": fault.Expected, "value": fault.Mend})
	}
	for i := range f.Findings {
		t.finding(&f.Findings[i])
	}
	for i := range f.Figures {
		t.figure(&f.Figures[i])
	}
}

func (t *table) finding(f *report.Finding) {
	of := row{"check": f.Check, "subject": f.Subject}
	ended := row{"outcome": string(f.Outcome), "reason": string(f.Reason)}
	t.put(of, ended, at(&f.Place), row{"role": "question", "what": f.Asks, "value": f.Label + ": " + saying.Answer(f.Outcome, f.Reason)})
	if f.Waiver != nil {
		t.put(of, ended, at(&f.Waiver.Place), row{"role": "waiver", "what": waived(f.Waiver), "value": f.Waiver.Reason})
	}
	for i := range f.Parts {
		t.clause(of, i+1, &f.Parts[i])
	}
}

// clause writes the answer to one clause, what it compared, what is missing, and every
// line of its working.
func (t *table) clause(of row, number int, p *report.Part) {
	lead := row{"clause": strconv.Itoa(number), "about": p.About, "outcome": string(p.Outcome), "reason": string(p.Reason)}
	answer := row{"role": "answer", "what": p.Text, "value": saying.Answer(p.Outcome, p.Reason)}
	if p.Source != nil {
		answer["source"] = saying.Cite(p.Source)
		answer["valid"] = p.Source.Note
		t.put(of, lead, at(&p.Place), answer)
		t.put(of, lead, row{"role": "rule", "what": p.Source.Rule, "source": p.Source.Address})
	} else {
		t.put(of, lead, at(&p.Place), answer)
	}
	for _, each := range compared(p) {
		t.put(of, lead, amount(each.Amount), row{"role": each.Role})
	}
	t.missing(p.Missing, of, lead)
	t.working(p.Working, bases(p.Inputs), of, lead)
}

func (t *table) missing(all []report.Missing, lead ...row) {
	for i := range all {
		m := &all[i]
		t.put(append(lead, at(&m.Place), row{"role": "missing", "what": m.What, "value": m.Measure})...)
	}
}

func (t *table) working(lines []report.Line, stated map[string]string, lead ...row) {
	for i := range lines {
		l := &lines[i]
		t.put(append(lead, amount(l.Value), at(l.Place), row{"role": l.Role, "symbol": l.Symbol, "what": l.What,
			"formula": l.Formula, "valid": l.Valid, "source": l.Source, "basis": basis(stated, l)})...)
	}
}

func (t *table) figure(f *report.Figure) {
	of := row{"check": f.ID, "subject": f.Subject}
	t.put(of, amount(f.Value), row{"role": "result", "what": f.Label + ": " + f.Title, "valid": f.Note, "value": result(f)})
	t.missing(f.Missing, of)
	t.working(f.Working, nil, of)
	if f.Course != nil {
		t.course(of, f.Course)
	}
}

// course writes every point: what is told across in columns of its own, what is told up
// as the value.
func (t *table) course(of row, c *report.Course) {
	across, up := kindOf(c.Across.Kind), kindOf(c.Up.Kind)
	axes := row{"role": "course", "what": c.Up.Title + " against " + c.Across.Title, "si_unit": up.Symbol(), "across_unit": across.Symbol()}
	for i, each := range c.Points {
		t.put(of, axes, row{"point": strconv.Itoa(i + 1), "across_si": number(each[0]), "si_value": number(each[1]), "value": unit.TextOf(up, each[1])})
	}
}
