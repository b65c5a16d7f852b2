package sarif

import (
	"maps"
	"slices"
	"strings"

	"lowvent.example/schema/report"
)

// The rules that are no checks: their results speak of a file as a whole.
const (
	unusableRule = "file.unusable"
	notKnownRule = "file.not-known"
)

// tagged marks every rule as what it is, where viewers show tags.
const tagged = "file check, not inspection"

// rules lists every check that was asked of any file, sorted, and this package's own.
func rules(r *report.Run) []rule {
	known := map[string]rule{
		unusableRule: own(unusableRule, "Can the file be read as a layout?", "Of a file that can't be used nothing is judged: what is wrong in it is not found."),
		notKnownRule: own(notKnownRule, "Does the file state what its questions ask for?",
			"What the file does not state is not known. It never counts as good, and on questions of DANGER and WARNING it counts like not met. The single questions are the results of kind open."),
	}
	for i := range r.Files {
		for j := range r.Files[i].Findings {
			f := &r.Files[i].Findings[j]
			if old, is := known[f.Check]; !is || report.Signal(old.Properties.Word).Rank() < f.Word.Rank() {
				known[f.Check] = rule{ID: f.Check, Short: say(f.Asks), Full: say(f.Why), Configuration: configuration{level(f.Word)},
					Properties: ruleProperties{string(f.Word), []string{tagged}}}
			}
		}
	}
	return slices.SortedFunc(maps.Values(known), func(a, b rule) int { return strings.Compare(a.ID, b.ID) })
}

func own(id, asks, why string) rule {
	return rule{ID: id, Short: say(asks), Full: say(why), Configuration: configuration{level(report.Danger)},
		Properties: ruleProperties{string(report.Danger), []string{tagged}}}
}

// level is the severity of a signal word (3.27.10).
func level(w report.Signal) string {
	switch w {
	case report.Danger, report.Warning:
		return "error"
	case report.Caution:
		return "warning"
	}
	return "note"
}
