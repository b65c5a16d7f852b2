package report

import "math"

// Turn is which way one question went between two reports.
type Turn string

// The turns, as they are told. A question that ended alike in both has none of them.
const (
	Worse        Turn = "worse"            // not met, and it was met or less was wrong
	NewlyUnknown Turn = "newly unknown"    // not known, and it was known
	Unasked      Turn = "no longer judged" // it had an answer, and now has none for a reason that is no answer
	Better       Turn = "better"           // within, and it was not; or less is wrong
)

// Turns lists the turns, worst first.
func Turns() []Turn { return []Turn{Worse, NewlyUnknown, Unasked, Better} }

// Change is one question that ended otherwise than before. Old is nil for a thing that
// is newly listed, New for one that is listed no more.
type Change struct {
	Turn     Turn
	Old, New *Finding
}

// Finding is the later of the two, for what both have in common.
func (c *Change) Finding() *Finding {
	if c.New != nil {
		return c.New
	}
	return c.Old
}

// Compare matches the questions of two reports by check and subject, and returns those
// that ended otherwise, in the order of the later report; what it no longer has comes
// last. Of two reports of unequal codes it tells what follows from both, the codes and
// the layouts.
//
// It never takes a statement that was left out for a mend: what was not met and is now
// not known is newly unknown, and what is no longer listed is no longer judged.
func Compare(old, new *FileReport) []Change {
	type key struct{ check, subject string }
	before := map[key]*Finding{}
	for i := range old.Findings {
		f := &old.Findings[i]
		before[key{f.Check, f.Subject}] = f
	}
	var changes []Change
	for i := range new.Findings {
		f := &new.Findings[i]
		k := key{f.Check, f.Subject}
		if t := turned(before[k], f); t != "" {
			changes = append(changes, Change{t, before[k], f})
		}
		delete(before, k)
	}
	for i := range old.Findings {
		f := &old.Findings[i]
		if before[key{f.Check, f.Subject}] == f && judged(f) {
			changes = append(changes, Change{Unasked, f, nil})
		}
	}
	return changes
}

// judged tells whether a question is within its limit or not met, or waits for the file to
// state more: not one that the code is silent on, that does not apply or that is a fitter's.
func judged(f *Finding) bool {
	return f.Outcome != NotApplicable && f.Reason != NotCovered && f.Reason != AskFitter
}

// turned is which way a question went; old may be nil.
func turned(old, new *Finding) Turn {
	asked := old != nil && judged(old)
	switch {
	case !judged(new):
		if asked {
			return Unasked
		}
	case new.Outcome == NotMet:
		if old == nil || old.Outcome != NotMet {
			return Worse
		}
		return within(old, new)
	case new.Outcome == NotKnown:
		switch {
		case !asked || old.Outcome != NotKnown:
			return NewlyUnknown
		case new.Word.Rank() > old.Word.Rank():
			return Worse
		case new.Word.Rank() < old.Word.Rank():
			return Better
		}
	case asked && old.Outcome != Within:
		return Better
	}
	return ""
}

// within tells which way a question went that was not met and is not met still: by its
// signal word, by how many of its parts are not met, and by the margin of the worst.
func within(old, new *Finding) Turn {
	a, b := weigh(old), weigh(new)
	up := float64(new.Word.Rank() - old.Word.Rank())
	for _, more := range []float64{up, b.broken - a.broken, b.over - a.over} {
		if more > 1e-9 {
			return Worse
		}
	}
	switch {
	case b.unknown > a.unknown:
		return NewlyUnknown
	case up < 0 || b.broken < a.broken || b.over < a.over-1e-9:
		return Better
	}
	return ""
}

// weight is how much of a question is not met.
type weight struct{ broken, unknown, over float64 }

func weigh(f *Finding) weight {
	var w weight
	for i := range f.Parts {
		p := &f.Parts[i]
		switch p.Outcome {
		case NotMet:
			w.broken++
			if p.Margin != nil {
				w.over = math.Max(w.over, -*p.Margin)
			}
		case NotKnown:
			w.unknown++
		}
	}
	return w
}
