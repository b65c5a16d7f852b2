package term

import (
	"slices"
	"strconv"
	"strings"

	"lowvent.example/schema/report"
)

// Only names what is to be shown: a check or figure by its id, or all of a family by the
// beginning of their ids up to a point ("locker."); a thing by its label ("locker rear"),
// or by its JSON Pointer, with all that is below it. Several names show what any of them
// names; none shows all.
type Only []string

// narrow is the part of a report that is shown. Waivers and the overlay stay whole.
func (o Only) narrow(f *report.FileReport) *report.FileReport {
	if len(o) == 0 {
		return f
	}
	n := *f
	n.Findings, n.Figures, n.Claims = nil, nil, nil
	for i := range f.Findings {
		if one := &f.Findings[i]; o.name(one.Check, one.Subject, one.Label) {
			n.Findings = append(n.Findings, *one)
		}
	}
	for i := range f.Figures {
		if one := &f.Figures[i]; o.name(one.ID, one.Subject, one.Label) {
			n.Figures = append(n.Figures, *one)
		}
	}
	for _, c := range f.Claims {
		if o.claim(&c) {
			n.Claims = append(n.Claims, c)
		}
	}
	n.Counts = report.Count(n.Findings, report.Warning)
	return &n
}

// quoted lists the names as they were given.
func (o Only) quoted() string {
	var all []string
	for _, each := range o {
		all = append(all, strconv.Quote(each))
	}
	return strings.Join(all, ", ")
}

func (o Only) name(id, pointer, label string) bool {
	return slices.ContainsFunc(o, func(name string) bool { return names(name, id, pointer, label) })
}

// claim tells whether a claim is of a thing that is named, or bears a check that is.
func (o Only) claim(c *report.Claim) bool {
	thing, _, _ := strings.Cut(c.Subject, ",")
	return o.name("", c.Place.Pointer, thing) || slices.ContainsFunc(c.Checks, func(check string) bool { return o.name(check, "", "") })
}

func names(name, id, pointer, label string) bool {
	switch {
	case name == "":
		return false
	case strings.HasPrefix(name, "/"):
		return pointer == name || strings.HasPrefix(pointer, strings.TrimSuffix(name, "/")+"/")
	}
	return name == id || name == label || strings.HasSuffix(name, ".") && strings.HasPrefix(id, name)
}

// Strange lists the names that name nothing in any file of a run.
func (o Only) Strange(run *report.Run) []string {
	return slices.DeleteFunc(slices.Clone(o), func(name string) bool {
		return slices.ContainsFunc(run.Files, func(f report.FileReport) bool {
			n := Only{name}.narrow(&f)
			return len(n.Findings)+len(n.Figures) > 0
		})
	})
}

// Nameable lists, sorted, what a run has to name: checks and figures, their families, and
// things by label and pointer.
func Nameable(run *report.Run) []string {
	known := map[string]bool{}
	add := func(id, pointer, label string) {
		family, _, _ := strings.Cut(id, ".")
		known[id], known[family+"."], known[pointer], known[label] = true, true, true, true
	}
	for _, f := range run.Files {
		for i := range f.Findings {
			add(f.Findings[i].Check, f.Findings[i].Subject, f.Findings[i].Label)
		}
		for i := range f.Figures {
			add(f.Figures[i].ID, f.Figures[i].Subject, f.Figures[i].Label)
		}
	}
	delete(known, "")
	var all []string
	for name := range known {
		all = append(all, name)
	}
	slices.Sort(all)
	return all
}
