package term

import (
	"io"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// Trial writes what the edits of a trial make of the file as it is: what ends otherwise,
// the worst first, and the result of the trial as a whole. The error is that of the writer.
func Trial(w io.Writer, run *report.Run, old *report.FileReport, o Options) error {
	p := newPage(o)
	for _, each := range run.Caution {
		p.Para(strong, 0, each)
	}
	f := &run.Files[0]
	p.Blank()
	p.head(f)
	changes := report.Compare(old, f)
	if len(changes) == 0 {
		p.heading("Every question ends as it does in the file as it is.")
	}
	for _, turn := range report.Turns() {
		p.turned(turn, changes)
	}
	p.counted(run, f)
	p.Para(text.Plain, 0, "Against the file as it is: "+tallied(changes)+". What is alike in both is not told above; the whole report of the trial: --format terminal.")
	p.Blank()
	p.Para(strong, 0, saying.Result(run))
	_, err := p.WriteTo(w)
	return err
}
