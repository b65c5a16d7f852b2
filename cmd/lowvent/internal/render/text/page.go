package text

import (
	"io"
	"strings"
)

// The narrowest and the widest page. Below the first, tables no longer read;
// beyond the second, lines are too long for the eye to find the next.
const (
	Narrowest = 60
	Widest    = 200
	Usual     = 80 // where there is no terminal to ask
)

// Page is a column of lines, none wider than the page. The zero Page is not
// usable; see New.
type Page struct {
	width int
	paint Paint
	out   strings.Builder
}

// New makes an empty page of so many columns, brought between Narrowest and
// Widest; paint may be nil for none.
func New(width int, paint Paint) *Page {
	if paint == nil {
		paint = plain
	}
	return &Page{width: min(max(width, Narrowest), Widest), paint: paint}
}

// Width is the page's number of columns.
func (p *Page) Width() int { return p.width }

// String is what was put on the page.
func (p *Page) String() string { return p.out.String() }

// WriteTo writes the page out.
func (p *Page) WriteTo(w io.Writer) (int64, error) {
	n, err := io.WriteString(w, p.out.String())
	return int64(n), err
}

// Blank puts an empty line.
func (p *Page) Blank() { p.out.WriteByte('\n') }

// Para puts a paragraph, all of it indented.
func (p *Page) Para(style Style, indent int, text string) { p.Item(style, indent, 0, text) }

// Item puts a paragraph whose lines after the first are indented further.
func (p *Page) Item(style Style, indent, further int, text string) {
	p.put(pad(indent), indent, indent+further, style, text)
}

// Field puts a label and, in a column of its own, a text that wraps there. A
// label that is too wide for its column pushes the text to the right, and one
// that takes half the page pushes it down.
func (p *Page) Field(labelStyle Style, indent int, label string, column int, textStyle Style, text string) {
	label = Clean(label)
	used := indent + max(column, Width(label)+2)
	if used > p.width/2 && used > indent+column {
		p.Item(labelStyle, indent, 2, label)
		p.Para(textStyle, indent+column, text)
		return
	}
	p.put(pad(indent)+p.paint(labelStyle, label)+pad(used-indent-Width(label)), used, indent+column, textStyle, text)
}

// Row is Field for a label that wraps in its own column as well, as the left
// side of a table does.
func (p *Page) Row(indent int, label string, column int, text string) {
	left := Wrap(label, column-2, column-2)
	right := Wrap(text, p.width-indent-column, p.width-indent-column)
	for i := range max(len(left), len(right)) {
		p.line(pad(indent)+padTo(at(left, i), column), Plain, at(right, i))
	}
}

func at(lines []string, i int) string {
	if i < len(lines) {
		return lines[i]
	}
	return ""
}

// put wraps a text behind a head that takes so many columns; the lines after
// the first hang.
func (p *Page) put(head string, used, hanging int, style Style, text string) {
	for i, line := range Wrap(text, p.width-used, p.width-hanging) {
		if i > 0 {
			head = pad(hanging)
		}
		p.line(head, style, line)
	}
}

// line puts one line, without spaces at its end.
func (p *Page) line(head string, style Style, text string) {
	if text == "" {
		head = strings.TrimRight(head, " ")
	} else {
		text = p.paint(style, text)
	}
	p.out.WriteString(head + text + "\n")
}

// Marked puts a line of a file as it is, behind a gutter, with some columns of
// it underlined.
func (p *Page) Marked(gutter, text string, from, width int) {
	p.line(gutter, Plain, strings.TrimRight(text, " "))
	p.line(pad(Width(gutter)-2)+"| "+pad(from), Mark, strings.Repeat("^", max(width, 1)))
}

// Verbatim puts a line as it is, unwrapped, behind an indent.
func (p *Page) Verbatim(indent int, text string) { p.line(pad(indent)+text, Plain, "") }

func pad(n int) string { return strings.Repeat(" ", max(n, 0)) }

// padTo fills a text up to a column.
func padTo(text string, column int) string { return text + pad(column-Width(text)) }
