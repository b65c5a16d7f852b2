package ask

import (
	"bufio"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/source"
)

// teller answers an interview as somebody would whose dwelling is that of a layout.
type teller struct {
	of, made *object
	v        *interview
	last     string   // the question that was answered last
	untold   []string // what could not be answered, since it was refused
	rest     []byte
	lines    []string // all answers
}

// Read answers the question that is asked now.
func (s *teller) Read(p []byte) (int, error) {
	if len(s.rest) == 0 {
		now := s.v.agenda[0]
		answer := s.answer(now)
		if key := fmt.Sprintf("%T %v", now, now.show(s.v.st)); key == s.last { // it was refused
			s.untold = append(s.untold, now.show(s.v.st).title+": "+answer)
			answer = ""
		} else {
			s.last = key
		}
		s.lines, s.rest = append(s.lines, answer), []byte(answer+"\n")
	}
	n := copy(p, s.rest)
	s.rest = s.rest[n:]
	return n, nil
}

// line is the pointer of the line of the layout that runs as one of the interview does.
func (s *teller) line(from, to any) string {
	for _, id := range s.of.object("/lines").keys() {
		if s.of.at("/lines/"+id+"/to") == to && (from == nil || s.of.at("/lines/"+id+"/from") == from) {
			return "/lines/" + id
		}
	}
	return "/lines/none"
}

// own is a pointer of the interview as the layout has it, which names its lines otherwise.
func (s *teller) own(pointer string) string {
	rest, is := strings.CutPrefix(pointer, "/lines/")
	if !is {
		return pointer
	}
	id, below, _ := strings.Cut(rest, "/")
	at := "/lines/" + id
	return strings.TrimSuffix(s.line(s.v.st.root.at(at+"/from"), s.v.st.root.at(at+"/to"))+"/"+below, "/")
}

func (s *teller) answer(now step) string {
	switch now := now.(type) {
	case valueStep:
		return s.renamed(s.text(now.asked.Form, s.of.at(s.own(now.pointer))))
	case namesStep:
		return s.names(now)
	case moreStep:
		return "yes"
	case wholeStep:
		if all, _ := s.of.at(now.survey).(list); slices.Contains(all, any(now.word)) {
			return "yes"
		}
	case noneStep:
		if o := s.of.object("/" + now.section); o != nil && len(o.members) == 0 {
			return "yes"
		}
	case feedStep:
		from, _ := s.of.at(s.line(nil, now.to) + "/from").(string)
		return from
	case tailStep:
		if s.line(now.from, now.to) != "/lines/none" {
			return "yes"
		}
	}
	return ""
}

// renamed puts the interview's names of lines into an answer that names the layout's.
func (s *teller) renamed(answer string) string {
	var parts []string
	for part := range strings.SplitSeq(answer, ", ") {
		if at := "/" + part; strings.HasPrefix(part, "lines/") {
			for _, id := range s.v.st.root.object("/lines").keys() {
				if s.own("/lines/"+id) == at {
					part = "lines/" + id
				}
			}
		}
		parts = append(parts, part)
	}
	return strings.Join(parts, ", ")
}

// names are those that a list has, in a place where it is walked by places.
func (s *teller) names(now namesStep) string {
	all := s.of.object(s.own(now.list))
	if all == nil {
		return ""
	}
	var ids []string
	for _, id := range all.keys() {
		if now.place == "" || s.of.at(s.own(now.list)+"/"+id+"/"+now.key.Name) == now.place {
			ids = append(ids, id)
		}
	}
	if len(ids) == 0 {
		return "none"
	}
	return strings.Join(ids, ", ")
}

// text is a value as somebody types it.
func (s *teller) text(form layout.Form, value any) string {
	switch value := value.(type) {
	case nil:
		return ""
	case bool:
		return map[bool]string{true: "yes", false: "no"}[value]
	case list:
		if len(value) == 0 {
			return "none"
		}
		by := ", "
		if form == layout.FormPoints {
			by = "; "
		}
		var parts []string
		for _, each := range value {
			parts = append(parts, s.text(layout.FormPoint, each))
		}
		return strings.Join(parts, by)
	}
	return fmt.Sprint(value)
}

