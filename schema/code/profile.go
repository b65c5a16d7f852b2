package code

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/schema/unit"
)

// Provenance says how the text behind an entry is known.
type Provenance string

// The provenances. A profile and the law on the thing itself use the first
// three, the two other books one each.
const (
	Read           Provenance = "read"            // the text of the law or its official page was seen
	SecondHand     Provenance = "second-hand"     // somebody else's account of the text was seen
	Memory         Provenance = "memory"          // recalled; nobody saw it, so it is never judged
	CommonPractice Provenance = "common-practice" // a custom of the trade; no source
	OwnRule        Provenance = "own-rule"        // a rule of this program
)

// Entry is one answer of a profile: a term, the rule, and where that stands.
type Entry struct {
	Term       string // ID of the term
	Row        string // id of the row of the requirements table it was taken from, or ""
	Says       string // what the text asks, in words of this program
	Rule       Rule
	Document   string // such as "675 IAC 15-2-74"
	Clause     string // such as "(c)(2)" or "6.24.3.2", to be read after the document; may be ""
	Edition    string // which text was seen; may be ""
	Address    string // where it was seen, or ""
	Provenance Provenance
	From       unit.Date // for what was first used on this day or later; zero means always
	Until      unit.Date // for what was first used before this day; zero means no end
	Note       string
}

// Cite gives document and clause as they are cited: "675 IAC 15-2-74(c)(2)",
// "NFPA 58 6.24.3.2". It is "" for an entry without a source.
func (e *Entry) Cite() string {
	if e.Clause == "" || strings.HasPrefix(e.Clause, "(") {
		return e.Document + e.Clause
	}
	return e.Document + " " + e.Clause
}

// Profile is one published code, or one of the three books that stand beside
// it, with all that it answers.
type Profile struct {
	ID           string // lower-case words joined by hyphens
	Title        string
	Jurisdiction string // where it is law, in words
	Edition      string
	Book         Book
	Scope        Scope
	Entries      []Entry  // sorted by term, one a term
	NotCovered   []string // what it does not answer here, in plain words
	Note         string
	File         string // name of the file it was loaded from; "" when it is built in
}

// Scope says which dwellings a profile governs. An empty list of dwellings or
// of countries governs nothing; an empty list of regions means the whole
// country.
type Scope struct {
	Dwellings []string // kinds of the layout contract
	Countries []string // two-letter codes (ISO 3166-1)
	Regions   []string // within the country, as the layout states them
	Text      string
}

// Entry gives the profile's entry for a term, or nil. It is not to be changed.
func (p *Profile) Entry(t *Term) *Entry {
	i, found := slices.BinarySearchFunc(p.Entries, t.ID, func(e Entry, id string) int { return strings.Compare(e.Term, id) })
	if !found {
		return nil
	}
	return &p.Entries[i]
}

// Governs tells whether the profile is shown to govern a dwelling of that kind
// in that country and region; "" stands for what is not stated. The reason is
// never empty: it says what is missing or what does not fit, or what the scope
// is. Upper and lower case count as the same.
func (p *Profile) Governs(dwellingKind, country, region string) (governs bool, why string) {
	if p == nil {
		return false, "no code was chosen"
	}
	var reasons []string
	reasons = append(reasons, misfit(dwellingKind, p.Scope.Dwellings, "kind of dwelling")...)
	reasons = append(reasons, misfit(country, p.Scope.Countries, "country")...)
	if len(p.Scope.Regions) > 0 {
		reasons = append(reasons, misfit(region, p.Scope.Regions, "region")...)
	}
	if len(reasons) > 0 {
		return false, strings.Join(reasons, "; ") + ". " + p.Scope.Text
	}
	return true, p.Scope.Text
}

// misfit says why a statement does not fall within a list, or gives nothing.
func misfit(stated string, listed []string, what string) []string {
	same := func(each string) bool { return strings.EqualFold(each, strings.TrimSpace(stated)) }
	switch {
	case len(listed) == 0:
		return []string{fmt.Sprintf("it is shown to govern no %s", what)}
	case strings.TrimSpace(stated) == "":
		return []string{fmt.Sprintf("the %s is not stated", what)}
	case !slices.ContainsFunc(listed, same):
		return []string{fmt.Sprintf("it governs the %s %s, and this one is %s", what, joined(listed, "or"), stated)}
	}
	return nil
}

// altered gives a copy of the profile with another list of entries.
func (p *Profile) altered(entries []Entry) *Profile {
	twin := *p
	twin.Entries = entries
	return &twin
}
