package code

import (
	"math"
	"slices"
	"strconv"

	"lowvent.example/schema/unit"
)

// Fact names one thing that a rule may need to know. The set is closed: a file
// can't ask for anything else.
type Fact string

// The facts of a dwelling are those of the file judged; all others are about
// the subject of the check that asks.
const (
	FactLockerFloorArea Fact = "locker.floorArea"       // area of the locker's floor inside, m²
	FactLockerGas       Fact = "locker.gas"             // propane of all cylinders in the locker when they are full, kg
	FactLockerHighArea  Fact = "locker.highVentArea"    // free area of the locker's high vents together, m²
	FactLockerHighShare Fact = "locker.highVentShare"   // that area as a share of the locker's floor
	FactLockerLowVents  Fact = "locker.lowVents"        // word: plain holes, or shafts that fall to the outside
	FactLockerOpensTo   Fact = "locker.opensTo"         // word: what one stands in to use its door
	FactLockerShield    Fact = "locker.shield"          // word: whether a sheet keeps heat off it
	FactCylinderPlace   Fact = "cylinder.place"         // word: what the cylinder stands in
	FactWaterCapacity   Fact = "cylinder.waterCapacity" // water that fills the cylinder, kg
	FactCylinderGas     Fact = "cylinder.gas"           // word: what the cylinder holds
	FactCylinderRole    Fact = "cylinder.role"          // word: in service, spare or empty
	FactSpecification   Fact = "cylinder.specification" // word: which law it was built to
	FactQualification   Fact = "cylinder.qualification" // word: how it was last qualified
	FactLineFeeds       Fact = "line.feeds"             // word: what hangs on the end of the line
	FactApplianceKind   Fact = "appliance.kind"         // word: what the appliance does
	FactApplianceInput  Fact = "appliance.input"        // heat input at full flame, W gross
	FactFlueKind        Fact = "flue.kind"              // word: where what it serves takes its air and gives its fumes
	FactFlueWall        Fact = "flue.wall"              // word: the side of the dwelling that the flue comes out of
	FactSpaceBurning    Fact = "space.burning"          // word: whether a flame in the space lives on its air
	FactSpaceUse        Fact = "space.use"              // word: what the space is used for
	FactSpaceFloorArea  Fact = "space.floorArea"        // m²
	FactLineKind        Fact = "line.kind"              // word: what the line is made of
	FactLinePressure    Fact = "line.pressureClass"     // word: cylinder pressure, between regulators, or appliance pressure
	FactLineOutside     Fact = "line.outside"           // outside diameter of the line, m
	FactLineRun         Fact = "line.run"               // length of the whole way from the regulator to the farthest appliance, m
	FactJointKind       Fact = "joint.kind"             // word: how a joint in a line is made
	FactUnfluedInput    Fact = "space.unfluedInput"     // summed heat input of flueless appliances in the space, W gross
	FactOpenFluedInput  Fact = "space.openFluedInput"   // summed heat input of open-flued appliances in the space, W gross
	FactDwellingKind    Fact = "dwelling.kind"          // word
	FactDwellingSleeps  Fact = "dwelling.sleeps"        // number of people who sleep there
	FactFirstUsed       Fact = "dwelling.firstUsed"     // date of first use
)

// Facts is where the answers to rules' questions come from. Numbers are in the
// SI unit of the fact's kind. An implementation gives false for whatever the
// file does not state; it never guesses and never takes a missing statement
// for none.
type Facts interface {
	Number(Fact) (si float64, known bool)
	Word(Fact) (word string, known bool)
	Date(Fact) (date unit.Date, known bool)
}

// form tells the three sorts of fact apart.
type form uint8

const (
	numberFact form = iota + 1
	wordFact
	dateFact
)

// factInfo is all that the package knows of one fact.
type factInfo struct {
	name     Fact
	form     form
	kind     unit.Kind
	symbol   string   // in a line of working
	phrase   string   // in a sentence
	words    []string // of a word fact: every word it can have
	positive bool     // zero can't be meant: a floor of no area is a slip, not a floor
	count    bool     // printed as a bare number
}