// plain is what a layout states, by pointer, without its form, notes and evidence, and with
// its lines named by their ends.
func plain(root *object) map[string]string {
	all := map[string]string{}
	var names []string
	for _, m := range root.object("/lines").members {
		line := m.value.(*object)
		names = append(names, `"lines/`+m.key+`"`, fmt.Sprint(line.get("from"), ">", line.get("to")))
	}
	renamed := strings.NewReplacer(names...)
	var walk func(string, any)
	walk = func(at string, value any) {
		o, is := value.(*object)
		if !is {
			all[at] = flat(value, at)
			if form := keyNamed(parent(at)).Form; form == layout.FormRef || form == layout.FormRefs {
				all[at] = renamed.Replace(all[at])
			}
			return
		}
		if len(o.members) == 0 {
			all[at] = "{}"
		}
		for _, m := range o.members {
			switch {
			case m.key == "note" || m.key == "evidence" || at == "" && slices.Contains([]string{"$schema", "format", "waivers"}, m.key):
			case at == "/lines":
				line := m.value.(*object)
				walk(source.Join(at, fmt.Sprint(line.get("from"), ">", line.get("to"))), line)
			default:
				walk(source.Join(at, m.key), m.value)
			}
		}
	}
	walk("", root)
	return all
}

// retold runs an interview in which somebody tells of the dwelling of a layout.
func retold(t *testing.T, scene, path string) *teller {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	o := options(scene)
	st, err := begin(scene, o.First)
	if err != nil {
		t.Fatal(err)
	}
	st.codes = o.Codes
	var talk strings.Builder
	s := &teller{of: treeIn(t, data)}
	s.v = &interview{in: bufio.NewReaderSize(s, 16), out: &talker{out: &talk}, st: st, agenda: o.Needs.plan()}
	if err := s.v.all(); err != nil {
		t.Fatalf("%v: %v", err, s.untold)
	}
	made := s.v.st.text()
	loads(t, made)
	s.made = treeIn(t, made)
	return s
}

func treeIn(t *testing.T, data []byte) *object {
	t.Helper()
	root, fault := source.Parse(source.NewFile("layout", data), source.DefaultLimits())
	if fault != nil {
		t.Fatal(fault)
	}
	return treeOf(root).(*object)
}

// asked tells whether the interview asks for what stands at a pointer, of such a dwelling.
func (s *teller) asked(pointer string) bool {
	at := ""
	for _, token := range source.Split(pointer) {
		at = source.Join(at, token)
		if !s.v.st.fits(layout.Template(at), at) {
			return false
		}
	}
	return true
}

// TestADwellingRetoldIsTheSameLayout: whoever answers every question as a layout states it
// gets that layout, key by key, but for what is not asked of such a dwelling.
func TestADwellingRetoldIsTheSameLayout(t *testing.T) {
	for _, c := range []struct{ scene, path string }{
		{"van", "../../testdata/layouts/willow.json"},
		{"bus", "../../testdata/layouts/sedge.json"},
	} {
		s := retold(t, c.scene, filepath.FromSlash(c.path))
		want, got := plain(s.of), plain(s.made)
		same := 0
		for _, pointer := range slices.Sorted(maps.Keys(want)) {
			switch w, g := want[pointer], got[pointer]; {
			case strings.HasSuffix(pointer, "/complete"):
				s.sameLists(t, pointer)
			case w == g:
				same++
			case w == "{}" && keyNamed(parent(pointer)).Form == layout.FormObject, !s.asked(pointer):
			default:
				t.Errorf("%s: %s is %s, and %q came out", c.path, pointer, w, g)
			}
		}
		for _, pointer := range slices.Sorted(maps.Keys(got)) {
			if _, is := want[pointer]; !is {
				t.Errorf("%s: %s came out as %s, and the layout does not state it", c.path, pointer, got[pointer])
			}
		}
		if len(s.untold) > 0 || same < 150 {
			t.Errorf("%s: %d keys came out as they were; refused were %q", c.path, same, s.untold)
		}
	}
}

// sameLists holds that the lists that are complete came out as they were, in whatever order,
// but for those that can't be in such a place.
func (s *teller) sameLists(t *testing.T, pointer string) {
	t.Helper()
	place := strings.TrimSuffix(strings.TrimSuffix(pointer, "/complete"), "/surveyed")
	may, _ := Walk{st: s.v.st}.Surveys(place)
	want, got := s.of.at(pointer).(list), list{}
	if made, is := s.made.at(pointer).(list); is {
		got = made
	}
	for _, word := range want {
		if slices.Contains(may, word.(string)) && !slices.Contains(got, word) {
			t.Errorf("%s: %s was complete, and is not: %v", pointer, word, got)
		}
	}
	for _, word := range got {
		if !slices.Contains(want, word) {
			t.Errorf("%s: %s came out as complete, and was not", pointer, word)
		}
	}
}
