package code

import (
	"fmt"
	"slices"

	"lowvent.example/schema/unit"
)

// OverlayFormat is the version word that every local overlay carries.
const OverlayFormat = "lowvent-overlay/1"

// Local is the provenance of what an overlay says: the owner's own statement of a local
// rule. Nobody has verified it, and every report says so.
const Local Provenance = "local"

// Overlay is a local rule that lies over one code: it may ask more than the code
// anywhere, and less only where somebody answers for that.
type Overlay struct {
	Title   string
	Over    string         // id of the code that it lies over
	Entries []OverlayEntry // sorted by term, one a term
	Note    string
	File    string // name of the file it was loaded from
	SHA256  string // of that file, in hexadecimal digits
}

// OverlayEntry is what an overlay says to one term.
type OverlayEntry struct {
	Entry
	Loosens *Loosening // nil when it can only ask more
}

// Loosening is who answers for asking less than a code, and until when. None of it can
// be verified by this program.
type Loosening struct {
	By      string // name of who decided
	Licence string // number of that person's licence
	Reason  string
	Until   unit.Date // the last day on which it holds
}

// Loosened lists the terms for which the overlay may ask less than the code.
func (o *Overlay) Loosened() []*Term {
	var terms []*Term
	for _, e := range o.Entries {
		if e.Loosens != nil {
			terms = append(terms, termByID(e.Term))
		}
	}
	return terms
}

// ExpiredBy tells whether the entry's loosening has ended before that day; an entry
// that only tightens never does.
func (e *OverlayEntry) ExpiredBy(on unit.Date) bool {
	return e.Loosens != nil && e.Loosens.Until.Last().Before(on)
}

// Under gives a copy in which a local overlay is heeded, less what has expired by that
// day. An overlay that lies over another code than the one chosen changes nothing.
func (c Codes) Under(o *Overlay, on unit.Date) Codes {
	if o == nil || c.Profile == nil || c.Profile.ID != o.Over {
		return c
	}
	heeded := *o
	heeded.Entries = slices.DeleteFunc(slices.Clone(o.Entries), func(e OverlayEntry) bool { return e.ExpiredBy(on) })
	c.local = &heeded
	return c
}

// over lays the overlay's answer over that of the code.
func (o *Overlay) over(t *Term, f Facts, published Answer) Answer {
	i := slices.IndexFunc(o.Entries, func(e OverlayEntry) bool { return e.Term == t.ID })
	if i < 0 {
		return published
	}
	e := &o.Entries[i]
	local := e.asked(t, f)
	switch {
	case local.State == Silent:
		return published
	case e.Loosens != nil:
		local.Text += fmt.Sprintf(" by the local overlay, where %s", published.asks())
		return local
	}
	return stricter(t, local, published)
}

// stricter gives of a code's answer and a local one that which asks more.
func stricter(t *Term, local, published Answer) Answer {
	switch {
	case local.State == NotAsked:
		return published
	case published.State == Open:
		return published
	case local.State == Open, published.State != Answered:
		return local
	case stricterThan(t, local.SI, published.SI),
		t.numeric() && local.SI == published.SI && local.Exclusive && !published.Exclusive:
		return local
	case t.Sense == Allowed && slices.ContainsFunc(published.Words, func(w string) bool { return !slices.Contains(local.Words, w) }):
		local.Words = slices.DeleteFunc(slices.Clone(local.Words), func(w string) bool { return !slices.Contains(published.Words, w) })
		return local
	}
	return published
}

// asks says what the code asked for, for the report of what was asked for instead.
func (a Answer) asks() string {
	if a.State == Answered {
		return "the code asks for " + a.Text
	}
	return a.Text
}
