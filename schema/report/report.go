package report

import (
	"cmp"
	"slices"
)

// Run is the report of one run over one or more files.
type Run struct {
	Format  string       `json:"format"`
	Program Program      `json:"program"`
	On      string       `json:"judgedOn"` // YYYY-MM-DD
	FailAt  Signal       `json:"failAt"`
	Accept  bool         `json:"waiversAccepted,omitempty"` // waived findings were asked not to count towards the exit status
	Caution []string     `json:"caution"`
	Trial   *Trial       `json:"trial,omitempty"` // the edits of a trial; nil for a run over files as they are
	Files   []FileReport `json:"files"`
	Status  int          `json:"exitStatus"`
}

// Program names the program that made a report.
type Program struct {
	Name    string `json:"name"`
	Version string `json:"version"`
}

// FileReport is the report of one file: its faults, or its findings, never both.
type FileReport struct {
	File       string    `json:"file"`
	SHA256     string    `json:"sha256,omitempty"`
	Title      string    `json:"title,omitempty"`
	Code       *Code     `json:"code,omitempty"`
	Candidates []Code    `json:"candidates,omitempty"` // codes whose scope fits, when none was chosen
	Faults     []Fault   `json:"faults,omitempty"`
	Findings   []Finding `json:"findings,omitempty"`
	Figures    []Figure  `json:"figures,omitempty"`
	Claims     []Claim   `json:"claimsToProve,omitempty"`
	Waivers    []Waiver  `json:"waivers,omitempty"`
	Overlay    *Overlay  `json:"localOverlay,omitempty"`
	NotCovered []string  `json:"codeDoesNotCover,omitempty"`
	Gas        string    `json:"gasNow,omitempty"`
	Counts     Counts    `json:"counts"`
}

// Code is the code that the file was judged by.
type Code struct {
	ID       string `json:"id"`
	Title    string `json:"title"`
	Edition  string `json:"edition,omitempty"`
	Governs  bool   `json:"governs"`
	Borrowed string `json:"borrowed,omitempty"` // why it is not shown to be the law here
	File     string `json:"file,omitempty"`     // the user's own file that it was read from, which nobody has verified
}

// Overlay is the local rules that the run was asked to heed. Nobody has verified them.
type Overlay struct {
	File   string       `json:"file"`
	SHA256 string       `json:"sha256"`
	Title  string       `json:"title"`
	Over   string       `json:"over"` // id of the code
	Limits []LocalLimit `json:"limits"`
}

// LocalLimit is one limit of a local overlay.
type LocalLimit struct {
	Term     string `json:"term"`
	Says     string `json:"says"`
	Document string `json:"document"`
	State    string `json:"state"`
	Loosens  bool   `json:"loosens"` // it may ask less than the code; else it can only ask more
	By       string `json:"by,omitempty"`
	Licence  string `json:"licence,omitempty"`
	Reason   string `json:"reason,omitempty"`
	Until    string `json:"until,omitempty"` // the last day
}

// The states of a limit of a local overlay.
const (
	LocalInForce   = "in force"
	LocalExpired   = "expired"
	LocalOtherCode = "not over this code"
)

// Fault is one thing that makes a file unusable.
type Fault struct {
	Place    Place   `json:"place"`
	Related  []Place `json:"related,omitempty"`
	What     string  `json:"what"`
	Expected string  `json:"expected,omitempty"`
	Mend     string  `json:"mend,omitempty"`
}

// Counts counts the outcomes of a file. Nothing that was asked is left out.
type Counts struct {
	Checks      int `json:"checks"`
	Subjects    int `json:"subjects"`
	Danger      int `json:"danger"`
	Warning     int `json:"warning"`
	Caution     int `json:"caution"`
	Notice      int `json:"notice"`
	NotKnown    int `json:"notKnown"`
	Within      int `json:"within"`
	ToProve     int `json:"toProve"`
	NotCovered  int `json:"notCovered"`
	AskFitter   int `json:"askFitter"`
	NoSubject   int `json:"noSubject"`
	RuleExempts int `json:"ruleDoesNotApply"`
	Waived      int `json:"waived"`
	AtOrAbove   int `json:"atOrAboveThreshold"`
	Excused     int `json:"waivedAtOrAboveThreshold"` // of those, how many have a waiver in force
}

// Cautions are the words that every report carries before anything else.
func Cautions() []string {
	return []string{
		"In many places only a licensed person may cut, join, connect, convert, test or open gas pipe, hose or appliance.",
		"Nothing below is an instruction to do it. This is a check of a file; nothing was inspected. Local codes and the licensed gas fitter decide.",
	}
}

// KeepOff is the last sentence of every report, clean or not.
const KeepOff = "Nothing was inspected. Keep the gas off until a licensed gas fitter has tested and signed. Local codes decide."

// Sort puts findings into reading order: what is not met, worst word first, then
// what is not known, then the rest; within that by check and subject.
func Sort(findings []Finding) {
	slices.SortStableFunc(findings, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(order(a), order(b)),
			cmp.Compare(b.Word.Rank(), a.Word.Rank()),
			cmp.Compare(a.Check, b.Check),
			cmp.Compare(a.Subject, b.Subject))
	})
}

func order(f Finding) int {
	return slices.Index([]Outcome{NotMet, NotKnown, NotApplicable, Within}, f.Outcome)
}

// Count counts the findings of a file against a threshold.
func Count(findings []Finding, threshold Signal) Counts {
	c := Counts{Subjects: len(findings)}
	checks := map[string]bool{}
	for i := range findings {
		f := &findings[i]
		checks[f.Check] = true
		c.add(f)
		if f.Counts(threshold) {
			c.AtOrAbove++
		}
		if f.Waived() {
			c.Waived++
			if f.Counts(threshold) {
				c.Excused++
			}
		}
	}
	c.Checks = len(checks)
	return c
}

// The states of a waiver.
const (
	WaiverInForce    = "in force"
	WaiverExpired    = "expired"
	WaiverUnused     = "unused"
	WaiverNotAllowed = "not allowed"
)

func (c *Counts) add(f *Finding) {
	switch f.Outcome {
	case NotMet:
		*c.ofWord(f.Word)++
	case NotKnown:
		c.NotKnown++
	case Within:
		c.Within++
		if f.Reason == ToProve {
			c.ToProve++
		}
	case NotApplicable:
		*c.ofReason(f.Reason)++
	}
}

func (c *Counts) ofWord(w Signal) *int {
	switch w {
	case Danger:
		return &c.Danger
	case Warning:
		return &c.Warning
	case Caution:
		return &c.Caution
	}
	return &c.Notice
}

func (c *Counts) ofReason(r Reason) *int {
	switch r {
	case NotCovered:
		return &c.NotCovered
	case AskFitter:
		return &c.AskFitter
	case NoSubject:
		return &c.NoSubject
	}
	return &c.RuleExempts
}
