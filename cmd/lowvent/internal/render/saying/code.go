package saying

import (
	"cmp"
	"fmt"

	"lowvent.example/schema/report"
)

// Code tells by what a file was judged, with the words on a borrowed yardstick.
func Code(f *report.FileReport) string {
	if f.Code == nil {
		return "no code was chosen: only the law on the thing itself, common practice and this program's own rules were judged"
	}
	said := f.Code.Title + " [" + f.Code.ID + "]"
	if !f.Code.Governs {
		said += "; a borrowed yardstick, not shown to be the law here: " + cmp.Or(f.Code.Borrowed, "its scope is not shown to fit")
	}
	return OneLine(said)
}

// Unverified tells what a file was judged by that nobody has verified: a code from a file
// of the user's own, a local overlay, and each of its limits that may ask less than the
// code, with who answers for it.
func Unverified(f *report.FileReport) []string {
	var all []string
	add := func(format string, values ...any) {
		all = append(all, OneLine("Not verified by anybody: "+fmt.Sprintf(format, values...)))
	}
	if f.Code != nil && f.Code.File != "" {
		add("the code that %s was judged by was read from %s, a file of the user's own.", f.File, f.Code.File)
	}
	if f.Overlay == nil {
		return all
	}
	add("%s was judged by local rules as well, %s from %s.", f.File, f.Overlay.Title, f.Overlay.File)
	for _, l := range f.Overlay.Limits {
		if l.Loosens && l.State == report.LocalInForce {
			add("a local rule that may ask less than the code: %s: %s (%s); by %s, licence %s, until %s: %s.", l.Term, l.Says, l.Document, l.By, l.Licence, l.Until, l.Reason)
		}
	}
	return all
}
