package report

// SweepFormat is the version word of the machine-readable sweep.
const SweepFormat = "lowvent-sweep/1"

// Sweep tells how the questions of one layout end while one quantity goes from one
// value to another. It is a trial throughout, and no judgement: it advises no value.
type Sweep struct {
	Format  string          `json:"format"`
	Program Program         `json:"program"`
	On      string          `json:"judgedOn"` // YYYY-MM-DD
	Caution []string        `json:"caution"`
	Title   string          `json:"title,omitempty"`
	Gas     string          `json:"gasNow"`
	Code    *Code           `json:"code,omitempty"`
	Fitting []Code          `json:"candidates,omitempty"` // codes whose scope fits, when none was chosen
	Overlay *Overlay        `json:"localOverlay,omitempty"`
	Trial   *Trial          `json:"trial"` // the edits that hold at every value
	Swept   Swept           `json:"swept"`
	Values  []SweptValue    `json:"values"`
	Turning []SweptQuestion `json:"turning"` // the worst signal word first
	Steady  Steady          `json:"steady"`
	Figures []SweptFigure   `json:"figures"` // those that change with the value
	Edge    string          `json:"doNotBuildToTheEdge"`
	Unseen  string          `json:"notSeen"`
}

// Swept is the quantity that went from one value to another.
type Swept struct {
	Pointer string `json:"pointer"`
	Kind    string `json:"kind"`          // name of the quantity, as unit.Kind writes it
	Unit    string `json:"unit"`          // SI symbol
	Old     string `json:"old,omitempty"` // JSON text that the file has there
	From    string `json:"from"`
	To      string `json:"to"`
	Step    string `json:"resolution"` // a turn is told to within one such step
}

// SweptValue is one value of the quantity, as it was written for the trial.
type SweptValue struct {
	Written string  `json:"written"`
	SI      float64 `json:"si"`
}

// Ending is how one question ended at one value, with those reasons told apart that make
// it no answer.
type Ending string

// The endings.
const (
	EndsWithin     Ending = "within"
	EndsNotMet     Ending = "not-met"
	EndsNotKnown   Ending = "not-known"
	EndsNotCovered Ending = "not-covered"
	EndsAskFitter  Ending = "ask-fitter"
	EndsNotApplies Ending = "not-applicable"
	EndsNotListed  Ending = "not-listed"
)

// EndingOf tells how a question ended; of nil, that the thing is not listed.
func EndingOf(f *Finding) Ending {
	switch {
	case f == nil:
		return EndsNotListed
	case f.Reason == NotCovered:
		return EndsNotCovered
	case f.Reason == AskFitter:
		return EndsAskFitter
	}
	return Ending(f.Outcome)
}

// Words is the ending for people.
func (e Ending) Words() string {
	switch e {
	case EndsWithin:
		return "within, as stated"
	case EndsNotMet:
		return "not met"
	case EndsNotKnown:
		return "not known"
	case EndsNotCovered:
		return "the code does not cover it"
	case EndsAskFitter:
		return "for the fitter to answer"
	case EndsNotApplies:
		return "does not apply"
	}
	return "not listed"
}

// SweptQuestion is one question that does not end alike at every value.
type SweptQuestion struct {
	Check   string      `json:"check"`
	Asks    string      `json:"asks"`
	Subject string      `json:"subject"`
	Label   string      `json:"label"`
	Word    Signal      `json:"word"`
	MayAct  Who         `json:"mayAct"`
	Ended   []Ending    `json:"ended"` // at each value
	Turns   []SweptTurn `json:"turns"` // all that were found, by rising value
}

// SweptTurn is where a question begins to end otherwise: between two values that are one
// step of the resolution apart.
type SweptTurn struct {
	Below  SweptSide    `json:"below"`
	Above  SweptSide    `json:"above"`
	Limits []SweptLimit `json:"limits"` // those that are not met on one side of it
}

// SweptSide is the value on one side of a turn.
type SweptSide struct {
	SweptValue
	Ended Ending `json:"ended"`
}

// SweptLimit is a limit at which a question turns: what was found on the side on which
// it is not met, and what the text needs.
type SweptLimit struct {
	About  string  `json:"about,omitempty"`
	Found  *Amount `json:"found,omitempty"`
	Needed *Amount `json:"needed,omitempty"`
	Source *Source `json:"source,omitempty"`
}

// Steady counts the questions that end alike at every value.
type Steady struct {
	NotMet   int `json:"notMet"`
	NotKnown int `json:"notKnown"`
	Within   int `json:"within"`
	Others   int `json:"notJudged"`
}

// SweptFigure is a computed figure that changes with the value.
type SweptFigure struct {
	ID      string     `json:"id"`
	Title   string     `json:"title"`
	Subject string     `json:"subject"`
	Label   string     `json:"label"`
	Kind    string     `json:"kind"`
	Unit    string     `json:"unit"`
	First   string     `json:"first"` // at the first value, for people
	Last    string     `json:"last"`
	Values  []*float64 `json:"values"` // at each value, in the SI unit; null where it is not known
}

// Edge is the warning that goes with every place at which a finding turns.
const Edge = "Do not build to the edge. A limit is the least that a text asks and no size to aim at. A tape reads a few millimetres wrong, " +
	"a plate and a mesh have tolerances of their own, wood moves, paint and dirt close an opening; and a fitter measures again, with another tape and other eyes, and may ask for more. " +
	"What keeps a limit by a hair in a file breaks it in the dwelling."

// Unseen says what a sweep can't show.
const Unseen = "A question that turns and turns back between two neighbouring values was not seen. One that is not met for several reasons turns only where the last of them goes. " +
	"Everything else in the file stood still, which it would not in the dwelling."

// Words tells of the sweep in one paragraph, as its cautions carry it.
func (s *Sweep) Words() string {
	was := "the file says " + shortened(s.Swept.Old)
	if s.Swept.Old == "" {
		was = "the file does not state it"
	}
	words := TrialWord + " of values that stand in no file: " + s.Swept.Pointer + " from " + s.Swept.From + " to " + s.Swept.To + " (" + was + ")"
	for i := range s.Trial.Edits {
		words += "; at each of them " + s.Trial.Edits[i].words()
	}
	return words + ". The file " + s.Trial.Of + " is as it was. " + NoDwelling
}
