package calcsheet

import (
	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

// comparison is one side of what a clause held against its limit, or the difference.
type comparison struct {
	Role   string
	Amount *report.Amount
}

// compared lists what a clause found, what it needed and by how much that is short.
func compared(p *report.Part) []comparison {
	var all []comparison
	for _, each := range []comparison{{"found", p.Found}, {"needed", p.Needed}, {"short", p.Short}} {
		if each.Amount != nil {
			all = append(all, each)
		}
	}
	return all
}

// result tells what a figure came to.
func result(f *report.Figure) string {
	switch {
	case f.Value != nil:
		return f.Value.Text
	case f.Course != nil:
		return "a course, at the values as written"
	}
	return "not known"
}

// kindOf finds a kind by its name; the zero Kind is none.
func kindOf(name string) unit.Kind {
	k, _ := unit.KindNamed(name)
	return k
}
