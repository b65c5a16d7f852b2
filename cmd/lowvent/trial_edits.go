package main

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"lowvent.example/schema/report"
	"lowvent.example/schema/source"
)

// editsFlag collects edits, of one kind, into a list that it shares: they are made in
// the order in which the command line gives them.
type editsFlag struct {
	into *[]source.Edit
	kind string
	read func(string) (source.Edit, error)
}

func (e *editsFlag) Set(s string) error {
	edit, err := e.read(s)
	if err != nil {
		return err
	}
	if slices.ContainsFunc(*e.into, func(each source.Edit) bool { return each.Pointer == edit.Pointer }) {
		return fmt.Errorf("%s is edited twice, and only one value can stand there", edit.Pointer)
	}
	*e.into = append(*e.into, edit)
	return nil
}

func (e *editsFlag) String() string { return "" }

// Type names the flag's value in help.
func (e *editsFlag) Type() string { return e.kind }

// trial is a layout with edits that stand in no file.
type trial struct {
	report.Trial
	input              // the edited text, under a name that says what it is
	root  *source.Node // of the file as it is
	base  input
	made  []source.Edit
}

// evidenceOf leaves out the evidence for what an edit changes, as far as no other edit
// takes it along.
func (t *trial) evidenceOf(e source.Edit, edits []source.Edit) []source.Edit {
	node := t.root.At(e.Pointer)
	if node == nil || !e.Delete && sameValue(node, e.Value) {
		return nil
	}
	var out []source.Edit
	for ; node.Parent != nil; node = node.Parent {
		pointer := source.Join(source.Join(node.Parent.Pointer(), "evidence"), node.Key)
		taken := func(each source.Edit) bool { return under(pointer, each.Pointer) || under(each.Pointer, pointer) }
		if node.Key != "" && t.root.At(pointer) != nil && !slices.ContainsFunc(edits, taken) {
			out = append(out, source.Edit{Pointer: pointer, Delete: true})
		}
	}
	return out
}

// sameValue tells whether JSON text says what a node does.
func sameValue(node *source.Node, text string) bool {
	var a, b any
	return json.Unmarshal([]byte(node.Raw()), &a) == nil && json.Unmarshal([]byte(text), &b) == nil && reflect.DeepEqual(a, b)
}

// newTrial makes the edits. What they change loses its evidence, which was for what the
// file says: nobody measured what is only tried. The error tells which edit can't be made.
func newTrial(in input, root *source.Node, edits []source.Edit) (*trial, error) {
	t := &trial{root: root, base: in, Trial: report.Trial{Of: in.name, SHA256: in.file.SHA256(), Edits: []report.TrialEdit{}}}
	for _, e := range edits {
		edits = append(edits, t.evidenceOf(e, edits)...)
	}
	t.made = edits
	file, err := t.edited(edits)
	if err != nil {
		return nil, err
	}
	for _, e := range edits {
		t.Edits = append(t.Edits, t.told(e))
	}
	t.input = input{name: file.Name, file: file}
	return t, nil
}

// told is an edit as reports carry it.
func (t *trial) told(e source.Edit) report.TrialEdit {
	return report.TrialEdit{Pointer: e.Pointer, Old: t.old(e.Pointer), New: e.Value}
}

// edited gives the text of the file with edits.
func (t *trial) edited(edits []source.Edit) (*source.File, error) {
	file, root := t.base.file, t.root
	for _, e := range edits {
		if err := leads(root, e); err != nil {
			return nil, err
		}
		next, err := source.Apply(file, root, []source.Edit{e})
		if err != nil {
			return nil, err
		}
		var fault *source.Fault
		if root, fault = source.Parse(next, source.DefaultLimits()); fault != nil {
			return nil, fault
		}
		file = next
	}
	return source.NewFile(report.TrialName(t.base.name), file.Data), nil
}

// old is what the file has at a pointer, as JSON text; "" where it states nothing.
func (t *trial) old(pointer string) string {
	if node := t.root.At(pointer); node != nil {
		return node.Compact()
	}
	return ""
}

// parsed is the tree of an input, or what stands in the way of one.
func parsed(in input) (*source.Node, *source.Fault) {
	if in.fault != nil {
		return nil, in.fault
	}
	return source.Parse(in.file, source.DefaultLimits())
}

// placed says of each fault of the trial's text which edit it comes from.
func (t *trial) placed(f *report.FileReport) {
	for i := range f.Faults {
		fault := &f.Faults[i]
		lead := "in the trial of " + t.Of
		for _, e := range t.Edits {
			if concerns(&e, fault.Place.Pointer) {
				lead += ", " + asTried(&e)
				break
			}
		}
		fault.What = lead + ": " + fault.What
	}
}

// concerns tells whether an edit may be what a fault at a pointer comes from.
func concerns(e *report.TrialEdit, fault string) bool {
	return under(fault, e.Pointer) || under(e.Pointer, fault) && (fault != "" || e.New == "")
}

func asTried(e *report.TrialEdit) string {
	if e.New == "" {
		return e.Pointer + " left out"
	}
	return e.Pointer + " = " + e.New
}

// under tells whether a pointer is another or leads into what stands there.
func under(pointer, of string) bool {
	return pointer == of || strings.HasPrefix(pointer, of+"/")
}
