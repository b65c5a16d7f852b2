package check

import (
	"context"
	"fmt"
	"runtime/debug"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// Options are what a run depends on beside the layout and the code.
type Options struct {
	On      unit.Date // date of judgement
	Working bool      // keep the working of every finding and figure
	Workers int       // at least 1; changes nothing but the time a run takes

	Overlay *code.Overlay // local rules over the code; nil when there are none
}

// Set is a body of checks and figures that belong together.
type Set struct {
	Checks  []Check
	Figures []Shown
}

// WithoutDetail is the set for an ordinary report: all checks, and the figures that
// are not for those alone who ask for them.
func (set Set) WithoutDetail() Set {
	set.Figures = slices.DeleteFunc(slices.Clone(set.Figures), func(f Shown) bool { return f.Detail })
	return set
}

// Join puts sets together, sorted by id.
func Join(sets ...Set) Set {
	var all Set
	for _, each := range sets {
		all.Checks = append(all.Checks, each.Checks...)
		all.Figures = append(all.Figures, each.Figures...)
	}
	slices.SortFunc(all.Checks, func(a, b Check) int { return strings.Compare(a.ID, b.ID) })
	slices.SortFunc(all.Figures, func(a, b Shown) int { return strings.Compare(a.ID, b.ID) })
	return all
}

// Result is what a run found, in reading order.
type Result struct {
	Findings []report.Finding
	Figures  []report.Figure
	Waivers  []report.Waiver
}

// run is one run over one layout.
type run struct {
	layout  *layout.Layout
	codes   code.Codes
	options Options
	figures sync.Map // figureKey → *computed
	kept    sync.Map // key of Once → func() any
}

// job is one question for one subject.
type job struct {
	check   *Check
	subject layout.Item
	section *layout.Spot // set instead of subject when the whole list is absent or empty
	known   bool
}

// Run puts every check to every one of its subjects. Each pair ends in exactly
// one finding: silence never means good. The result does not depend on the
// number of workers. It ends early only when ctx does, with ctx's error; and it
// begins only with a full day to judge by, since a date that is missing would
// outlive no alarm.
func Run(ctx context.Context, set Set, l *layout.Layout, codes code.Codes, o Options) (Result, error) {
	if o.On.Day == 0 {
		return Result{}, fmt.Errorf("the date of judgement is %q; expected a full day, such as \"2031-05-20\"", o.On)
	}
	r := &run{layout: l, codes: codes.Under(o.Overlay, o.On), options: o}
	findings, err := r.judgeAll(ctx, r.jobs(set.Checks))
	if err != nil {
		return Result{}, err
	}
	out := Result{Findings: findings}
	out.Waivers = r.waive(set.Checks, out.Findings)
	for _, f := range set.Figures {
		out.Figures = append(out.Figures, f.show(r)...)
	}
	report.Sort(out.Findings)
	return out, nil
}

// judgeAll judges each job in a slot of its own. A fault of the program in one of
// the workers stops the run and surfaces here, where the caller can meet it.
func (r *run) judgeAll(ctx context.Context, jobs []job) ([]report.Finding, error) {
	findings := make([]report.Finding, len(jobs))
	next := make(chan int)
	going, stop := context.WithCancel(ctx)
	defer stop()
	var workers sync.WaitGroup
	var fault atomic.Pointer[string]
	for range max(1, r.options.Workers) {
		workers.Go(func() {
			defer func() {
				if p := recover(); p != nil {
					text := fmt.Sprintf("%v\n\n%s", p, debug.Stack())
					fault.CompareAndSwap(nil, &text)
					stop()
				}
			}()
			var book notebook
			for i := range next {
				findings[i] = r.judge(jobs[i], &book)
			}
		})
	}
	err := feed(going, next, len(jobs))
	workers.Wait()
	if text := fault.Load(); text != nil {
		panic(*text)
	}
	return findings, err
}

func feed(ctx context.Context, next chan<- int, n int) error {
	defer close(next)
	for i := range n {
		if ctx.Err() != nil {
			return ctx.Err()
		}
		select {
		case next <- i:
		case <-ctx.Done():
			return ctx.Err()
		}
	}
	return nil
}

func (r *run) jobs(checks []Check) []job {
	var jobs []job
	for i := range checks {
		c := &checks[i]
		items, section, known := c.subjects(r.layout)
		if len(items) == 0 || !known { // of a list that was left out, nothing is asked of what it may hold
			jobs = append(jobs, job{check: c, section: section, known: known})
		}
		for _, each := range items {
			jobs = append(jobs, job{check: c, subject: each})
		}
	}
	return jobs
}

func (r *run) judge(j job, book *notebook) report.Finding {
	if j.subject == nil {
		return j.check.noSubject(j.section, j.known)
	}
	var rulings []Ruling
	for _, f := range j.check.clauses {
		rulings = append(rulings, r.atWorst(nil, j.subject.Spot(), func(s *Sheet) Ruling { return f(s, j.subject) }))
	}
	return j.check.finding(j.subject, and(rulings), book)
}

// atWorst rules on a clause at every corner of its tolerances, given the corner at
// which the clause is that it is a part of; the worst decides.
func (r *run) atWorst(up *picker, about *layout.Spot, f func(*Sheet) Ruling) Ruling {
	var worst Ruling
	all := corners(up, func(p *picker) {
		s := r.sheet(p, about)
		got := s.settle(f(s))
		if !worst.made || worse(got, worst) {
			worst = got
		}
	})
	if !all && rangesOver(worst.worst()) {
		s := r.sheet(nil, about)
		s.miss("exact values: too many of those that count here carry a tolerance", about)
		return s.settle(Ruling{})
	}
	return worst
}

func worse(a, b Ruling) bool {
	wa, wb := a.worst().weight(), b.worst().weight()
	return wa > wb || wa == wb && a.margin < b.margin
}

func (c *Check) finding(subject layout.Item, r Ruling, book *notebook) report.Finding {
	f := c.blank(subject.Spot(), subject.Label())
	f.Parts = make([]report.Part, len(r.parts))
	for i, p := range r.parts {
		p.write(&f.Parts[i], book)
	}
	worst := &f.Parts[0]
	f.Outcome, f.Reason, f.Place = worst.Outcome, worst.Reason, worst.Place
	if f.Place == (report.Place{}) {
		f.Place = PlaceOf(subject.Spot().Head())
	}
	if r.fitter {
		f.MayAct = report.LicensedFitter
	}
	if f.Outcome == report.Within && (c.claims(f.Parts) || local(f.Parts)) {
		f.Reason = report.ToProve
	}
	return f
}

func (c *Check) noSubject(section *layout.Spot, known bool) report.Finding {
	f := c.blank(section, section.Key())
	f.Place = PlaceOf(section.Head())
	p := report.Part{Outcome: report.NotApplicable, Reason: report.NoSubject, Place: f.Place, Text: "the file states that there are none"}
	if !known {
		p.Outcome, p.Reason, p.Text = report.NotKnown, report.MissingInput, ""
		p.Missing = []report.Missing{{What: "the list " + section.Key() + " ({} states that there are none)",
			Measure: layout.HowTo(section.Pointer()), Place: f.Place}}
	}
	f.Outcome, f.Reason, f.Parts = p.Outcome, p.Reason, []report.Part{p}
	return f
}

func (c *Check) blank(spot *layout.Spot, label string) report.Finding {
	return report.Finding{Check: c.ID, Asks: c.Asks, Why: c.Why, Subject: spot.Pointer(), Label: label, Word: c.Word, MayAct: c.MayAct}
}
