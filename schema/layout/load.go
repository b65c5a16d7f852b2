package layout

import (
	"io"

	"lowvent.example/schema/source"
)

// ReadFile reads and loads the layout at path. A layout that has any fault is
// not returned: there is no such thing as a half-read dwelling.
func ReadFile(path string) (*Layout, source.Faults) {
	return loaded(source.ReadPath(path, source.DefaultLimits()))
}

// ReadFrom loads a layout from a stream, such as standard input, under a name
// for its places. It does not close the stream.
func ReadFrom(name string, r io.Reader) (*Layout, source.Faults) {
	open := func() (io.ReadCloser, error) { return io.NopCloser(r), nil }
	return loaded(source.Open(name, open, source.DefaultLimits()))
}

func loaded(file *source.File, fault *source.Fault) (*Layout, source.Faults) {
	if fault != nil {
		return nil, source.Faults{*fault}
	}
	return Load(file)
}

// Load turns the bytes of a file into a layout, or tells every structural fault
// of the file at once, in the order in which they stand and one a place. It
// gives either a layout or at least one fault.
//
// The typed reader finds everything that the published schema finds; [Validate]
// asks the schema itself.
func Load(file *source.File) (*Layout, source.Faults) {
	root, fault := source.Parse(file, source.DefaultLimits())
	if fault != nil {
		return nil, source.Faults{*fault}
	}
	l, d := decode(root)
	if faults := d.faults(); len(faults) > 0 {
		return nil, faults
	}
	return l, nil
}

// File is the file that the layout was read from.
func (l *Layout) File() *source.File { return l.spot.node.File() }

// Root is the file's node tree, for edits.
func (l *Layout) Root() *source.Node { return l.spot.node }

// Find returns the thing that a reference names, or nil.
func (l *Layout) Find(r Ref) Item { return l.byRef[r] }