// facts is sorted by name. The words are those of the layout contract, save those
// of what burns in a space, which a check works out of what is listed there.
var facts = []factInfo{
	{name: FactApplianceInput, form: numberFact, kind: unit.KindGrossPower, symbol: "P_input", phrase: "the appliance's heat input", positive: true},
	{name: FactApplianceKind, form: wordFact, phrase: "the kind of appliance",
		words: []string{"cooktop", "oven", "range", "water-heater", "space-heater", "refrigerator", "lamp", "generator", "dryer", "barbecue", "fireplace"}},
	{name: FactCylinderGas, form: wordFact, phrase: "what the cylinder holds",
		words: []string{"propane", "butane", "mix", "natural-gas"}},
	{name: FactQualification, form: wordFact, phrase: "how the cylinder was last qualified",
		words: []string{"new", "expansion-test", "proof-test", "external-visual"}},
	{name: FactCylinderPlace, form: wordFact, phrase: "the cylinder's place",
		words: []string{"open-air", "lockers", "spaces"}},
	{name: FactCylinderRole, form: wordFact, phrase: "what the cylinder is doing",
		words: []string{"in-service", "spare", "empty"}},
	{name: FactSpecification, form: wordFact, phrase: "the mark of the rule that the cylinder was built to",
		words: []string{"dot-4b", "dot-4ba", "dot-4bw", "dot-4e", "other"}},
	{name: FactWaterCapacity, form: numberFact, kind: unit.KindWaterMass, symbol: "m_water", phrase: "the cylinder's water capacity", positive: true},
	{name: FactFirstUsed, form: dateFact, phrase: "the date of first use"},
	{name: FactDwellingKind, form: wordFact, phrase: "the kind of dwelling",
		words: []string{"road-vehicle", "trailer", "manufactured-home", "boat", "inspected-vessel", "inland-vessel", "cabin", "tiny-house-on-wheels", "tiny-house-fixed"}},
	{name: FactDwellingSleeps, form: numberFact, kind: unit.KindRatio, symbol: "n_sleeps", phrase: "the number of people who sleep there", count: true},
	{name: FactJointKind, form: wordFact, phrase: "how the joint is made",
		words: []string{"flare-45", "flare-37", "double-ring", "compression", "ball-sleeve", "brazed", "soldered", "threaded", "pressed", "crimped", "welded", "quick-coupling", "maker-fitting"}},
	{name: FactLineKind, form: wordFact, phrase: "what the line is made of",
		words: []string{"copper", "steel-pipe", "steel-tube", "stainless-tube", "corrugated-stainless", "polyethylene", "aluminium", "hose", "direct"}},
	{name: FactLineOutside, form: numberFact, kind: unit.KindLength, symbol: "D_outside", phrase: "the line's outside diameter", positive: true},
	{name: FactLineFeeds, form: wordFact, phrase: "what the line leads to",
		words: []string{"cooking-appliance", "other-appliance", "no-appliance"}},
	{name: FactLinePressure, form: wordFact, phrase: "the pressure in the line",
		words: []string{"high", "middle", "low"}},
	{name: FactLineRun, form: numberFact, kind: unit.KindLength, symbol: "L_run", phrase: "the length of the way to the farthest appliance", positive: true},
	{name: FactLockerFloorArea, form: numberFact, kind: unit.KindArea, symbol: "A_floor", phrase: "the locker's floor area", positive: true},
	{name: FactLockerGas, form: numberFact, kind: unit.KindPropaneMass, symbol: "m_locker", phrase: "the propane in the locker"},
	{name: FactLockerHighArea, form: numberFact, kind: unit.KindArea, symbol: "A_high", phrase: "the free area of the locker's high vents"},
	{name: FactLockerHighShare, form: numberFact, kind: unit.KindRatio, symbol: "s_high", phrase: "the free area of the high vents as a share of the floor"},
	{name: FactLockerLowVents, form: wordFact, phrase: "the kind of the locker's low vents",
		words: []string{"hole", "shaft"}},
	{name: FactLockerOpensTo, form: wordFact, phrase: "the place that the locker's door opens to",
		words: []string{"open-air", "spaces"}},
	{name: FactLockerShield, form: wordFact, phrase: "the locker's side to heat",
		words: []string{"shielded", "bare"}},
	{name: FactFlueKind, form: wordFact, phrase: "the kind of flue", words: []string{"none", "room-sealed", "open-flued"}},
	{name: FactFlueWall, form: wordFact, phrase: "the side that the flue comes out of", words: []string{"left", "right", "front", "rear", "floor", "ceiling"}},
	{name: FactSpaceBurning, form: wordFact, phrase: "what burns in the space", words: []string{"open-flame", "sealed", "nothing"}},
	{name: FactSpaceFloorArea, form: numberFact, kind: unit.KindArea, symbol: "A_space", phrase: "the floor area of the space", positive: true},
	{name: FactOpenFluedInput, form: numberFact, kind: unit.KindGrossPower, symbol: "P_open", phrase: "the heat input of open-flued appliances in the space"},
	{name: FactUnfluedInput, form: numberFact, kind: unit.KindGrossPower, symbol: "P_unflued", phrase: "the heat input of flueless appliances in the space"},
	{name: FactSpaceUse, form: wordFact, phrase: "the use of the space",
		words: []string{"living", "sleeping", "kitchen", "washroom", "cab", "engine", "underfloor", "garage", "storage", "hull-void", "technical"}},
}

