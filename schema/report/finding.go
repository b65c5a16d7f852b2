package report

import "lowvent.example/schema/unit"

// Amount is a quantity as a report shows it. Text is made once, here, so that no
// two renderings of a report can differ.
type Amount struct {
	Kind string   `json:"kind"`          // name of the quantity, or "words"
	SI   *float64 `json:"si,omitempty"`  // nominal value in SI units
	Low  *float64 `json:"low,omitempty"` // band of its tolerance, when it has one
	High *float64 `json:"high,omitempty"`
	Unit string   `json:"unit,omitempty"` // SI symbol
	Text string   `json:"text"`           // both unit systems
}

// Quantity makes the amount of a quantity.
func Quantity(kind unit.Kind, si float64) *Amount {
	return &Amount{Kind: kind.String(), SI: &si, Unit: kind.Symbol(), Text: unit.TextOf(kind, si)}
}

// Apart makes two amounts of one kind, with as many digits as it takes for them
// to read differently where they differ.
func Apart(kind unit.Kind, found, needed float64) (a, b *Amount) {
	a, b = Quantity(kind, found), Quantity(kind, needed)
	a.Text, b.Text = unit.TextApart(kind, found, needed)
	return a, b
}

// Words makes an amount that is no number.
func Words(text string) *Amount { return &Amount{Kind: "words", Text: text} }

// Place is a place in a file, as machines read it. Columns count code points
// from 1; the end is exclusive.
type Place struct {
	File      string `json:"file"`
	Line      int    `json:"line"`
	Column    int    `json:"column"`
	EndLine   int    `json:"endLine"`
	EndColumn int    `json:"endColumn"`
	Pointer   string `json:"pointer"`
}

// Source is what a limit rests on.
type Source struct {
	Book       string     `json:"book"`
	Document   string     `json:"document"`
	Clause     string     `json:"clause,omitempty"`
	Edition    string     `json:"edition,omitempty"`
	Address    string     `json:"address,omitempty"`
	Provenance Provenance `json:"provenance"`
	Rule       string     `json:"rule,omitempty"` // the limit in words
	Note       string     `json:"note,omitempty"`
}

// Missing is one thing that the file does not state, with how to find it out.
type Missing struct {
	What    string `json:"what"`
	Measure string `json:"measure"`
	Place   Place  `json:"place"`
}

// Edit is a change to the layout file that a machine can make.
type Edit struct {
	Pointer string `json:"pointer"`
	Value   string `json:"value"`           // JSON text
	Sense   string `json:"sense,omitempty"` // "least" or "most": on which side of the value the limit lies
	Kind    string `json:"kind,omitempty"`  // the quantity's name, for a number
}

// Mend says what would bring a part within its limit.
type Mend struct {
	Text string `json:"text"`
	Set  []Edit `json:"set,omitempty"`
}

// Input is one value of the file that an answer rests on.
type Input struct {
	Pointer string `json:"pointer"`
	Basis   string `json:"basis"`
}

// Claim is one statement of the file that an answer within its limit rests on,
// and that only a fitter can prove.
type Claim struct {
	Subject string   `json:"subject"` // for people: "locker side"
	States  string   `json:"states"`  // the key and what the file says of it
	Basis   string   `json:"basis"`
	Checks  []string `json:"checks"` // those that rest on it
	Place   Place    `json:"place"`
}

// Part is the answer to one clause of a check's question, for one pair of things
// where the clause compares things.
type Part struct {
	Outcome Outcome   `json:"outcome"`
	Reason  Reason    `json:"reason,omitempty"`
	About   string    `json:"about,omitempty"` // the other thing, for people
	Text    string    `json:"text,omitempty"`
	Found   *Amount   `json:"found,omitempty"`
	Needed  *Amount   `json:"needed,omitempty"`
	Short   *Amount   `json:"short,omitempty"`
	Margin  *float64  `json:"margin,omitempty"` // as a share of the limit, negative when it is broken
	Source  *Source   `json:"source,omitempty"`
	Mend    *Mend     `json:"mend,omitempty"`
	Missing []Missing `json:"missing,omitempty"`
	Place   Place     `json:"place"`
	Inputs  []Input   `json:"inputs,omitempty"`
	Limits  []string  `json:"limits,omitempty"`
	Surveys []string  `json:"surveys,omitempty"` // pointers of the survey lists it relied on
	Working []Line    `json:"working,omitempty"`
}

// Finding is the answer to one check's question for one subject.
type Finding struct {
	Check   string  `json:"check"`
	Asks    string  `json:"asks"`
	Why     string  `json:"why"`
	Subject string  `json:"subject"` // JSON Pointer
	Label   string  `json:"label"`
	Outcome Outcome `json:"outcome"`
	Reason  Reason  `json:"reason,omitempty"`
	Word    Signal  `json:"word"`
	MayAct  Who     `json:"mayAct"`
	Place   Place   `json:"place"`
	Parts   []Part  `json:"parts"`
	Waiver  *Waiver `json:"waiver,omitempty"`
}

// Counts tells whether the finding counts towards the exit status at a
// threshold: a thing not known counts like one not met where people's lives hang
// on it.
func (f *Finding) Counts(threshold Signal) bool {
	if f.Word.Rank() < threshold.Rank() {
		return false
	}
	return f.Outcome == NotMet || f.Outcome == NotKnown && f.Word.Rank() >= Warning.Rank()
}

// Waived tells whether a waiver in force speaks of the finding.
func (f *Finding) Waived() bool { return f.Waiver != nil && f.Waiver.State == WaiverInForce }

// Waiver is an owner's or fitter's decision to live with a finding for a time.
type Waiver struct {
	ID        string `json:"id"`
	Check     string `json:"check"`
	Subject   string `json:"subject"`
	Reason    string `json:"reason"`
	DecidedBy string `json:"decidedBy"`
	Until     string `json:"until"`
	State     string `json:"state"` // in force, expired, unused, or not allowed
	Place     Place  `json:"place"`
}

// Line is one line of a working.
type Line struct {
	Role    string  `json:"role"` // read, limit, figure, step
	Symbol  string  `json:"symbol"`
	What    string  `json:"what"`
	Formula string  `json:"formula,omitempty"`
	Valid   string  `json:"valid,omitempty"`
	Source  string  `json:"source,omitempty"`
	Value   *Amount `json:"value,omitempty"`
	Place   *Place  `json:"place,omitempty"`
}

// Figure is a computed figure that is shown whether or not a check reads it.
type Figure struct {
	ID      string    `json:"id"`
	Title   string    `json:"title"`
	Subject string    `json:"subject"`
	Label   string    `json:"label"`
	Value   *Amount   `json:"value,omitempty"`
	Course  *Course   `json:"course,omitempty"` // instead of a value, for a figure that is a course
	Note    string    `json:"note,omitempty"`
	Missing []Missing `json:"missing,omitempty"`
	Working []Line    `json:"working,omitempty"`
}

// Course is how one quantity goes with another: the temperature of a cylinder over days.
type Course struct {
	Across Axis         `json:"across"`
	Up     Axis         `json:"up"`
	Points [][2]float64 `json:"points"` // in SI units, by rising first number
	Levels []Level      `json:"levels,omitempty"`
}

// Level is what a course is held against by who reads it: a limit, or how high a thing stands.
type Level struct {
	Title string  `json:"title"`
	At    float64 `json:"at"` // in SI units, of what the course tells upwards
}

// Axis is what is told along one side of a course.
type Axis struct {
	Title string `json:"title"`
	Kind  string `json:"kind"` // of a quantity, as unit.Kind writes it
}
