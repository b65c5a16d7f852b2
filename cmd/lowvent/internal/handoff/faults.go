package handoff

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"lowvent.example/schema/report"
)

// numbered are the findings that are open, in the report's order, each with the number by
// which every page calls it: those not met, those not known, and those left to the fitter.
func (m *Matter) numbered() []*report.Finding {
	open := m.findings(ended(report.NotMet))
	open = append(open, m.findings(ended(report.NotKnown))...)
	return append(open, m.findings(func(f *report.Finding) bool { return f.Reason == report.AskFitter && f.Outcome == report.NotApplicable })...)
}

// numbers is the number of each open finding.
func (m *Matter) numbers() map[*report.Finding]int {
	n := map[*report.Finding]int{}
	for i, f := range m.numbered() {
		n[f] = i + 1
	}
	return n
}

// fault is one question that ended alike for one thing or several.
type fault struct {
	findings []*report.Finding
	first    int // the number of the first
}

// faults puts the findings of one check and one outcome together, in the report's order.
func (m *Matter) faults(open []*report.Finding) []fault {
	numbers := m.numbers()
	var all []fault
	for _, f := range open {
		i := slices.IndexFunc(all, func(each fault) bool {
			return each.findings[0].Check == f.Check && each.findings[0].Outcome == f.Outcome && each.findings[0].Word == f.Word
		})
		if i < 0 {
			i = len(all)
			all = append(all, fault{first: numbers[f]})
		}
		all[i].findings = append(all[i].findings, f)
	}
	return all
}

// title is the question with the numbers of its findings.
func (f fault) title() string {
	number := fmt.Sprint(f.first)
	if last := f.first + len(f.findings) - 1; last > f.first {
		number += " to " + fmt.Sprint(last)
	}
	return number + ". " + f.findings[0].Asks + outcome(f.findings[0])
}

// things names what the findings are of.
func (f fault) things() string {
	var names []string
	for _, each := range f.findings {
		names = append(names, each.Label)
	}
	return strings.Join(names, ", ")
}

// alike is what the findings say, each thing once.
func (f fault) alike(say func(*report.Part) string) []string {
	var all []string
	for _, each := range f.findings {
		for _, said := range alike(each, say) {
			if !slices.Contains(all, said) {
				all = append(all, said)
			}
		}
	}
	return all
}

// gravest are the checks in the order in which their dangers come first on the page of the
// worst: what lets the most gas in the soonest, then what lights it, then what poisons. The
// order is this program's own, and holds among findings of one signal word; what is not
// among them comes after, in the report's order.
func gravest() []string {
	return []string{
		"regulator.present", "line.open-end", "cylinder.outside-living", "cylinder.in-locker", "changeover.no-return", "cylinder.upright", "cylinder.fill",
		"locker.sealed", "locker.penetrations", "locker.low-vent", "ignition.near-gas", "locker.vent-clear", "locker.vent-discharge", "space.gas-trap",
		"appliance.gas-kind", "appliance.outdoor-only", "appliance.portable", "appliance.room-sealed", "appliance.room-forbidden", "flue.route", "flue.terminal", "appliance.flame-guard",
	}
}

// byGravity sorts faults for the page of the worst.
func byGravity(all []fault) []fault {
	order := gravest()
	rank := func(f fault) int {
		if i := slices.Index(order, f.findings[0].Check); i >= 0 {
			return i
		}
		return len(order)
	}
	sorted := slices.Clone(all)
	slices.SortStableFunc(sorted, func(a, b fault) int {
		return cmp.Or(cmp.Compare(b.findings[0].Word.Rank(), a.findings[0].Word.Rank()), strings.Compare(string(b.findings[0].Outcome), string(a.findings[0].Outcome)), cmp.Compare(rank(a), rank(b)))
	})
	return sorted
}
