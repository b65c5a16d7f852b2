package code

import (
	"bytes"
	"cmp"
	_ "embed"
	"fmt"
	"slices"

	"lowvent.example/schema/source"
)

//go:embed overlay.schema.json
var overlaySchema []byte

// OverlaySchema is the published JSON Schema (2020-12) of a local overlay. It refers to
// that of a profile for the forms of rules.
func OverlaySchema() []byte { return bytes.Clone(overlaySchema) }

// LoadOverlay reads a local overlay; the name is used in messages only. It gives either
// a whole overlay or every fault of the file, each with its line and column, and never
// both. The terms that may never be loosened come with the reason why. That the code
// which it lies over is the one chosen is not asked here.
func LoadOverlay(name string, data []byte, never map[*Term]string) (*Overlay, source.Faults) {
	file := source.NewFile(name, data)
	root, fault := source.Parse(file, source.Limits{})
	if fault != nil {
		return nil, source.Faults{*fault}
	}
	d := &decoder{}
	o := d.overlay(root, never)
	if len(d.faults) > 0 {
		d.faults.Sort()
		return nil, d.faults
	}
	slices.SortFunc(o.Entries, func(a, b OverlayEntry) int { return cmp.Compare(a.Term, b.Term) })
	o.File, o.SHA256 = name, file.SHA256()
	return o, nil
}

func (d *decoder) overlay(n *source.Node, never map[*Term]string) *Overlay {
	d.object(n, keys{must: []string{"format", "title", "over", "entries"}, may: []string{"$schema", "note"}})
	if m := n.Member("format"); m != nil {
		d.choice(m, []string{OverlayFormat})
	}
	o := &Overlay{Title: d.text(n, "title"), Note: d.text(n, "note")}
	d.text(n, "$schema")
	if m := n.Member("over"); m != nil {
		o.Over = d.choice(m, choosable())
	}
	for _, e := range d.entries(n) {
		o.Entries = append(o.Entries, d.overlayEntry(e, never))
	}
	return o
}

// overlayEntry reads one local limit. Only what the chosen code may answer can be
// overlaid: the law on the thing itself, common practice and the program's own rules
// are not for a file to change.
func (d *decoder) overlayEntry(n *source.Node, never map[*Term]string) OverlayEntry {
	must, may := []string{"says", "rule", "document"}, []string{"clause", "edition", "address", "from", "until", "note", "loosens"}
	if !d.object(n, keys{must, may}) {
		return OverlayEntry{}
	}
	e := OverlayEntry{Entry: d.statement(n, BookProfile)}
	e.Provenance = Local
	if m := n.Member("loosens"); m != nil {
		e.Loosens = d.loosening(m)
		if why, is := never[termByID(n.Key)]; is {
			d.fault(m.KeyPlace(), fmt.Sprintf("%s can't be loosened: %s", n.Key, why), "a limit that may ask more, without \"loosens\"", "take it out, or do as the code asks")
		}
	}
	return e
}

func (d *decoder) loosening(n *source.Node) *Loosening {
	if !d.object(n, keys{must: []string{"by", "licence", "reason", "until"}}) {
		return nil
	}
	return &Loosening{By: d.text(n, "by"), Licence: d.text(n, "licence"), Reason: d.text(n, "reason"), Until: d.date(n, "until")}
}
