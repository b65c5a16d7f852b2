package term

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/text"
	"lowvent.example/schema/code"
	"lowvent.example/schema/report"
)

// style paints a signal word.
func style(word report.Signal) text.Style {
	switch word {
	case report.Danger:
		return text.Danger
	case report.Warning:
		return text.Warning
	case report.Caution:
		return text.Caution
	}
	return text.Notice
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

// Count puts a number before a word and gives the word its plural.
func Count(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return strconv.Itoa(n) + " " + word + "s"
}

// At is a place as editors take it: file:line:column, or the file alone where
// there is no line.
func At(p report.Place) string {
	if p.Line == 0 {
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
}

// where is a place with the pointer of the value that it speaks of.
func where(p report.Place) string { return strings.TrimSpace(At(p) + "  " + p.Pointer) }

func amount(a *report.Amount) string {
	if a == nil {
		return ""
	}
	return a.Text
}

// few lists the first so many texts and counts the rest.
func few(texts []string, most int) string {
	if len(texts) <= most {
		return strings.Join(texts, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(texts[:most], ", "), len(texts)-most)
}

// tally lists ids sorted, each with how often it came when that is not once.
func tally(ids []string) string {
	ids = slices.Sorted(slices.Values(ids))
	var out []string
	for len(ids) > 0 {
		n := 1
		for n < len(ids) && ids[n] == ids[0] {
			n++
		}
		one := ids[0]
		if n > 1 {
			one += fmt.Sprintf(" (%d)", n)
		}
		out, ids = append(out, one), ids[n:]
	}
	return strings.Join(out, ", ")
}
