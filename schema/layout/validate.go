package layout

import (
	_ "embed"
	"errors"
	"fmt"
	"io"
	"net/url"
	"strings"
	"sync"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"lowvent.example/schema/source"
)

//go:embed layout.schema.json
var published []byte

//go:embed layout.compact.json
var compact []byte

// Schema is the published JSON Schema (2020-12) of a layout file, with a
// description for every key. The bytes must not be changed.
func Schema() []byte { return published }

// compiled is the compact twin of the published schema: the same keywords
// without the descriptions, which compiles several times as fast. A test holds
// that the two accept and refuse the same files, and that the twin is fresh.
var compiled = sync.OnceValues(func() (*jsonschema.Schema, error) {
	return compile("layout.compact.json", compact)
})

// compile never follows a reference out of the schema: nothing is loaded from
// the disk or the network.
func compile(name string, text []byte) (*jsonschema.Schema, error) {
	c := jsonschema.NewCompiler()
	c.LoadURL = refuse
	if err := c.AddResource(name, strings.NewReader(string(text))); err != nil {
		return nil, err
	}
	return c.Compile(name)
}

func refuse(address string) (io.ReadCloser, error) {
	return nil, fmt.Errorf("the schema refers to %s; it may refer to nothing outside itself", address)
}

// Validate is the second opinion on a layout that the typed reader accepted: it
// holds the file against the published schema. The two must agree, which the tests
// try on generated and on damaged files; where they do not, the program is at
// fault and the file must not be judged. It takes several times as long as Load.
func Validate(l *Layout) source.Faults { return validate(l.Root()) }

func validate(root *source.Node) source.Faults {
	schema, err := compiled()
	if err != nil {
		return source.Faults{{Place: head(root), What: "the program's own schema does not compile: " + err.Error(),
			Expected: "a sound program", Mend: "report this as a fault of the program"}}
	}
	err = schema.Validate(root.Value())
	if err == nil {
		return nil
	}
	var faults source.Faults
	for _, pointer := range refusedAt(err) {
		faults = append(faults, source.Fault{Place: root.At(pointer).Place(), What: "the published schema does not allow this, though the program's reader does",
			Expected: Describe(pointer), Mend: "report this as a fault of the program"})
	}
	faults.Sort()
	return faults
}

// refusedAt gives the JSON Pointers of the values at the ends of the
// validator's tree of reasons. Its messages are not used: they come in no
// fixed order, and the reader's are better.
func refusedAt(err error) []string {
	var refused *jsonschema.ValidationError
	if !errors.As(err, &refused) {
		return []string{""}
	}
	if len(refused.Causes) == 0 {
		// The location is a pointer written as a fragment of an address.
		pointer, _ := url.PathUnescape(refused.InstanceLocation)
		return []string{pointer}
	}
	seen := map[string]bool{}
	var pointers []string
	for _, cause := range refused.Causes {
		for _, pointer := range refusedAt(cause) {
			if !seen[pointer] {
				seen[pointer] = true
				pointers = append(pointers, pointer)
			}
		}
	}
	return pointers
}
