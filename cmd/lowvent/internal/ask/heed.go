package ask

import (
	"cmp"
	"slices"
	"strings"
)

// heed does what one line asks for.
func (v *interview) heed(s step, answer string) {
	switch {
	case answer == help:
		v.out.longer(s.show(v.st))
	case answer == back:
		v.goBack()
	case answer == thing:
		v.skip(s.path(), "the rest of "+Title(lastOf(s.path()))+" is left out: not known")
	case answer == part:
		v.skip("/"+firstOf(s.path()), "the rest of this part is left out: not known")
	case len(answer) > longestAnswer:
		v.out.say("that can't be taken: an answer of more than 2000 characters")
	default:
		v.answer(s, answer)
	}
}

// answer takes an answer into a copy of the state, which is kept if it stands.
func (v *interview) answer(s step, answer string) {
	st := v.st.clone()
	steps, said, err := s.take(st, answer)
	if err != nil {
		v.out.say(err.Error())
		return
	}
	v.out.say(cmp.Or(said, "noted"))
	v.past = append(v.past, mark{v.st, v.agenda})
	v.st, v.agenda = st, slices.Concat(steps, v.agenda[1:])
}

func (v *interview) goBack() {
	if len(v.past) == 0 {
		v.out.say("this is the first question")
		return
	}
	last := v.past[len(v.past)-1]
	v.past = v.past[:len(v.past)-1]
	v.st, v.agenda = last.st, last.agenda
	v.out.say("back to the question before; its answer is asked again")
}

// skip leaves out every question that is still to come on a part of the walk. What the
// first layout stated there is taken out as by an empty line, save the things themselves.
func (v *interview) skip(path, said string) {
	v.past = append(v.past, mark{v.st, v.agenda})
	v.st = v.st.clone()
	for len(v.agenda) > 0 && strings.HasPrefix(v.agenda[0].path()+"/", path+"/") {
		next := v.agenda[0]
		v.agenda = v.agenda[1:]
		if later, ok := next.(laterStep); ok {
			v.agenda = slices.Concat(later.make(v.st), v.agenda)
			continue
		}
		if !next.fits(v.st) {
			continue
		}
		if steps, _, _ := next.take(v.st, ""); len(steps) > 0 {
			v.agenda = slices.Concat(steps, v.agenda)
		}
	}
	v.out.say(said)
}

// lastOf is the pointer of the thing that a path of the walk ends in.
func lastOf(path string) string {
	for _, section := range Walked() {
		if i := strings.LastIndex(path, "/"+section+"/"); i > 0 {
			return path[i:]
		}
	}
	return path
}

func firstOf(path string) string {
	first, _, _ := strings.Cut(strings.TrimPrefix(path, "/"), "/")
	return first
}
