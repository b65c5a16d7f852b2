package term

import (
	"fmt"
	"io"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// Anew is one file that was judged anew, or that is not there any more.
type Anew struct {
	Name   string
	Now    *report.FileReport // nil when it is not there any more
	Before *report.FileReport // its last report with findings; nil when it has had none
	Broken bool               // since then it could not be used
}

// Again writes what became of the files of a run that were judged anew: how each differs
// from its last report with findings, its counts, and the result of the whole run. Why tells
// what made all files be judged anew; "" when only their own bytes did. What changed is told
// whole, whatever the view. The error is that of the writer.
func Again(w io.Writer, run *report.Run, files []Anew, why string, o Options) error {
	o.View = View{}
	p := newPage(o)
	p.Blank()
	for _, each := range run.Caution {
		p.Para(strong, 0, each)
	}
	if why != "" {
		p.Blank()
		p.Para(strong, 0, why)
	}
	for i := range files {
		p.anew(run, &files[i])
	}
	p.result(run)
	_, err := p.WriteTo(w)
	return err
}

func (p *page) anew(run *report.Run, a *Anew) {
	switch {
	case a.Now == nil:
		p.Blank()
		p.Field(strong, 0, "GONE", indent, strong, a.Name+": it is not there any more, and nothing of it is judged any more. That mends nothing.")
	case len(a.Now.Faults) > 0:
		p.file(run, a.Now)
		if a.Before != nil {
			p.Blank()
			p.Para(strong, 0, "What was told of "+a.Name+" before is not known to be true any more.")
		}
	case a.Before == nil:
		p.file(run, a.Now)
	default:
		p.since(run, a)
	}
}

// since tells how a file differs from its last report with findings.
func (p *page) since(run *report.Run, a *Anew) {
	p.Blank()
	p.Item(strong, 0, indent, title(a.Now))
	p.Field(text.Plain, 0, "gas now", indent, strong, a.Now.Gas)
	since := "its last report"
	if a.Broken {
		since = "its last report with findings, before the faults that kept it from being used"
	}
	changes := report.Compare(a.Before, a.Now)
	p.Field(text.Plain, 0, "since", indent, text.Plain, fmt.Sprintf("%s: %s. What is alike in both is not told, whatever it is.", since, tallied(changes)))
	if codeID(a.Before) != codeID(a.Now) {
		p.Field(text.Plain, 0, "code", indent, text.Plain, saying.ChosenCode(a.Now))
		p.Para(strong, indent, "The two are judged by unequal codes: what follows comes of both, the codes and the layouts.")
	}
	p.unverified(a.Now)
	for _, turn := range report.Turns() {
		p.turned(turn, changes)
	}
	p.counted(run, a.Now)
}
