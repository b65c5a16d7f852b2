package paper

import "fmt"

// Walk calls a function with every block of the document in reading order, those in
// frames after their frame.
func (d *Document) Walk(f func(*Section, Block)) {
	for i := range d.Parts {
		for j := range d.Parts[i].Sections {
			s := &d.Parts[i].Sections[j]
			walk(s, s.Blocks, f)
		}
	}
}

func walk(s *Section, blocks []Block, f func(*Section, Block)) {
	for _, b := range blocks {
		f(s, b)
		if box, is := b.(*Box); is {
			walk(s, box.Blocks, f)
		}
	}
}

// Texts is every text that a reader finds in the document, in reading order.
func (d *Document) Texts() []string {
	all := []string{d.Title, d.Subject, d.Foot}
	add := func(texts ...string) {
		for _, t := range texts {
			if t != "" {
				all = append(all, t)
			}
		}
	}
	for i := range d.Parts {
		add(d.Parts[i].Title)
		for j := range d.Parts[i].Sections {
			s := &d.Parts[i].Sections[j]
			add(s.Title)
			walk(s, s.Blocks, func(_ *Section, b Block) { add(textsOf(b)...) })
		}
	}
	return all
}

func textsOf(b Block) []string {
	switch b := b.(type) {
	case *Heading:
		return []string{b.Word, b.Text}
	case *Para:
		return []string{b.Word, b.Text}
	case *List:
		return b.Items
	case *Lines:
		return []string{b.Label}
	case *Picture:
		return []string{b.Drawing.Title}
	case *Pairs:
		var all []string
		for _, row := range b.Rows {
			all = append(all, row.Label, row.Value)
		}
		return all
	case *Table:
		return tableTexts(b)
	}
	return nil
}

func tableTexts(t *Table) []string {
	all := []string{t.Caption}
	for _, c := range t.Columns {
		all = append(all, c.Title)
	}
	for _, row := range t.Rows {
		for _, c := range row {
			all = append(all, c.Word, c.Text)
		}
	}
	return all
}

// Check tells the first thing of the document that no page could show as it is: a table
// with a row too short, an id that comes twice, a drawing without words for the blind.
// Nil is none.
func (d *Document) Check() error {
	ids := map[string]bool{}
	var wrong error
	note := func(format string, values ...any) {
		if wrong == nil {
			wrong = fmt.Errorf(format, values...)
		}
	}
	once := func(id string) {
		if id == "" || ids[id] {
			note("the id %q is missing or comes twice", id)
		}
		ids[id] = true
	}
	for i := range d.Parts {
		once(d.Parts[i].ID)
		for j := range d.Parts[i].Sections {
			once(d.Parts[i].Sections[j].ID)
		}
	}
	d.Walk(func(s *Section, b Block) {
		switch b := b.(type) {
		case *Table:
			for n, row := range b.Rows {
				if len(row) != len(b.Columns) {
					note("%s: row %d of %q has %d cells for %d columns", s.ID, n, b.Caption, len(row), len(b.Columns))
				}
			}
		case *Picture:
			if b.Drawing.Title == "" || b.Drawing.Alt == "" {
				note("%s: the drawing %q has no title or no words for those who can't see it", s.ID, b.Drawing.ID)
			}
		}
	})
	return wrong
}
