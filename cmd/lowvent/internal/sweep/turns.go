package sweep

import (
	"cmp"
	"maps"
	"slices"

	"lowvent.example/schema/report"
)

// Question is one check asked of one subject.
type Question struct{ Check, Subject string }

// Lane is how one question ends across the values. A finding is nil where the layout
// does not list the thing.
type Lane struct {
	Question
	Findings []*report.Finding // at each value
	Turns    []Turn
}

// Turn is where a question begins to end otherwise: between two neighbouring steps.
type Turn struct {
	Below, Above int64
	Was, Is      *report.Finding // on the two sides
}

// Judge gives the findings at each of so many steps, of the checks of those ids alone.
type Judge func(at []int64, checks []string) ([][]report.Finding, error)

// Lanes lays out every question across the values at, as the findings at each have it, and
// finds by halving where each question turns. Those that turn come first, the worst signal
// word first. The error is that of judge.
func Lanes(at []int64, findings [][]report.Finding, judge Judge) ([]Lane, error) {
	lanes := across(findings)
	var open []bracket
	for i := range lanes {
		for k := range len(at) - 1 {
			was, is := lanes[i].Findings[k], lanes[i].Findings[k+1]
			if report.EndingOf(was) != report.EndingOf(is) {
				open = append(open, bracket{&lanes[i], Turn{at[k], at[k+1], was, is}})
			}
		}
	}
	closed, err := refine(open, judge)
	if err != nil {
		return nil, err
	}
	for _, b := range closed {
		b.of.Turns = append(b.of.Turns, b.Turn)
	}
	slices.SortStableFunc(lanes, worstFirst)
	return lanes, nil
}

// bracket is two values between which a question turns.
type bracket struct {
	of *Lane
	Turn
}

// refine halves every bracket until its ends are neighbours. Where the middle ends in a
// third way, there are two turns, and each is followed.
func refine(open []bracket, judge Judge) ([]bracket, error) {
	for {
		middles, checks := wanted(open)
		if len(middles) == 0 {
			return open, nil
		}
		judged, err := judge(middles, checks)
		if err != nil {
			return nil, err
		}
		var next []bracket
		for _, b := range open {
			middle, is := b.middle()
			if !is {
				next = append(next, b)
				continue
			}
			i, _ := slices.BinarySearch(middles, middle)
			next = append(next, b.halved(middle, find(judged[i], b.of.Question))...)
		}
		open = next
	}
}

// wanted lists what has to be judged next, both sorted and each once.
func wanted(open []bracket) (middles []int64, checks []string) {
	at, ids := map[int64]bool{}, map[string]bool{}
	for _, b := range open {
		if middle, is := b.middle(); is {
			at[middle], ids[b.of.Check] = true, true
		}
	}
	return slices.Sorted(maps.Keys(at)), slices.Sorted(maps.Keys(ids))
}

func (b bracket) middle() (int64, bool) { return b.Below + (b.Above-b.Below)/2, b.Above-b.Below > 1 }

func (b bracket) halved(middle int64, f *report.Finding) []bracket {
	lower, upper := b, b
	lower.Above, lower.Is = middle, f
	upper.Below, upper.Was = middle, f
	switch report.EndingOf(f) {
	case report.EndingOf(b.Was):
		return []bracket{upper}
	case report.EndingOf(b.Is):
		return []bracket{lower}
	}
	return []bracket{lower, upper}
}

func find(findings []report.Finding, q Question) *report.Finding {
	for i := range findings {
		if f := &findings[i]; f.Check == q.Check && f.Subject == q.Subject {
			return f
		}
	}
	return nil
}

// across lays out the findings by question.
func across(findings [][]report.Finding) []Lane {
	var lanes []Lane
	index := map[Question]int{}
	for k := range findings {
		for i := range findings[k] {
			f := &findings[k][i]
			q := Question{f.Check, f.Subject}
			at, known := index[q]
			if !known {
				at = len(lanes)
				index[q] = at
				lanes = append(lanes, Lane{Question: q, Findings: make([]*report.Finding, len(findings))})
			}
			lanes[at].Findings[k] = f
		}
	}
	return lanes
}

// Finding is one of the lane's findings, for what all of them have in common.
func (l *Lane) Finding() *report.Finding {
	i := slices.IndexFunc(l.Findings, func(f *report.Finding) bool { return f != nil })
	return l.Findings[i]
}

func worstFirst(a, b Lane) int {
	turns := func(l Lane) int { return min(1, len(l.Turns)) }
	return cmp.Or(
		cmp.Compare(turns(b), turns(a)),
		cmp.Compare(b.Finding().Word.Rank(), a.Finding().Word.Rank()),
		cmp.Compare(a.Check, b.Check),
		cmp.Compare(a.Subject, b.Subject))
}
