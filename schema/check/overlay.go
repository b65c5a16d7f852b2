package check

import (
	"fmt"
	"slices"

	"lowvent.example/schema/code"
	"lowvent.example/schema/report"
)

// NeverLoosened gives every limit that a check rests on which can't be set aside, with
// the words that tell which check that is: no local overlay may ask less there.
func (set Set) NeverLoosened() map[*code.Term]string {
	never := map[*code.Term]string{}
	for _, c := range set.Checks {
		if !c.NeverWaive {
			continue
		}
		for _, t := range c.Limits {
			if never[t] == "" {
				never[t] = fmt.Sprintf("%s rests on it, which nobody can set aside", c.ID)
			}
		}
	}
	return never
}

// local tells whether an answer rests on a local overlay, which nobody has verified.
func local(parts []report.Part) bool {
	return slices.ContainsFunc(parts, func(p report.Part) bool {
		return p.Source != nil && p.Source.Provenance == report.Provenance(code.Local)
	})
}

// overlayOf tells of the local overlay of a run, and of each of its limits whether it
// is heeded. It is nil when there is none.
func overlayOf(o Options, chosen *code.Profile) *report.Overlay {
	if o.Overlay == nil {
		return nil
	}
	out := &report.Overlay{File: o.Overlay.File, SHA256: o.Overlay.SHA256, Title: o.Overlay.Title, Over: o.Overlay.Over}
	for i := range o.Overlay.Entries {
		e := &o.Overlay.Entries[i]
		one := report.LocalLimit{Term: e.Term, Says: e.Says, Document: e.Cite(), State: report.LocalInForce}
		switch {
		case chosen == nil || chosen.ID != o.Overlay.Over:
			one.State = report.LocalOtherCode
		case e.ExpiredBy(o.On):
			one.State = report.LocalExpired
		}
		if l := e.Loosens; l != nil {
			one.Loosens, one.By, one.Licence, one.Reason, one.Until = true, l.By, l.Licence, l.Reason, l.Until.String()
		}
		out.Limits = append(out.Limits, one)
	}
	return out
}
