package ask

import (
	"errors"
	"io"
	"slices"
	"strings"
	"testing"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

// goodAnswer is an answer that any key of that form takes.
func goodAnswer(st *state, k Asked) string {
	switch k.Form {
	case layout.FormQuantity:
		first, _, _ := strings.Cut(k.Kind.Accepted(), ",")
		return "1 " + first
	case layout.FormWord, layout.FormWords:
		return k.Words[0]
	case layout.FormYesNo:
		return "yes"
	case layout.FormCount:
		return "1"
	case layout.FormDate:
		return "2026-05-01"
	case layout.FormClock:
		return "07:30"
	case layout.FormPoint:
		return "0 m, 1 ft 2 in, -3 in ± 1/2 in"
	case layout.FormPoints:
		return "0 m, 0 m, 0 m; 1 m, 0 m, 0 m"
	case layout.FormRef, layout.FormRefs:
		return st.things(k.Refs)[0]
	}
	return "some words"
}

// badAnswers are what a key of each form refuses, with what it then says is wanted.
var badAnswers = map[layout.Form][][2]string{
	layout.FormQuantity: {{"24", "wanted: "}, {"much", "wanted: "}, {"1 furlong", "wanted: "}},
	layout.FormWord:     {{"no-such-word", "is not one of the words"}, {"0", "is not one of the words"}},
	layout.FormWords:    {{"no-such-word", "is not one of the words"}},
	layout.FormYesNo:    {{"maybe", "the answer is yes or no"}, {"y", "the answer is yes or no"}, {"1", "the answer is yes or no"}},
	layout.FormCount:    {{"two", "a whole number is wanted"}, {"-1", "a whole number is wanted"}, {"1.5", "a whole number is wanted"}, {"3 pcs", "a whole number is wanted"}},
	layout.FormDate:     {{"yesterday", "wanted: a date"}, {"2026-13", "wanted: a date"}, {"2026-02-30", "wanted: a date"}, {"5/1/2026", "wanted: a date"}},
	layout.FormClock:    {{"25:00", "wanted: "}, {"noon", "wanted: "}},
	layout.FormPoint:    {{"1 m, 2 m", "here are 2"}, {"1 m", "here is 1"}, {"1 m, 2, 3 m", "wanted: "}, {"a, b, c", "wanted: "}},
	layout.FormPoints:   {{"1 m, 2 m, 3 m; 4 m", "here is 1"}},
	layout.FormRef:      {{"attic", ""}, {"spaces/attic", ""}},
	layout.FormRefs:     {{"attic", ""}, {"spaces/attic", ""}},
}

// placed is a layout with a thing named x in each list on the way to a key, and one of each
// kind that a reference may name.
func placed(t *testing.T, k Asked) *state {
	t.Helper()
	st := stateOf(t, `{ "format": "lowvent-layout/1" }`)
	st.codes = []Code{{"us-mobile-structure", ""}}
	for _, section := range k.Refs {
		if key := keyNamed("", section); key.Form == layout.FormThings && len(st.musts("/"+section+"/y")) == 0 {
			st.put("/"+section+"/y", &object{})
		}
	}
	st.put("/spaces/y", &object{})
	if strings.HasPrefix(k.Template, "/lines/") {
		st.put("/cylinders/y", &object{})
		st.put("/appliances/y", &object{})
		st.put("/lines/x", &object{members: []member{{"from", "cylinders/y"}, {"to", "appliances/y"}}})
	}
	at := ""
	for _, token := range source.Split(pointerOf(k)) {
		if token == "x" || token == "y" {
			if at = source.Join(at, token); st.root.at(at) == nil && len(st.musts(at)) == 0 {
				st.put(at, &object{})
			}
			continue
		}
		at = source.Join(at, token)
	}
	return st
}

// pointerOf is a pointer to a key of things that are named x; what is sealed from another
// space or open to it has the name of that.
func pointerOf(k Asked) string {
	at := strings.ReplaceAll(k.Template, "*", "x")
	for _, list := range []string{"/openTo/", "/sealedFrom/"} {
		at = strings.ReplaceAll(at, list+"x", list+"y")
	}
	return at
}

// TestEveryKeyTakesItsKindOfAnswer: of every key that can be asked, an answer of its form is
// written where it belongs, and the layout stands.
func TestEveryKeyTakesItsKindOfAnswer(t *testing.T) {
	forms := map[layout.Form]int{}
	everyAsked(NeedsOf(allChecks()), func(k Asked) {
		if k.Form == layout.FormThings || k.Template == "/lines/*/from" || k.Template == "/lines/*/to" {
			return // asked by steps of their own
		}
		st := placed(t, k)
		if (k.Form == layout.FormRef || k.Form == layout.FormRefs) && len(st.things(k.Refs)) == 0 {
			return // to things that can't stand alone
		}
		answer := goodAnswer(st, k)
		if k.Template == codeKey {
			answer = "1"
		}
		v := valueStep{asked: k, pointer: pointerOf(k), walk: "/"}
		_, said, err := v.take(st, answer)
		if err != nil || !strings.HasPrefix(said, "noted: ") {
			t.Errorf("%s (%s): %q is refused: %q, %v", k.Template, k.Form, answer, said, err)
			return
		}
		forms[k.Form]++
		within, name := parent(v.pointer)
		if st.root.at(v.pointer) == nil && st.held[within].get(name) == nil {
			t.Errorf("%s: %q stands nowhere", k.Template, answer)
		}
		if _, said, err = v.take(st, ""); err != nil || said != leftOut || st.root.at(v.pointer) != nil || st.held[within].get(name) != nil {
			t.Errorf("%s: an empty line leaves %v: %q, %v", k.Template, st.root.at(v.pointer), said, err)
		}
	})
	for form := range badAnswers {
		if forms[form] == 0 {
			t.Errorf("no key of the form %s was tried", form)
		}
	}
}

// TestEveryKeyRefusesWhatItCantTake, with what is wanted instead, and changes nothing that
// stands in the layout.
func TestEveryKeyRefusesWhatItCantTake(t *testing.T) {
	everyAsked(NeedsOf(allChecks()), func(k Asked) {
		for _, bad := range badAnswers[k.Form] {
			v := &interview{out: &talker{out: io.Discard}, st: placed(t, k)}
			s := valueStep{asked: k, pointer: pointerOf(k), walk: "/"}
			v.agenda = []step{s}
			before := string(v.st.text())
			var talk strings.Builder
			v.out.out = &talk
			if within, _ := parent(s.pointer); len(v.st.musts(within)) > 0 && !v.st.whole(within) && k.Form != layout.FormYesNo && k.Form != layout.FormCount && k.Form != layout.FormPoint {
				continue // it is held until what it can't be without is there, and judged then
			}
			v.heed(s, bad[0])
			if len(v.agenda) != 1 || string(v.st.text()) != before || v.st.answered != 0 {
				t.Errorf("%s (%s): %q was taken: %s", k.Template, k.Form, bad[0], talk.String())
				continue
			}
			if said := unwrapped(talk.String()); !strings.Contains(said, "that can't be taken") || !strings.Contains(said, bad[1]) {
				t.Errorf("%s (%s): of %q it is said: %s", k.Template, k.Form, bad[0], said)
			}
		}
	})
}

// TestTheEndAtAnyQuestion: wherever the answers end, nothing is made; and with a stop there,
// what was answered so far is a whole layout.
func TestTheEndAtAnyQuestion(t *testing.T) {
	s := retold(t, "van", "../../testdata/layouts/willow.json")
	o := options("van")
	for k := 0; k < len(s.lines); k += 1 + len(s.lines)/6 {
		made, answered, err := Run(strings.NewReader(strings.Join(s.lines[:k], "\n")+"\n"), io.Discard, o)
		if !errors.Is(err, ErrEnded) || made != nil || answered {
			t.Errorf("after %d answers: %d bytes, %v", k, len(made), err)
		}
		made, _, err = lined(o, append(slices.Clone(s.lines[:k]), stop)...)
		if err != nil {
			t.Fatal(err)
		}
		loads(t, made)
		if k > 5 && !strings.Contains(string(made), `"title": "`+s.of.get("title").(string)) {
			t.Errorf("after %d answers the first is lost: %s", k, made)
		}
	}
}
