package main

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/sweep"
	"lowvent.example/schema/report"
)

// sweepOf puts what a sweep found into the form in which it is written.
func (a *app) sweepOf(s *sweeping, files []report.FileReport, lanes []sweep.Lane) *report.Sweep {
	first := &files[0]
	out := &report.Sweep{Format: report.SweepFormat, Program: report.Program{Name: "lowvent", Version: a.version}, On: s.options.On.String(),
		Title: first.Title, Gas: first.Gas, Code: first.Code, Fitting: first.Candidates, Overlay: first.Overlay, Trial: &s.Trial,
		Turning: []report.SweptQuestion{}, Figures: s.changing(files), Edge: report.Edge, Unseen: report.Unseen}
	out.Swept = report.Swept{Pointer: s.pointer, Kind: s.Kind().String(), Unit: s.Kind().Symbol(), Old: s.old(s.pointer),
		From: s.Text(s.At[0]), To: s.Text(s.At[len(s.At)-1]), Step: s.Size()}
	out.Caution = append(report.Cautions(), out.Words())
	for _, n := range s.At {
		out.Values = append(out.Values, s.value(n))
	}
	for i := range lanes {
		if len(lanes[i].Turns) > 0 {
			out.Turning = append(out.Turning, s.question(&lanes[i]))
		} else {
			count(&out.Steady, report.EndingOf(lanes[i].Findings[0]))
		}
	}
	return out
}

func count(s *report.Steady, e report.Ending) {
	switch e {
	case report.EndsNotMet:
		s.NotMet++
	case report.EndsNotKnown:
		s.NotKnown++
	case report.EndsWithin:
		s.Within++
	default:
		s.Others++
	}
}

func (s *sweeping) value(n int64) report.SweptValue {
	return report.SweptValue{Written: s.Text(n), SI: s.SI(n)}
}

func (s *sweeping) question(lane *sweep.Lane) report.SweptQuestion {
	f := lane.Finding()
	q := report.SweptQuestion{Check: f.Check, Asks: f.Asks, Subject: f.Subject, Label: f.Label, Word: f.Word, MayAct: f.MayAct}
	for _, each := range lane.Findings {
		q.Ended = append(q.Ended, report.EndingOf(each))
	}
	for _, t := range lane.Turns {
		q.Turns = append(q.Turns, report.SweptTurn{Below: s.side(t.Below, t.Was), Above: s.side(t.Above, t.Is), Limits: limitsOf(t)})
	}
	return q
}

func (s *sweeping) side(n int64, f *report.Finding) report.SweptSide {
	return report.SweptSide{SweptValue: s.value(n), Ended: report.EndingOf(f)}
}

// limitsOf lists the limits that are not met on one side of a turn, each once. Where it is
// not met on neither side, no limit decides.
func limitsOf(t sweep.Turn) []report.SweptLimit {
	limits := []report.SweptLimit{}
	for _, f := range []*report.Finding{t.Was, t.Is} {
		if report.EndingOf(f) != report.EndsNotMet {
			continue
		}
		for i := range f.Parts {
			part := &f.Parts[i]
			if part.Outcome == report.NotMet {
				limits = append(limits, report.SweptLimit{About: about(part), Found: part.Found, Needed: part.Needed, Source: part.Source})
			}
		}
	}
	return limits
}

func about(part *report.Part) string {
	return strings.Trim(part.About+": "+part.Text, ": ")
}

// changing lists the figures with a number that is not the same at every value.
func (s *sweeping) changing(files []report.FileReport) []report.SweptFigure {
	figures := []report.SweptFigure{}
	for i := range files[0].Figures {
		f := &files[0].Figures[i]
		out := report.SweptFigure{ID: f.ID, Title: f.Title, Subject: f.Subject, Label: f.Label}
		var texts []string
		for k := range files {
			one := figure(&files[k], f)
			if one == nil || one.Value == nil || one.Value.SI == nil {
				out.Values, texts = append(out.Values, nil), append(texts, "not known")
				continue
			}
			out.Kind, out.Unit = one.Value.Kind, one.Value.Unit
			out.Values, texts = append(out.Values, one.Value.SI), append(texts, one.Value.Text)
		}
		out.First, out.Last = texts[0], texts[len(texts)-1]
		if changes(out.Values) {
			figures = append(figures, out)
		}
	}
	return figures
}

func figure(in *report.FileReport, like *report.Figure) *report.Figure {
	i := slices.IndexFunc(in.Figures, func(f report.Figure) bool { return f.ID == like.ID && f.Subject == like.Subject })
	if i < 0 {
		return nil
	}
	return &in.Figures[i]
}

func changes(values []*float64) bool {
	return slices.ContainsFunc(values, func(v *float64) bool {
		first := values[0]
		return (v == nil) != (first == nil) || v != nil && *v != *first
	})
}

// plotted finds the figures that were asked for by name, as places among those that change.
func plotted(out *report.Sweep, names []string) ([]int, error) {
	var plots []int
	for _, name := range names {
		id, subject, one := strings.Cut(name, ":")
		found := false
		for i := range out.Figures {
			f := &out.Figures[i]
			if f.ID == id && (!one || strings.Trim(f.Subject, "/") == strings.Trim(subject, "/")) {
				plots, found = append(plots, i), true
			}
		}
		if !found {
			return nil, fmt.Errorf("the figure %s does not change in this sweep, and there is nothing to plot; without --figure, those that change are listed", name)
		}
	}
	return plots, nil
}
