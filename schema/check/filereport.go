package check

import (
	"context"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// Report runs the checks and puts what they found into the form that every
// renderer reads.
func Report(ctx context.Context, set Set, l *layout.Layout, codes code.Codes, o Options, failAt report.Signal) (report.FileReport, error) {
	result, err := Run(ctx, set, l, codes, o)
	if err != nil {
		return report.FileReport{}, err
	}
	title, _ := l.Title.Get()
	out := report.FileReport{File: l.File().Name, SHA256: l.File().SHA256(), Title: title, Gas: gasNow(l),
		Findings: result.Findings, Figures: result.Figures, Waivers: result.Waivers}
	out.Claims = claimsOf(set, l, result.Findings)
	out.Counts = report.Count(result.Findings, failAt)
	out.Overlay = overlayOf(o, codes.Profile)
	if codes.Profile == nil {
		out.Candidates = candidates(l)
		return out, nil
	}
	c := standing(codes.Profile, l)
	out.Code, out.NotCovered = &c, codes.Profile.NotCovered
	return out, nil
}

// standing tells whether a code is shown to be the law for this dwelling, or is
// no more than a borrowed yardstick.
func standing(p *code.Profile, l *layout.Layout) report.Code {
	kind, _ := l.Dwelling.Kind.Get()
	country, _ := l.Where.Country.Get()
	region, _ := l.Where.Region.Get()
	c := report.Code{ID: p.ID, Title: p.Title, Edition: p.Edition, File: p.File}
	c.Governs, c.Borrowed = p.Governs(string(kind), country, region)
	if c.Governs {
		c.Borrowed = ""
	}
	return c
}

// candidates lists the codes that can be chosen and whose scope fits, for a file
// that names none.
func candidates(l *layout.Layout) []report.Code {
	var out []report.Code
	for _, p := range code.Profiles() {
		if c := standing(p, l); p.Book == code.BookProfile && c.Governs {
			out = append(out, c)
		}
	}
	return out
}

// gasNow says what the file states of the gas at this moment.
func gasNow(l *layout.Layout) string {
	connected, known := l.Gas.Connected.Get()
	switch {
	case !known:
		return "the file does not say whether gas is connected now"
	case connected:
		return "the file says that gas IS CONNECTED now"
	}
	return "the file says that gas is not connected"
}

// FaultReport is the report of a file that can't be used: its faults, and
// nothing judged.
func FaultReport(name string, faults source.Faults) report.FileReport {
	out := report.FileReport{File: name}
	for _, f := range faults {
		one := report.Fault{Place: PlaceOf(f.Place), What: f.What, Expected: f.Expected, Mend: f.Mend}
		for _, each := range f.Related {
			one.Related = append(one.Related, PlaceOf(each))
		}
		out.Faults = append(out.Faults, one)
	}
	return out
}

// PlaceOf is a place as reports carry it.
func PlaceOf(p source.Place) report.Place {
	if p.File == nil {
		return report.Place{Pointer: p.Pointer}
	}
	return report.Place{File: p.File.Name, Line: p.Line(), Column: p.Column(), EndLine: p.EndLine(), EndColumn: p.EndColumn(), Pointer: p.Pointer}
}
