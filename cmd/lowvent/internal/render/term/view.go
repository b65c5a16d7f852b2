package term

import (
	"fmt"
	"strconv"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/report"
)

// View is what of a report is shown, how much of it, and in which order. The zero View
// is the whole report, the worst first. No view changes what was judged: cautions, head,
// counts and result stay those of the whole.
type View struct {
	BySubject bool // under each part of the installation, not by signal word alone
	Brief     bool // a short block for each finding, without figures and lists
	Only      Only // show no more than these

	Within, NotCovered, NotApplicable bool // list these one by one, where else they are only counted
}

// file tells of one file. The sections get the part of the report that is shown; the
// head and the counts have the whole.
func (p *page) file(run *report.Run, f *report.FileReport) {
	p.Blank()
	if len(f.Faults) > 0 {
		p.faults(f)
		return
	}
	p.whole = f
	shown := p.view.Only.narrow(f)
	p.head(f)
	p.shown(shown)
	p.findings(shown)
	if !p.view.Brief {
		p.figures(shown)
		p.toProve(shown)
		p.askFitter(shown)
	}
	p.lists(shown)
	p.counted(run, f)
}

func (p *page) findings(f *report.FileReport) {
	if p.view.BySubject {
		p.bySubject(f)
	} else {
		p.notMet(f)
	}
	if !p.view.BySubject || !p.view.Brief { // else each has had its line
		p.notKnown(f)
	}
}

// shown says in the head that a report is not the whole, so that nobody takes it for that.
func (p *page) shown(f *report.FileReport) {
	if len(p.view.Only) > 0 {
		c, all := &f.Counts, &p.whole.Counts
		p.Field(strong, 0, "shown", indent, strong, fmt.Sprintf("%d of %s (%d of %d not met, %d of %d not known): those of %s. "+
			"All else was judged and is not shown; counts, result and exit status are those of the whole.",
			len(f.Findings), saying.Count(len(p.whole.Findings), "finding"), broken(c), broken(all), c.NotKnown, all.NotKnown, p.view.Only.quoted()))
	}
	if p.view.Brief {
		p.Field(strong, 0, "brief", indent, strong, "left out are excerpts, reasons, sources, mends, figures, and every list that was not asked for; the counts below are whole.")
	}
}

func broken(c *report.Counts) int { return c.Danger + c.Warning + c.Caution + c.Notice }

// number tells how many there are in what is shown, and of how many when that is not all.
func (p *page) number(f *report.FileReport, count func(*report.FileReport) int) string {
	shown, all := count(f), count(p.whole)
	if shown == all {
		return strconv.Itoa(all)
	}
	return fmt.Sprintf("%d of %d", shown, all)
}
