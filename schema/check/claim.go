package check

import (
	"cmp"
	"slices"
	"strings"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// isClaim tells whether an answer's input is a statement that only a fitter can
// prove and that no fitter's test is said to have proved.
func (c *Check) isClaim(in report.Input) bool {
	return in.Basis != string(layout.BasisProved) && slices.ContainsFunc(c.Claims, func(t string) bool { return matches(t, in.Pointer) })
}

// matches tells whether a pointer is one that a template stands for:
// "/lockers/*/sealedFrom/*/seal" for "/lockers/side/sealedFrom/cabin/seal".
func matches(template, pointer string) bool {
	for template != "" && pointer != "" {
		var wanted, token string
		wanted, template, _ = strings.Cut(template[1:], "/")
		token, pointer, _ = strings.Cut(pointer[1:], "/")
		if wanted != "*" && wanted != token {
			return false
		}
		template, pointer = rest(template), rest(pointer)
	}
	return template == pointer
}

// rest puts back the stroke that cutting took.
func rest(s string) string {
	if s == "" {
		return ""
	}
	return "/" + s
}

// claims tells whether an answer rests on a claim.
func (c *Check) claims(parts []report.Part) bool {
	return slices.ContainsFunc(parts, func(p report.Part) bool { return slices.ContainsFunc(p.Inputs, c.isClaim) })
}

// claimsOf lists each claim once, with the checks that rest on it, in the order
// of their pointers.
func claimsOf(set Set, l *layout.Layout, findings []report.Finding) []report.Claim {
	byPointer := map[string]*report.Claim{}
	for i := range findings {
		f := &findings[i]
		if f.Reason != report.ToProve {
			continue
		}
		at := slices.IndexFunc(set.Checks, func(c Check) bool { return c.ID == f.Check })
		for _, p := range f.Parts {
			for _, in := range p.Inputs {
				if set.Checks[at].isClaim(in) {
					claim(byPointer, l, in).rest(f.Check)
				}
			}
		}
	}
	var out []report.Claim
	for _, c := range byPointer {
		out = append(out, *c)
	}
	slices.SortFunc(out, func(a, b report.Claim) int { return cmp.Compare(a.Place.Pointer, b.Place.Pointer) })
	return out
}

type claimed report.Claim

func claim(all map[string]*report.Claim, l *layout.Layout, in report.Input) *claimed {
	c := all[in.Pointer]
	if c == nil {
		node := l.Root().At(in.Pointer)
		c = &report.Claim{Subject: subjectOf(l, in.Pointer), States: node.Key + ": " + strings.Trim(node.Raw(), `"`), Basis: in.Basis, Place: PlaceOf(node.Place())}
		all[in.Pointer] = c
	}
	return (*claimed)(c)
}

func (c *claimed) rest(check string) {
	if !slices.Contains(c.Checks, check) {
		c.Checks = append(c.Checks, check)
		slices.Sort(c.Checks)
	}
}

// subjectOf names the thing that a pointer lies in, and the part of it.
func subjectOf(l *layout.Layout, pointer string) string {
	ref := strings.TrimPrefix(pointer, "/")
	var names []string
	for ref != "" {
		if thing := l.Find(layout.Ref(ref)); thing != nil {
			names = append([]string{thing.Label()}, names...)
		}
		ref = ref[:max(0, strings.LastIndex(ref, "/"))]
	}
	return strings.Join(names, ", ")
}
