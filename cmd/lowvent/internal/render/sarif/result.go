package sarif

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/report"
)

// results tells of one file: why it can't be used, or what is not met and not known.
func (b *builder) results(f *report.FileReport) {
	for i := range f.Faults {
		b.out.Results = append(b.out.Results, b.fault(&f.Faults[i]))
	}
	b.notKnown(f)
	for i := range f.Findings {
		if one := &f.Findings[i]; saying.Told(one) {
			b.out.Results = append(b.out.Results, b.finding(f, one))
		}
	}
}

// result begins a result of kind "fail", at level "error". Its fingerprint has no line
// in it, so that it stays the same when a file only grows above it (3.27.17).
func (b *builder) result(rule string, at report.Place, fingerprint string, texts ...string) result {
	return result{RuleID: rule, RuleIndex: b.rule[rule], Kind: "fail", Level: "error", Locations: []location{b.location(at, "")},
		Fingerprints: map[string]string{"checkAndSubject/v1": strings.ToValidUTF8(strings.TrimSpace(rule+" "+fingerprint), "\ufffd")}, Message: say(append(texts, report.KeepOff)...)}
}

// fault is a result and not only a notification, since few viewers show those.
func (b *builder) fault(f *report.Fault) result {
	r := b.result(unusableRule, f.Place, f.Place.Pointer+" "+f.What, "UNUSABLE:", saying.Fault(f)+".", "Nothing in the file was judged.")
	var also related
	for _, each := range f.Related {
		also.add(b, each, "see also")
	}
	r.Related = also.list
	return r
}

// notKnown adds the result that counts what is not known and counts towards the exit
// status: the single answers are of kind "open", which many viewers pass over.
func (b *builder) notKnown(f *report.FileReport) {
	var open []*report.Finding
	var names []string
	for i := range f.Findings {
		one := &f.Findings[i]
		if one.Outcome == report.NotKnown && one.Counts(b.from.FailAt) && !(b.from.Accept && one.Waived()) {
			open, names = append(open, one), append(names, saying.Subject(one))
		}
	}
	if len(open) == 0 {
		return
	}
	b.out.Results = append(b.out.Results, b.result(notKnownRule, open[0].Place, "",
		fmt.Sprintf("NOT KNOWN, and counted like not met: %s.", saying.Count(len(open), "question")), strings.Join(names, "; ")+"."))
}

func (b *builder) finding(file *report.FileReport, f *report.Finding) result {
	said := fmt.Sprintf("%s: %s: %s.", f.Word, saying.Subject(f), saying.EndedWithWaiver(f))
	r := b.result(f.Check, f.Place, f.Subject, append([]string{said}, saying.Why(f)...)...)
	r.Level = level(f.Word)
	if f.Outcome == report.NotKnown {
		r.Kind, r.Level = "open", "none" // 3.27.9: too little information to decide; 3.27.10: no other level goes with it
	}
	r.Related, r.Suppressions = b.parts(f), b.suppressions(file, f)
	r.Properties = &resultProperties{string(f.Word), string(f.Outcome), string(f.Reason), f.Subject, string(f.MayAct)}
	return r
}

// parts tells of the further places of a finding: parts that ended like the whole, and
// what is missing.
func (b *builder) parts(f *report.Finding) []location {
	var also related
	for i := range f.Parts {
		p := &f.Parts[i]
		if p.Outcome == f.Outcome && p.Place != f.Place && len(p.Missing) == 0 {
			one := report.Finding{Outcome: p.Outcome, Parts: []report.Part{*p}}
			also.add(b, p.Place, saying.EndedWithWaiver(&one))
		}
	}
	for _, m := range saying.Missing(f) {
		also.add(b, m.Place, strings.TrimSuffix("not stated: "+m.What+"; to be measured: "+m.Measure, "; to be measured: "))
	}
	return also.list
}

// suppressions tells of the waivers on a finding. They stand in the judged file itself,
// in a construct that its format has for them, so they are "inSource" (3.35.2). One that
// is in force is accepted only where whoever ran the check accepts waivers: viewers hide
// a result whose suppressions are all accepted, and this one still counts.
func (b *builder) suppressions(file *report.FileReport, f *report.Finding) []suppression {
	var all []suppression
	var seen []report.Waiver
	add := func(w report.Waiver) {
		if slices.Contains(seen, w) || w.State == report.WaiverUnused {
			return
		}
		seen = append(seen, w)
		all = append(all, suppression{Kind: "inSource", Status: b.accepted(&w), Location: b.location(w.Place, ""),
			Justification: saying.OneLine(fmt.Sprintf("Waiver %s, %s, by %s until %s: %s; the finding stands.", w.ID, w.State, w.DecidedBy, w.Until, strings.TrimRight(w.Reason, ". ")))})
	}
	if f.Waiver != nil {
		add(*f.Waiver)
	}
	for _, w := range file.Waivers {
		if w.Check == f.Check && w.Subject == f.Subject {
			add(w)
		}
	}
	return all
}

func (b *builder) accepted(w *report.Waiver) string {
	switch {
	case w.State != report.WaiverInForce:
		return "rejected"
	case b.from.Accept:
		return "accepted"
	}
	return "underReview"
}
