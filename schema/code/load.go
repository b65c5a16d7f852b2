package code

import (
	"bytes"
	_ "embed"
	"errors"
	"fmt"
	"io"
	"net/url"
	"slices"
	"strings"
	"sync"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"lowvent.example/schema/source"
)

//go:embed code.schema.json
var schema []byte

// Schema is the published JSON Schema (2020-12) of a profile file.
func Schema() []byte { return bytes.Clone(schema) }

// Load reads a profile that a user wrote: the name is used in messages only.
// It gives either a whole profile or every fault of the file, each with its
// line and column, and never both. Only the code for the dwelling can be loaded:
// the law on the thing itself, common practice and the program's own rules are
// not for a file to loosen. An id of a built-in profile is refused, so that
// nothing can pass for it.
func Load(name string, data []byte) (*Profile, source.Faults) {
	root, fault := source.Parse(source.NewFile(name, data), source.Limits{})
	if fault != nil {
		return nil, source.Faults{*fault}
	}
	if faults := reserved(root); faults != nil {
		return nil, faults
	}
	p, faults := decode(root)
	if faults == nil {
		faults = validate(root)
	}
	if faults != nil {
		return nil, faults
	}
	p.File = name
	return p, nil
}

// reserved says what only the program's own files may be. The terms of another
// book would all be faults as well, so nothing else is said then.
func reserved(root *source.Node) source.Faults {
	book, id := root.Member("book"), root.Member("id")
	if slices.Contains(books[2:], book.Text()) {
		return source.Faults{{Place: book.Place(), What: fmt.Sprintf("a file of your own can't be the book %q", book.Text()), Expected: `"profile"`}}
	}
	for _, known := range Profiles() {
		if known.ID == id.Text() {
			return source.Faults{{Place: id.Place(), What: fmt.Sprintf("%q is the id of a built-in profile", known.ID),
				Expected: "an id of its own", Mend: "choose another id"}}
		}
	}
	return nil
}

// compiled is the published schema, compiled when a user's file is loaded.
var compiled = sync.OnceValues(func() (*jsonschema.Schema, error) {
	c := jsonschema.NewCompiler()
	c.LoadURL = noLoading
	if err := c.AddResource("code.schema.json", bytes.NewReader(schema)); err != nil {
		return nil, err
	}
	return c.Compile("code.schema.json")
})

// validate is the second opinion on a file that the decoder accepted. The two
// are meant to agree, the decoder being the stricter; where they do not, the
// file is not used.
func validate(root *source.Node) source.Faults {
	s, err := compiled()
	if err == nil {
		err = s.Validate(root.Value())
	}
	if err == nil {
		return nil
	}
	at := root
	var invalid *jsonschema.ValidationError
	if errors.As(err, &invalid) {
		at = deepest(root, invalid)
	}
	return source.Faults{{Place: at.Place(), What: "the published schema does not allow this, though the program's reader does",
		Expected: "a profile as the schema describes it", Mend: "report this as a fault of the program"}}
}

// deepest gives the innermost value that the schema refused, of several the
// first in the file.
func deepest(root *source.Node, invalid *jsonschema.ValidationError) *source.Node {
	best := root
	if pointer, err := url.PathUnescape(invalid.InstanceLocation); err == nil {
		if n := root.At(pointer); n != nil {
			best = n
		}
	}
	for _, cause := range invalid.Causes {
		n := deepest(root, cause)
		deeper := strings.Count(n.Pointer(), "/") - strings.Count(best.Pointer(), "/")
		if deeper > 0 || deeper == 0 && n.Span.Start < best.Span.Start {
			best = n
		}
	}
	return best
}

// noLoading keeps the compiler from reading references off the disk or the net.
func noLoading(address string) (io.ReadCloser, error) {
	return nil, fmt.Errorf("the schema refers to %s, and nothing outside it is read", address)
}
