// Package markup writes elements, attributes and texts that are well-formed XML and mean
// the same to a browser that reads them as HTML. Whatever a text holds, it stays a text.
package markup

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/text"
)

// Writer gathers a page. The zero Writer is ready.
type Writer struct {
	bytes.Buffer
	open []string
}

// Open begins an element. Its attributes are names and values by turns; one with an empty
// value is left out.
func (w *Writer) Open(name string, attributes ...string) {
	w.start(name, attributes)
	w.WriteByte('>')
	w.open = append(w.open, name)
}

// Close ends the element that was begun last.
func (w *Writer) Close() {
	last := len(w.open) - 1
	w.WriteString("</" + w.open[last] + ">")
	w.open = w.open[:last]
}

// Element writes an element that holds one text.
func (w *Writer) Element(name, content string, attributes ...string) {
	w.Open(name, attributes...)
	w.Text(content)
	w.Close()
}

// Empty writes an element that can't hold anything: those of HTML that have no end, and
// any of SVG.
func (w *Writer) Empty(name string, attributes ...string) {
	w.start(name, attributes)
	w.WriteString("/>")
}

// Text writes a text: on one line, without control characters, and with nothing in it
// that could be taken for markup.
func (w *Writer) Text(content string) {
	xml.EscapeText(&w.Buffer, []byte(text.Clean(content))) // a buffer takes everything
}

// Line ends a line, so that a person can read the source as well.
func (w *Writer) Line() { w.WriteByte('\n') }

func (w *Writer) start(name string, attributes []string) {
	w.WriteString("<" + name)
	for i := 0; i+1 < len(attributes); i += 2 {
		if attributes[i+1] == "" {
			continue
		}
		w.WriteString(" " + attributes[i] + `="`)
		w.Text(attributes[i+1])
		w.WriteByte('"')
	}
}

// ID makes a word that can stand in an id and after the # of a link: letters, digits and
// hyphens stay, anything else becomes its number, so that different words stay different.
// The words are joined by dots.
func ID(words ...string) string {
	all := make([]string, len(words))
	for i, word := range words {
		all[i] = one(word)
	}
	return strings.Join(all, ".")
}

func one(word string) string {
	var b strings.Builder
	for _, r := range word {
		if r == '-' || '0' <= r && r <= '9' || 'A' <= r && r <= 'Z' || 'a' <= r && r <= 'z' {
			b.WriteRune(r)
		} else {
			fmt.Fprintf(&b, "_%x_", r)
		}
	}
	return b.String()
}
