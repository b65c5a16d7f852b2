package source

import (
	"errors"
	"fmt"
	"strings"

	"github.com/go-json-experiment/json/jsontext"
)

// Edit is one change to a file: put a value where a JSON Pointer leads, or
// take away what is there.
type Edit struct {
	Pointer string // JSON Pointer (RFC 6901)
	Value   string // the new value as JSON text; not used by a delete
	Delete  bool
}

// String gives the edit as a line that [ParseEdit] reads.
func (e Edit) String() string {
	pointer := e.Pointer
	if pointer == "" || strings.ContainsAny(pointer, "=\r\n") || pointer != strings.TrimSpace(pointer) {
		pointer = string(appendQuoted(nil, pointer))
	}
	if e.Delete {
		return "delete " + pointer
	}
	return pointer + " = " + e.Value
}

// ParseEdit reads an edit from one line, "/path = value" or "delete /path".
// The value is JSON: a text stands in double quotes. The first "=" parts the
// two; a pointer that itself holds "=" or ends in a space is written in double
// quotes, as a JSON text. The error says what was expected.
func ParseEdit(line string) (Edit, error) {
	line = strings.TrimSpace(line)
	if path, ok := strings.CutPrefix(line, "delete"); ok && strings.Trim(path, " \t") != path || line == "delete" {
		pointer, rest, err := cutPointer(path)
		if err == nil && rest != "" {
			err = fmt.Errorf("%s after the pointer of a delete; expected nothing more", quoted(rest))
		}
		return Edit{Pointer: pointer, Delete: true}.orError(line, err)
	}
	pointer, rest, err := cutPointer(line)
	value, found := strings.CutPrefix(rest, "=")
	value = strings.TrimSpace(value)
	switch {
	case err != nil:
	case !found:
		err = errors.New(`no "=" in it; expected: /path = value, or: delete /path`)
	default:
		err = checkValue(pointer, value)
	}
	return Edit{Pointer: pointer, Value: value}.orError(line, err)
}

func (e Edit) orError(line string, err error) (Edit, error) {
	if err != nil {
		return Edit{}, fmt.Errorf("edit %s: %w", quoted(line), err)
	}
	return e, nil
}

// cutPointer takes the pointer from the front of a line. The rest begins with
// the "=" if there is one.
func cutPointer(line string) (pointer, rest string, err error) {
	line = strings.TrimSpace(line)
	if strings.HasPrefix(line, `"`) {
		pointer, rest, err = cutQuoted(line)
	} else {
		i := strings.IndexByte(line, '=')
		if i < 0 {
			i = len(line)
		}
		pointer, rest = strings.TrimSpace(line[:i]), line[i:]
		if pointer == "" {
			err = errors.New(`no pointer; expected one such as /path/to/it, or "" for the whole file`)
		}
	}
	if err == nil {
		err = checkPointer(pointer)
	}
	return pointer, rest, err
}

// cutQuoted takes a JSON string from the front of a line.
func cutQuoted(line string) (text, rest string, err error) {
	in := jsontext.NewDecoder(strings.NewReader(line))
	raw, err := in.ReadValue()
	if err != nil {
		return "", "", errors.New(`a pointer in quotes that is not a JSON text; expected "/path"`)
	}
	out, err := jsontext.AppendUnquote(nil, raw)
	return string(out), strings.TrimSpace(line[in.InputOffset():]), err
}

func checkPointer(pointer string) error {
	if wellFormed(pointer) {
		return nil
	}
	if !strings.HasPrefix(pointer, "/") {
		return fmt.Errorf("the pointer %s does not begin with /; expected one such as %s", quoted(pointer), quoted("/"+pointer))
	}
	return fmt.Errorf("the pointer %s is not well formed; in a name, / is written ~1 and ~ is written ~0", quoted(pointer))
}

// checkValue says how to mend a value that is not one JSON value.
func checkValue(pointer, value string) error {
	if value == "" {
		return fmt.Errorf("no value after the =; expected JSON, or: delete %s", pointer)
	}
	_, fault := parseValue(NewFile("value", []byte(value)), Limits{})
	if fault == nil {
		return nil
	}
	return fmt.Errorf("the value is not JSON: %s; a text stands in double quotes, such as %s = %s", fault.What, pointer, appendQuoted(nil, strings.Trim(value, `"'`)))
}
