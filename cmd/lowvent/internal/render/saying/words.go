package saying

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lowvent.example/schema/code"
	"lowvent.example/schema/report"
)

// Count puts a number before a word and gives the word its plural.
func Count(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return strconv.Itoa(n) + " " + word + "s"
}

// Few lists the first so many texts and counts the rest.
func Few(texts []string, most int) string {
	if len(texts) <= most {
		return strings.Join(texts, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(texts[:most], ", "), len(texts)-most)
}

// At is a place as editors take it: file:line:column, or the file alone where
// there is no line.
func At(p report.Place) string {
	if p.Line == 0 {
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
}

// Where is a place with the pointer of the value that it speaks of.
func Where(p report.Place) string { return strings.TrimSpace(At(p) + "  " + p.Pointer) }

// Amount is the text of an amount, and nothing for none.
func Amount(a *report.Amount) string {
	if a == nil {
		return ""
	}
	return a.Text
}

// Provenance tells in words how a limit is known.
func Provenance(p report.Provenance) string {
	switch p {
	case "read":
		return "the text was read"
	case "second-hand":
		return "second-hand: somebody's account of the text was read, not the text"
	case "memory":
		return "only remembered, never judged"
	case "common-practice":
		return "common practice of the trade, no source"
	case "local":
		return "a local rule from a file of the user's, which nobody has verified"
	case "own-rule":
		return "this program's own rule, in no code"
	}
	return string(p)
}

// Cite tells what a limit rests on, in one sentence.
func Cite(s *report.Source) string {
	if s == nil {
		return ""
	}
	cite := strings.TrimSpace((&code.Entry{Document: s.Document, Clause: s.Clause}).Cite())
	if cite == "" {
		return Provenance(s.Provenance)
	}
	if s.Edition != "" {
		cite += " (" + s.Edition + ")"
	}
	return cite + "; " + Provenance(s.Provenance)
}

// Answer tells in words how a question, or one part of it, ended.
func Answer(o report.Outcome, r report.Reason) string {
	words := map[report.Outcome]string{report.Within: "within limit, as stated", report.NotMet: "not met",
		report.NotKnown: "not known", report.NotApplicable: "not judged"}
	reasons := map[report.Reason]string{report.NoSubject: "the file states that there is none", report.RuleExempts: "the question does not arise",
		report.NotCovered: "the code is silent", report.AskFitter: "a question for the fitter", report.MissingInput: "something is not stated",
		report.NotSurveyed: "a list is not stated complete", report.ToProve: "for the fitter to prove"}
	if why := reasons[r]; why != "" {
		return words[o] + " (" + why + ")"
	}
	return words[o]
}

// Lacking names what is missing, the first few things; by its pointer what its name says
// no more of than that.
func Lacking(missing []report.Missing) string {
	const most = 2
	var names []string
	for _, m := range missing {
		name := m.What
		if strings.HasSuffix(m.Place.Pointer, "/"+m.What) || len(name) > 60 {
			name = m.Place.Pointer
		}
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return Few(names, most)
}
