package code

import (
	"errors"
	"fmt"
	"slices"

	"lowvent.example/schema/source"
	"lowvent.example/schema/unit"
)

// ruleForm is one way to write a rule: the key by which it is told, and the
// senses it can serve.
type ruleForm struct {
	key    string
	senses []Sense
	read   func(*decoder, *source.Node, *Term) Rule
}

// forms lists the forms of a rule in the order in which messages name them.
func forms() []ruleForm {
	figures := []Sense{Least, Most}
	every := []Sense{Least, Most, Allowed, Duty}
	return []ruleForm{
		{"fixed", figures, (*decoder).fixed},
		{"shareOf", figures, (*decoder).shareOf},
		{"perUnit", figures, (*decoder).perUnit},
		{"tableBy", figures, (*decoder).table},
		{"oneOf", []Sense{Allowed}, (*decoder).oneOf},
		{"asked", []Sense{Duty}, (*decoder).asked},
		{"allOf", every, (*decoder).allOf},
		{"when", every, (*decoder).when},
	}
}

// rule reads a rule for a term; nil with a fault when it can't.
func (d *decoder) rule(n *source.Node, t *Term) Rule {
	var suiting []string
	var found []ruleForm
	for _, form := range forms() {
		if slices.Contains(form.senses, t.Sense) {
			suiting = append(suiting, form.key)
		}
		if n.Member(form.key) != nil {
			found = append(found, form)
		}
	}
	if len(found) != 1 || !slices.Contains(suiting, found[0].key) {
		d.fault(n.Place(), wrongForm(n, found), fmt.Sprintf("%s: %q is answered by %s", oneOfThese(suiting), t.ID, takes(t)), meantForm(n, suiting))
		return nil
	}
	return found[0].read(d, n, t)
}

func wrongForm(n *source.Node, found []ruleForm) string {
	switch {
	case n.Kind != source.Object:
		return fmt.Sprintf("%s stands in the place of a rule", n.Kind)
	case len(found) == 0:
		return "this is no form of rule"
	case len(found) > 1:
		return fmt.Sprintf("%q and %q are two forms of rule in one", found[0].key, found[1].key)
	}
	return fmt.Sprintf("a rule of the form %q does not suit this term", found[0].key)
}

// meantForm says which form a mistyped key was probably meant for.
func meantForm(n *source.Node, suiting []string) string {
	for _, child := range n.Children {
		if near := source.Nearest(child.Key, suiting); n.Kind == source.Object && near != "" && near != child.Key {
			return fmt.Sprintf("%q may be meant for %q", near, child.Key)
		}
	}
	return ""
}

// takes says what a term is answered by.
func takes(t *Term) string {
	switch t.Sense {
	case Allowed:
		return "a set of words"
	case Duty:
		return "a duty"
	}
	return "a figure of the kind " + t.Kind.String()
}

// figure reads a quantity of a kind that must be exact and not negative. Zero
// is refused where it would ask nothing.
func (d *decoder) figure(n *source.Node, k unit.Kind, zero bool) figure {
	text := d.textOf(n)
	if text == "" {
		return figure{kind: k}
	}
	r, err := unit.ParseKind(k, text)
	var refused *unit.ParseError
	switch {
	case errors.As(err, &refused):
		d.fault(n.Place(), fmt.Sprintf("%q is no %s: %s", text, k, refused.Why), "a number with one of the units "+k.Accepted(), tryInstead(refused.Try))
	case r.Low != r.High:
		d.fault(n.Place(), fmt.Sprintf("%q has a tolerance", text), "one figure: a limit has no tolerance", "")
	case r.Nominal < 0:
		d.fault(n.Place(), fmt.Sprintf("%q is below zero", text), "a figure above zero", "")
	case r.Nominal == 0 && !zero:
		d.fault(n.Place(), fmt.Sprintf("%q would ask nothing", text), "a figure above zero", "")
	}
	return figure{kind: k, si: r.Nominal, written: text}
}

func tryInstead(text string) string {
	if text == "" {
		return ""
	}
	return fmt.Sprintf("write %q", text)
}

// fact reads the name of a fact that the term may use.
func (d *decoder) fact(n *source.Node, t *Term, f form) Fact {
	if n == nil {
		return ""
	}
	var names []string
	for _, name := range t.usable() {
		if f == 0 || Fact(name).info().form == f {
			names = append(names, name)
		}
	}
	return Fact(d.choice(n, names))
}
