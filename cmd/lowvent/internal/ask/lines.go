package ask

import (
	"fmt"
	"slices"
	"strings"

	"lowvent.example/schema/layout"
)

// feedStep asks from what the gas comes to a thing. Lines are asked from the
// appliance back to the cylinder, so that none ever leads to where nothing goes on.
type feedStep struct {
	to    string // "appliances/hob"
	walk  string
	needs Needs
}

func (f feedStep) path() string { return f.walk }

// fits leaves out what is not there, and a thing that was asked about already.
func (f feedStep) fits(st *state) bool { return st.root.at("/"+f.to) != nil && !st.counted[f.to] }

// line is the pointer of the line that leads to the thing, or "".
func (f feedStep) line(st *state) string {
	for _, id := range st.root.object("/lines").keys() {
		if st.root.at("/lines/"+id+"/to") == f.to {
			return "/lines/" + id
		}
	}
	return ""
}

func (f feedStep) show(st *state) question {
	asked := Asked{Key: keyNamed("/lines/*", "from"), Template: "/lines/*/from"}
	q := question{title: Title("/"+f.to) + ": where its gas comes from", asks: "From what does the gas come to it, next before it along the pipe or hose? Look along it; touch nothing.",
		form: st.thingsToName(asked), longer: []string{Describe("/lines"), Describe("/lines/*/from")}}
	if line := f.line(st); line != "" {
		q.form = append(q.form, fmt.Sprintf("The first layout has: from %v. An empty line leaves that as it is.", st.root.at(line+"/from")))
	}
	return q
}

func (f feedStep) take(st *state, answer string) ([]step, string, error) {
	line := f.line(st)
	st.counted[f.to] = true
	if answer == "" {
		if line == "" {
			return nil, leftOut, nil
		}
		from, _ := st.root.at(line + "/from").(string)
		return f.onwards(st, line, from), "left as the first layout has it: from " + from, nil
	}
	from := st.reference(answer, keyNamed("/lines/*", "from").Refs)
	if line == "" {
		line = st.freeLine("to-" + strings.ReplaceAll(f.to, "/", "-"))
	}
	f.uninvent(st, line)
	st.answered++
	st.put(line, &object{members: []member{{"from", from}, {"to", f.to}}})
	if err := st.check(); err != nil {
		return nil, "", err
	}
	return f.onwards(st, line, from), "noted: from " + from, nil
}

// uninvent takes out the lines that the first layout invented, once somebody tells how
// the real ones run.
func (f feedStep) uninvent(st *state, but string) {
	for _, id := range slices.Clone(st.root.object("/lines").keys()) {
		if at := "/lines/" + id; at != but && !st.claimed[at] {
			st.root.cut(at)
		}
	}
}

// freeLine is the pointer for a new line of that name, or one like it that is free.
func (st *state) freeLine(name string) string {
	name = name[:min(len(name), 60)]
	at := "/lines/" + name
	for n := 2; st.root.at(at) != nil; n++ {
		at = fmt.Sprintf("/lines/%s-%d", name, n)
	}
	return at
}

// onwards asks about the line itself, and then from what it is fed in turn.
func (f feedStep) onwards(st *state, line, from string) []step {
	steps := f.needs.thing(line, f.walk+line, "from", "to")
	switch section, _, _ := strings.Cut(from, "/"); {
	case section == "changeovers":
		connects, _ := st.root.at("/" + from + "/connects").(list)
		for _, each := range connects {
			steps = append(steps, tailStep{from: each.(string), to: from, walk: f.walk, needs: f.needs})
		}
	case section != "cylinders":
		steps = append(steps, feedStep{to: from, walk: f.walk, needs: f.needs})
	}
	return steps
}

// tailStep asks whether a hose joins a cylinder to its changeover.
type tailStep struct {
	from, to, walk string
	needs          Needs
}

func (s tailStep) path() string { return s.walk }

func (s tailStep) fits(st *state) bool {
	lines := st.root.object("/lines")
	return !slices.ContainsFunc(lines.keys(), func(id string) bool {
		return st.root.at("/lines/"+id+"/from") == s.from && st.root.at("/lines/"+id+"/to") == s.to
	})
}

func (s tailStep) show(*state) question {
	return question{title: Title("/"+s.from) + " to " + Title("/"+s.to), asks: "Does a hose or pipe join the two, the cylinder's valve shut or not? Look only.", form: []string{"yes or no"}, longer: []string{Describe("/lines")}}
}

func (s tailStep) take(st *state, answer string) ([]step, string, error) {
	if answer == "" {
		return nil, leftOut, nil
	}
	yes, err := readYesNo(answer)
	if err != nil || yes == false {
		return nil, "", err
	}
	line := st.freeLine("from-" + strings.ReplaceAll(s.from, "/", "-"))
	st.answered++
	st.put(line, &object{members: []member{{"from", s.from}, {"to", s.to}}})
	return s.needs.thing(line, s.walk+line, "from", "to"), "", st.check()
}

// linesPart begins the questions on lines: at everything that gas goes to and does
// not go on from.
func (n Needs) linesPart(st *state) []step {
	var steps []step
	through := keyNamed("/lines/*", "from").Refs
	for _, section := range keyNamed("/lines/*", "to").Refs {
		if slices.Contains(through, section) || section == string(layout.OpenAir) {
			continue
		}
		for _, id := range st.root.object("/" + section).keys() {
			steps = append(steps, feedStep{to: section + "/" + id, walk: "/lines", needs: n})
		}
	}
	return steps
}
