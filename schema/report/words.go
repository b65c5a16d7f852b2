// Package report is what a check of a file found, in the form in which every
// renderer and every machine reads it, and how two reports differ. It judges nothing.
package report

// Format is the version word of the machine-readable report.
const Format = "lowvent-report/1"

// Signal is a signal word of ANSI Z535.4 / ISO 3864-2. It tells what may happen
// to people when the finding is not mended, not how strict a code is.
type Signal string

// The signal words, worst first.
const (
	Danger  Signal = "DANGER"
	Warning Signal = "WARNING"
	Caution Signal = "CAUTION"
	Notice  Signal = "NOTICE"
)

// Signals lists the signal words, worst first.
func Signals() []Signal { return []Signal{Danger, Warning, Caution, Notice} }

// Rank is 4 for DANGER down to 1 for NOTICE, and 0 for any other word.
func (w Signal) Rank() int {
	for i, each := range Signals() {
		if w == each {
			return len(Signals()) - i
		}
	}
	return 0
}

// Meaning is what the word says of people, after ANSI Z535.4.
func (w Signal) Meaning() string {
	switch w {
	case Danger:
		return "will kill or gravely hurt someone if it is not avoided"
	case Warning:
		return "could kill or gravely hurt someone if it is not avoided"
	case Caution:
		return "could hurt someone lightly or moderately if it is not avoided"
	case Notice:
		return "matters, but not for injury"
	}
	return ""
}

// Outcome is how one question ended for one subject.
type Outcome string

// The outcomes. There is none that says more than "within".
const (
	Within        Outcome = "within"
	NotMet        Outcome = "not-met"
	NotKnown      Outcome = "not-known"
	NotApplicable Outcome = "not-applicable"
)

// Reason tells why a question has no plain answer. Reasons are counted apart.
type Reason string

// The reasons.
const (
	NoReason     Reason = ""
	NoSubject    Reason = "no-subject" // the file states that there is none
	RuleExempts  Reason = "rule-does-not-apply"
	NotCovered   Reason = "not-covered" // the code is silent
	AskFitter    Reason = "ask-fitter"  // the limit is only remembered, or needs eyes and hands
	MissingInput Reason = "missing-input"
	NotSurveyed  Reason = "not-surveyed" // a list is not stated complete
	ToProve      Reason = "to-prove"     // within as stated; only a fitter can prove it
)

// Who may act on a finding.
type Who string

// Those who may act.
const (
	LicensedFitter Who = "licensed gas fitter"
	Owner          Who = "owner"
)

// Provenance tells how a published figure came to this program.
type Provenance string
