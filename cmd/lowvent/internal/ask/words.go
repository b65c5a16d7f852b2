package ask

import (
	"encoding/json"
	"fmt"
	"regexp"
	"strings"
	"sync"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

// examples are the figures that the schema gives to show a spelling. Beside a
// question they could be read as the figures to aim at, so they are left out there.
var examples = regexp.MustCompile(`,( as a whole number)? such as ("[^"]*"( \([^)]*\))?((,| or) "[^"]*"( \([^)]*\))?)*( for [a-z]+)?|[0-9]+)`)

// HowTo is what to do to find out the value of a key, in the schema's own words
// without its examples of figures.
func HowTo(k Asked) string {
	text := onPaper.Replace(Describe(k.Template))
	if within, _ := parent(k.Template); k.Must && within != "" && !strings.HasSuffix(within, "/*") {
		text = Describe(within) + " " + text
	}
	switch k.Form {
	case layout.FormQuantity, layout.FormDate, layout.FormCount, layout.FormClock:
		return examples.ReplaceAllString(text, "")
	case layout.FormYesNo:
		return yesNo(text)
	}
	if k.Template == codeKey {
		return examples.ReplaceAllString(text, "") // no code is ever suggested
	}
	return text
}

// onPaper puts what a file would say into what is answered.
var onPaper = strings.NewReplacer(`["none"]`, `"none"`, "[] states", `"none" states`)

// codeKey is where a layout names the code that it is judged by.
const codeKey = "/where/code"

// Describe is the schema's description of the key at a template.
func Describe(template string) string { return layout.Describe(probe(template)) }

// probe is a pointer that the template stands for.
func probe(template string) string { return strings.ReplaceAll(template, "*", "x") }

// yesNo turns what is true or false into what is answered by yes or no.
func yesNo(text string) string {
	text = strings.ReplaceAll(text, "true when", "yes when")
	text = strings.ReplaceAll(text, "false when", "no when")
	text = strings.ReplaceAll(text, "false for", "no for")
	return strings.ToUpper(text[:1]) + text[1:]
}

// listed is the description of a list, with the answer in the place of what a file
// would say.
func listed(pointer string) string {
	return strings.ReplaceAll(Describe(pointer), "{} states", `"none" states`)
}

// Axes tells from where points are measured, in the schema's own words.
var Axes = sync.OnceValue(func() string {
	var schema struct {
		Defs struct {
			Point struct {
				Description string `json:"description"`
			} `json:"point"`
		} `json:"$defs"`
	}
	if err := json.Unmarshal(layout.Schema(), &schema); err != nil {
		panic("ask: the embedded schema is not JSON: " + err.Error())
	}
	return schema.Defs.Point.Description
})

// Unit tells how an answer of a key is written, in few words.
func Unit(k Asked) string {
	switch k.Form {
	case layout.FormQuantity:
		return "number and unit: " + k.Kind.Accepted()
	case layout.FormPoint:
		return "x, y, z, each with its unit"
	case layout.FormPoints:
		return "x, y, z of each corner, each with its unit"
	case layout.FormYesNo:
		return "yes or no"
	case layout.FormCount:
		return "whole number"
	case layout.FormDate:
		return "year, year-month or year-month-day"
	case layout.FormClock:
		return "hours:minutes"
	case layout.FormWord:
		return "one of: " + strings.Join(k.Words, ", ")
	case layout.FormWords:
		return "any of: " + strings.Join(k.Words, ", ")
	case layout.FormRef, layout.FormRefs:
		return "name out of " + strings.Join(k.Refs, ", ")
	case layout.FormThings:
		return "names"
	}
	return "words"
}

// Label names a key among the keys of its thing: "cover, open" for "cover/open".
func Label(within string, k Asked) string {
	var words []string
	for _, token := range source.Split(strings.TrimPrefix(k.Template, within)) {
		if token != "*" {
			words = append(words, Spaced(token))
		}
	}
	return strings.Join(words, ", ")
}

// Spaced writes a key as words: "lowerEdgeOverLowest" is "lower edge over lowest".
func Spaced(key string) string {
	var b strings.Builder
	for _, r := range key {
		if r >= 'A' && r <= 'Z' {
			b.WriteByte(' ')
			r += 'a' - 'A'
		}
		b.WriteRune(r)
	}
	return b.String()
}

// form tells how an answer is written, one line for each thing to know.
func form(k Asked) []string {
	switch k.Form {
	case layout.FormQuantity:
		return []string{"A number and its unit, with or without a tolerance; units: " + k.Kind.Accepted() + "."}
	case layout.FormPoint:
		return []string{`Three lengths, each with its unit, with commas between: x, y, z; "?" tells from where.`}
	case layout.FormPoints:
		return []string{`Points of three lengths each, x, y, z, with semicolons between the points; "?" tells from where.`}
	case layout.FormYesNo:
		return []string{"yes or no"}
	case layout.FormCount:
		return []string{"A whole number."}
	case layout.FormDate:
		return []string{"A day, a month or a year, as much as is known: YYYY-MM-DD, YYYY-MM or YYYY."}
	case layout.FormClock:
		return []string{"A time of day: HH:MM."}
	case layout.FormWord, layout.FormWords:
		return append([]string{oneOrMore(k.Form)}, choices(k)...)
	}
	return nil
}

func oneOrMore(f layout.Form) string {
	if f == layout.FormWords {
		return `All that fit, with commas between; "none" alone for none of them:`
	}
	return "One of these, by its word or its number:"
}

// choices lists the words of a choice, each with the schema's meaning of it.
func choices(k Asked) []string {
	var lines []string
	for i, word := range k.Words {
		lines = append(lines, fmt.Sprintf("%d  %s: %s", i+1, word, layout.Meaning(probe(k.Template), word)))
	}
	return lines
}
