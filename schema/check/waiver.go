package check

import (
	"slices"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// waive attaches each waiver of the layout to the finding it speaks of. It
// changes no outcome. A waiver of a check that can't be waived, one whose last
// day has passed, and one that meets no finding are told as such.
func (r *run) waive(checks []Check, findings []report.Finding) []report.Waiver {
	var out []report.Waiver
	for _, each := range r.layout.Waivers.All() {
		w := asWritten(each)
		w.State = r.waiverState(each, checks, findings)
		if w.State == report.WaiverInForce {
			i := waived(findings, w)
			findings[i].Waiver = &w
		}
		out = append(out, w)
	}
	return out
}

func asWritten(w *layout.Waiver) report.Waiver {
	check, _ := w.Check.Get()
	subject, _ := w.Subject.Get()
	reason, _ := w.Reason.Get()
	by, _ := w.DecidedBy.Get()
	until, _ := w.Until.Get()
	pointer := "" // the dwelling as a whole
	if subject != "" {
		pointer = "/" + string(subject)
	}
	return report.Waiver{ID: w.ID(), Check: check, Subject: pointer, Reason: reason, DecidedBy: by,
		Until: until.String(), Place: place(w.Spot())}
}

func (r *run) waiverState(w *layout.Waiver, checks []Check, findings []report.Finding) string {
	plain := asWritten(w)
	until, _ := w.Until.Get()
	i := slices.IndexFunc(checks, func(c Check) bool { return c.ID == plain.Check })
	switch {
	case i >= 0 && checks[i].NeverWaive:
		return report.WaiverNotAllowed
	case until.Last().Before(r.options.On):
		return report.WaiverExpired
	case waived(findings, plain) < 0:
		return report.WaiverUnused
	}
	return report.WaiverInForce
}

// waived finds the finding that a waiver speaks of: one that is not met or not
// known, since there is nothing to waive in the rest.
func waived(findings []report.Finding, w report.Waiver) int {
	return slices.IndexFunc(findings, func(f report.Finding) bool {
		return f.Check == w.Check && f.Subject == w.Subject && (f.Outcome == report.NotMet || f.Outcome == report.NotKnown)
	})
}
