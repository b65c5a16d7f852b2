package layout

import (
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// Date is a calendar date that may lack its day or month.
type Date = unit.Date

func (g *Given[T]) decode(d *decoder, at Spot, node *source.Node, f *field) {
	g.spot = at
	if node != nil {
		g.known = d.value(reflect.ValueOf(&g.val).Elem(), node, f)
	}
}

// value reads one plain value by the Go type of its target.
func (d *decoder) value(target reflect.Value, node *source.Node, f *field) bool {
	switch to := target.Addr().Interface().(type) {
	case *Ref:
		return d.reference(to, node, f)
	case *unit.Date:
		return parsed(d, node, `a date, such as "2031-05-20", "2031-05" or "2031"`, unit.ParseDate, to)
	case *unit.ClockTime:
		return parsed(d, node, `a time of day, such as "07:30"`, unit.ParseClockTime, to)
	case *Point:
		return d.point(to, node)
	case *[]Point:
		return d.points(to, node)
	case interface{ Choices() []string }:
		return d.choice(target, to.Choices(), node)
	}
	switch target.Kind() {
	case reflect.Bool:
		return d.flag(target, node)
	case reflect.Int:
		return d.count(target, node)
	case reflect.String:
		return d.text(target, node)
	}
	panic("layout: the contract has no reader for " + target.Type().String())
}

func (d *decoder) text(target reflect.Value, node *source.Node) bool {
	if !d.is(node, source.String, "a text between double quotes", "write it between double quotes") {
		return false
	}
	// The same white space as \s in the schema.
	if strings.Trim(node.Text(), "\t\n\f\r ") == "" {
		d.fault(node.Place(), named(node)+" is empty", "a text that says something", "leave the key out: what is left out counts as not known")
		return false
	}
	target.SetString(node.Text())
	return true
}

func (d *decoder) flag(target reflect.Value, node *source.Node) bool {
	mend := "write true or false, without quotes"
	switch strings.ToLower(node.Text()) {
	case "true", "yes":
		mend = "write true, without quotes"
	case "false", "no":
		mend = "write false, without quotes"
	case "unknown", "?":
		mend = "leave the key out: what is left out counts as not known"
	}
	if !d.is(node, source.Bool, "true or false", mend) {
		return false
	}
	target.SetBool(node.Bool())
	return true
}

// maxCount bounds whole numbers: no dwelling of this kind has more of anything.
const maxCount = 100_000

func (d *decoder) count(target reflect.Value, node *source.Node) bool {
	if !d.is(node, source.Number, "a whole number, such as 2", "write digits only, without quotes and without a unit") {
		return false
	}
	n, err := strconv.Atoi(node.Compact()) // spells 2.0 and 2e0 as 2
	if err != nil || n < 0 || n > maxCount {
		d.fault(node.Place(), node.Raw()+" can't be a count", fmt.Sprintf("a whole number from 0 to %d", maxCount), "count again, and write digits only")
		return false
	}
	target.SetInt(int64(n))
	return true
}

func (d *decoder) choice(target reflect.Value, choices []string, node *source.Node) bool {
	if !d.is(node, source.String, oneOf(choices), "write one of these words between double quotes") {
		return false
	}
	word := node.Text()
	if !slices.Contains(choices, word) {
		d.explain(node.Place(), func() (what, expected, mend string) {
			mend = suggest(word, choices)
			if mend == "" {
				mend = "choose the word that fits; where none does, leave the key out and write it into the \"note\""
			}
			return quote(word) + " is not one of the words for " + named(node), oneOf(choices), mend
		})
		return false
	}
	target.SetString(word)
	return true
}

// parsed reads a text through a parser of schema/unit.
func parsed[T any](d *decoder, node *source.Node, expected string, parse func(string) (T, error), to *T) bool {
	if !d.is(node, source.String, expected, "write it between double quotes") {
		return false
	}
	value, err := parse(node.Text())
	if err != nil {
		d.unparsed(node, err, expected)
		return false
	}
	*to = value
	return true
}

// unparsed tells why schema/unit refused a text. Most of that a schema's
// pattern refuses as well, but not all: a pattern can't count.
func (d *decoder) unparsed(node *source.Node, err error, expected string) {
	what, mend := err.Error(), "write it again in that form; where it is not known, leave the key out"
	var refused *unit.ParseError
	if errors.As(err, &refused) {
		why := refused.Why
		if refused.Kind == 0 { // a date or a time: the form follows, and is told as expected
			why, _, _ = strings.Cut(why, "; ")
		}
		what = quote(refused.Text) + ": " + why
		if refused.Try != "" {
			mend = fmt.Sprintf("did you mean %q?", refused.Try)
		}
	}
	d.fault(node.Place(), what, expected, mend)
}
