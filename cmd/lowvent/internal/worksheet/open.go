package worksheet

import (
	"cmp"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/ask"
	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// Open makes the worksheet of what a layout does not state yet: one blank for each thing
// that a question waits for, in the order of a walk, with where in the file the answer
// belongs. data is the layout, r what was told of it on that day.
func Open(data []byte, r *report.FileReport, on string) ([]byte, error) {
	w, err := ask.NewWalk(ask.Options{Scene: r.File, First: data})
	if err != nil {
		return nil, err
	}
	gaps := gapsOf(r.Findings)
	heading := "Still to be measured: " + cmp.Or(r.Title, r.File)
	p, all := &page{}, openSheets(w, gaps)
	p.document(heading, heading, func() {
		p.openFront(r, on, len(gaps), all)
		for _, one := range all {
			p.sheet("part", one)
		}
	})
	return []byte(p.String()), nil
}

// openFront tells of which file, judged how, and how to fill it in.
func (p *page) openFront(r *report.FileReport, on string, open int, all []sheet) {
	p.put("<section class=\"front\">\n<p>The file %s, judged on %s; %s.</p>\n", r.File, on, strings.TrimSuffix(saying.JudgedBy(r), "."))
	for _, each := range saying.Unverified(r) {
		p.put("<p>%s</p>\n", each)
	}
	if open == 0 {
		p.put("<p><strong>No question waits for something that the file does not state.</strong> What it states is not inspected.</p>\n</section>\n")
		return
	}
	p.put("<p><strong>Questions wait for %s that the file does not state.</strong> Below each stand the checks that wait, and its place in the file. What is stated already is not asked again; nobody has inspected it.</p>\n", saying.Count(open, "thing"))
	p.howTo("Where a list is asked for, write a name for each thing that is there, or \"none\" when you looked and there is none. What is then to be measured of each, another of these sheets asks.",
		"Write what you found into the file, each value at its place, and check it again: the answers may raise further questions.")
	p.put("<p>%s</p>\n<p class=\"who\">Measured by <span class=\"line\"></span> Date <span class=\"line short\"></span></p>\n", ask.Axes())
	p.contents(all)
	p.put("</section>\n")
}

// openSheets lays out the gaps of a layout.
func openSheets(w ask.Walk, gaps []gap) []sheet {
	slices.SortStableFunc(gaps, func(a, b gap) int { return compare(w, a.pointer, b.pointer) })
	s := &setter{walk: w}
	for len(gaps) > 0 {
		at := sheetAt(gaps[0].pointer)
		n := slices.IndexFunc(gaps, func(g gap) bool { return sheetAt(g.pointer) != at })
		if n < 0 {
			n = len(gaps)
		}
		s.add(s.open(at, gaps[:n]))
		gaps = gaps[n:]
	}
	return s.sheets
}

// open sets the sheet of a place or a list: a table for each thing in it.
func (s *setter) open(at string, gaps []gap) sheet {
	one := sheet{title: titleOf(at), at: at}
	for _, g := range gaps {
		if g.pointer == ask.SurveyAt(at) {
			one.ticks = s.incomplete(at)
			continue
		}
		caption := capital(cmp.Or(ask.Title(thingOf(g.pointer)), "the dwelling"))
		if n := len(one.tables); n == 0 || one.tables[n-1].caption != caption {
			one.tables = append(one.tables, table{caption: caption})
		}
		last := &one.tables[len(one.tables)-1]
		last.rows = append(last.rows, g.row())
	}
	return one
}

// titleOf names the sheet of a place or a list.
func titleOf(at string) string {
	switch at {
	case "":
		return papersTitle
	case "/outside":
		return outsideTitle
	case "/surveyedBy":
		return wholeTitle
	}
	return capital(ask.Title(at))
}

func (s *setter) incomplete(at string) []tick { return ticksOf(s.walk.Incomplete(at)) }

// compare puts two pointers in the order of a walk: the papers, then list by list; things
// in the order of the file, keys in that of the contract.
func compare(w ask.Walk, a, b string) int {
	ours, theirs, at := source.Split(a), source.Split(b), ""
	for i := range min(len(ours), len(theirs)) {
		if ours[i] != theirs[i] {
			order := orderIn(w, at)
			return cmp.Or(cmp.Compare(place(order, ours[i]), place(order, theirs[i])), strings.Compare(ours[i], theirs[i]))
		}
		at = source.Join(at, ours[i])
	}
	return cmp.Compare(len(ours), len(theirs))
}

// place is where a word stands in an order; what is not in it comes last.
func place(order []string, word string) int {
	if i := slices.Index(order, word); i >= 0 {
		return i
	}
	return len(order)
}

// orderIn is the order of what stands in the object at a pointer.
func orderIn(w ask.Walk, at string) []string {
	if at == "" {
		return sections()
	}
	var names []string
	for _, key := range layout.Keys(at) {
		names = append(names, key.Name)
	}
	return append(names, w.Names(at)...)
}

// sections is the order of the sheets: the papers, the lists, and at last what is told of
// the whole.
func sections() []string {
	var papers, lists, whole []string
	for _, part := range ask.Parts() {
		switch sheetAt("/" + part.Name) {
		case "":
			papers = append(papers, part.Name)
		case "/outside", "/surveyedBy":
			whole = append(whole, part.Name)
		default:
			lists = append(lists, part.Name)
		}
		if part.Name == "spaces" {
			lists = append(lists, ask.Walked()...)
		}
	}
	return slices.Concat(papers, lists, whole)
}
