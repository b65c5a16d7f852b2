package term

import (
	"fmt"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// counted counts every question of a file: nothing that was asked is left out.
func (p *page) counted(run *report.Run, f *report.FileReport) {
	c := &f.Counts
	p.Blank()
	p.Item(text.Plain, 0, indent, fmt.Sprintf("Counted: not met: %d danger, %d warning, %d caution, %d notice; %d not known; %d within limit as stated (%d to prove); "+
		"%d not covered; %d for the fitter; %d not applicable; %d waived.",
		c.Danger, c.Warning, c.Caution, c.Notice, c.NotKnown, c.Within, c.ToProve, c.NotCovered, c.AskFitter, c.NoSubject+c.RuleExempts, c.Waived))
	p.Item(text.Plain, 0, indent, "Judged on "+run.On+"; what hangs on a date may end otherwise on a later day.")
	if f.Code != nil && !f.Code.Governs {
		p.Para(strong, 0, f.Code.Title+" is a borrowed yardstick here: it is not shown to be the law for this dwelling.")
	}
}

// result is the last paragraph of every report, clean or not.
func (p *page) result(run *report.Run) {
	p.Blank()
	if len(run.Files) != 1 {
		for i := range run.Files {
			p.Item(text.Plain, 0, indent, run.Files[i].File+": "+saying.ResultOf(run, &run.Files[i])+".")
		}
	}
	p.Para(strong, 0, saying.Result(run))
}
