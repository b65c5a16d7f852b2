package report

import (
	"fmt"
	"strings"
)

// Trial says that what a run judged stands in no file: it is a file with edits that
// were made in memory.
type Trial struct {
	Of      string        `json:"of"`     // the file, which stays as it is
	SHA256  string        `json:"sha256"` // of that file
	Edits   []TrialEdit   `json:"edits"`
	Changed []TrialChange `json:"changed"` // against the file as it is; nil where that can't be used, so that nothing was compared
}

// TrialEdit is one edit of a trial. Old is empty for what the file does not state, New
// for what was left out; both are JSON text.
type TrialEdit struct {
	Pointer string `json:"pointer"`
	Old     string `json:"old,omitempty"`
	New     string `json:"new,omitempty"`
}

// TrialChange is one question that ends otherwise in the trial than in the file. Was is
// empty for what the file does not list, Is for what the trial does not.
type TrialChange struct {
	Turn    Turn    `json:"turn"`
	Check   string  `json:"check"`
	Subject string  `json:"subject"`
	Label   string  `json:"label"`
	Word    Signal  `json:"word"`
	Was     Outcome `json:"was,omitempty"`
	Is      Outcome `json:"is,omitempty"`
}

// TrialWord stands in every output of a trial.
const TrialWord = "TRIAL"

// TrialName is how the text of a trial is named where a place tells of it, so that no
// line of an output can be taken for one on the file itself.
func TrialName(file string) string { return TrialWord + " of " + file }

// NoDwelling says what a trial is worth.
const NoDwelling = "It describes a dwelling that does not exist, and is nothing to hand to anybody."

// Banner is what every output of a trial says at its head; "" for a run that is none.
// It stands among the run's cautions, so whoever writes those has written it.
func (r *Run) Banner() string {
	if r.Trial == nil {
		return ""
	}
	return r.Trial.Words()
}

// Words tells of a trial, with its edits, in one paragraph.
func (t *Trial) Words() string {
	var edits []string
	for _, each := range t.Edits {
		edits = append(edits, each.words())
	}
	return fmt.Sprintf("%s of edits that stand in no file: %s. The file %s is as it was. %s", TrialWord, strings.Join(edits, "; "), t.Of, NoDwelling)
}

func (e *TrialEdit) words() string {
	was := "the file says " + shortened(e.Old)
	if e.Old == "" {
		was = "the file does not state it"
	}
	if e.New == "" {
		return fmt.Sprintf("%s left out (%s)", e.Pointer, was)
	}
	return fmt.Sprintf("%s = %s (%s)", e.Pointer, shortened(e.New), was)
}

// shortened keeps a long value from filling a page; JSON has it whole.
func shortened(value string) string {
	const most = 60
	letters := []rune(strings.Join(strings.Fields(value), " "))
	if len(letters) <= most {
		return string(letters)
	}
	return string(letters[:most-1]) + "…"
}

// Told lists how questions went, as a trial carries it. It is never nil.
func Told(changes []Change) []TrialChange {
	told := []TrialChange{}
	for i := range changes {
		c := &changes[i]
		f := c.Finding()
		one := TrialChange{Turn: c.Turn, Check: f.Check, Subject: f.Subject, Label: f.Label, Word: f.Word}
		if c.Old != nil {
			one.Was = c.Old.Outcome
		}
		if c.New != nil {
			one.Is = c.New.Outcome
		}
		told = append(told, one)
	}
	return told
}