// EveryFact lists the facts, sorted by name.
func EveryFact() []Fact {
	all := make([]Fact, len(facts))
	for i, info := range facts {
		all[i] = info.name
	}
	slices.Sort(all)
	return all
}

// info gives the fact's row; a name that is no fact has an empty one.
func (f Fact) info() factInfo {
	for _, info := range facts {
		if info.name == f {
			return info
		}
	}
	return factInfo{}
}

// Kind gives the kind of a fact that is a number, and 0 for a word, a date or
// a name that is no fact. A count has KindRatio.
func (f Fact) Kind() unit.Kind { return f.info().kind }

// Words lists what a fact that is a word can say, and gives nil for any other.
func (f Fact) Words() []string { return slices.Clone(f.info().words) }

// IsDate tells whether the fact is a date.
func (f Fact) IsDate() bool { return f.info().form == dateFact }

// Phrase names the fact in a sentence: "the locker's floor area".
func (f Fact) Phrase() string { return f.info().phrase }

// print writes a value of the fact for people, in both systems of units.
func (info factInfo) print(si float64) string {
	if info.count {
		return strconv.FormatFloat(si, 'f', -1, 64)
	}
	return unit.TextOf(info.kind, si)
}

// number reads a fact. A number that is not finite, is negative, or is zero
// where zero can't be meant counts as not known: it came from a slip, and a
// limit made of it could be met by anything.
func number(facts Facts, f Fact) (float64, bool) {
	if facts == nil {
		return 0, false
	}
	si, known := facts.Number(f)
	sound := si >= 0 && !math.IsInf(si, 0) && (si > 0 || !f.info().positive)
	return si, known && sound
}

// word reads a fact. A word outside the fact's list counts as not known, so
// that it can't fall through to what is left over for all others.
func word(facts Facts, f Fact) (string, bool) {
	if facts == nil {
		return "", false
	}
	w, known := facts.Word(f)
	return w, known && slices.Contains(f.info().words, w)
}

// date reads a fact. The zero date counts as not known.
func date(facts Facts, f Fact) (unit.Date, bool) {
	if facts == nil {
		return unit.Date{}, false
	}
	d, known := facts.Date(f)
	return d, known && !d.IsZero()
}
