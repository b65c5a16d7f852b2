package term

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/report"
)

// need is one thing that the file does not state, with all that waits for it.
type need struct {
	place   report.Place
	what    []string
	measure string
	word    report.Signal // the worst of those that wait
	waits   []wait
}

// wait is one check that waits, for these subjects.
type wait struct {
	check  string
	labels []string
}

func (p *page) notKnown(f *report.FileReport) {
	needs := needsOf(f.Findings)
	if len(with(f, open)) == 0 && len(needs) == 0 {
		return
	}
	p.heading(fmt.Sprintf("NOT KNOWN %s: what is not known is never taken as good. To be found out and stated: %s.", p.numberOf(f, open), saying.Count(len(needs), "thing")))
	if p.view.Brief {
		p.Blank()
		p.unknownBriefly(f)
		return
	}
	for i := range needs {
		p.Blank()
		p.need(&needs[i])
	}
	for i := range f.Findings {
		if one := &f.Findings[i]; open(one) && !misses(one) {
			p.Blank()
			p.Field(style(one.Word), 0, string(one.Word), indent, strong, one.Check+", "+one.Label)
			p.Para(text.Plain, indent, one.Asks+" Not known.")
			p.Para(text.Plain, indent, saying.Where(one.Place))
		}
	}
}

func open(f *report.Finding) bool { return f.Outcome == report.NotKnown }

func misses(f *report.Finding) bool {
	return slices.ContainsFunc(f.Parts, func(each report.Part) bool { return len(each.Missing) > 0 })
}

func (p *page) need(n *need) {
	told := n.beyondKey()
	head, below := n.place.Pointer, saying.At(n.place)
	if len(told) > 0 {
		head, below = strings.Join(told, "; "), saying.Where(n.place)
	}
	p.Field(style(n.word), 0, string(n.word), indent, strong, head)
	p.Para(text.Plain, indent, below)
	p.field("measure", n.measure)
	var waits []string
	for _, w := range n.waits {
		waits = append(waits, w.check+" ("+saying.Few(w.labels, 3)+")")
	}
	p.field("waits", strings.Join(waits, ", "))
}

// beyondKey lists what is said of the missing thing that its pointer does not
// say by itself.
func (n *need) beyondKey() []string {
	return slices.DeleteFunc(slices.Clone(n.what), func(what string) bool { return strings.HasSuffix(n.place.Pointer, "/"+what) })
}

// needsOf gathers what is missing for all findings, each thing once: the worst
// first, then in the order of the file.
func needsOf(findings []report.Finding) []need {
	index := map[string]int{}
	var needs []need
	for i := range findings {
		f := &findings[i]
		for _, part := range f.Parts {
			for _, m := range part.Missing {
				k, known := index[m.Place.File+"#"+m.Place.Pointer]
				if !known {
					k = len(needs)
					index[m.Place.File+"#"+m.Place.Pointer] = k
					needs = append(needs, need{place: m.Place, measure: m.Measure, word: f.Word})
				}
				needs[k].add(m, f)
			}
		}
	}
	slices.SortStableFunc(needs, func(a, b need) int {
		return cmp.Or(cmp.Compare(b.word.Rank(), a.word.Rank()), cmp.Compare(a.place.Line, b.place.Line),
			cmp.Compare(a.place.Column, b.place.Column), cmp.Compare(a.place.Pointer, b.place.Pointer))
	})
	return needs
}

func (n *need) add(m report.Missing, f *report.Finding) {
	if !slices.Contains(n.what, m.What) {
		n.what = append(n.what, m.What)
	}
	if f.Word.Rank() > n.word.Rank() {
		n.word = f.Word
	}
	i := slices.IndexFunc(n.waits, func(w wait) bool { return w.check == f.Check })
	if i < 0 {
		i = len(n.waits)
		n.waits = append(n.waits, wait{check: f.Check})
	}
	if !slices.Contains(n.waits[i].labels, f.Label) {
		n.waits[i].labels = append(n.waits[i].labels, f.Label)
	}
}
