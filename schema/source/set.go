package source

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"
)

// ParseSet reads an edit as a command line gives it, "/path=value". The first "="
// parts the two. The value is JSON where it reads as JSON; anything else is a text, so
// that a quantity needs no second pair of quotes: /path=24 in. What begins like an
// object, a list or a quoted text is always JSON, and refused where it is damaged. The
// error says what was expected.
func ParseSet(text string) (Edit, error) {
	pointer, value, found := strings.Cut(text, "=")
	pointer, value = strings.TrimSpace(pointer), strings.TrimSpace(value)
	switch {
	case !found:
		return Edit{}, fmt.Errorf("%s has no \"=\"; expected /path=value, for example /climate/coldest=-5 degC", quoted(text))
	case pointer == "":
		return Edit{}, errors.New("no pointer before the \"=\"; expected /path=value, for example /climate/coldest=-5 degC")
	case !utf8.ValidString(text):
		return Edit{}, fmt.Errorf("%s is not UTF-8", quoted(text))
	case value == "":
		return Edit{}, fmt.Errorf(`no value after %s=; an empty text is written %s=""`, pointer, pointer)
	}
	if err := checkPointer(pointer); err != nil {
		return Edit{}, err
	}
	if err := checkValue(pointer, value); err != nil {
		if strings.ContainsAny(value[:1], `{["`) {
			return Edit{}, err
		}
		value = Quote(value)
	}
	return Edit{Pointer: pointer, Value: value}, nil
}

// ParseUnset reads the pointer of what is to be left out. The error says what was
// expected.
func ParseUnset(text string) (Edit, error) {
	pointer := strings.TrimSpace(text)
	if pointer == "" {
		return Edit{}, errors.New("no pointer; expected one such as /climate/coldest")
	}
	return Edit{Pointer: pointer, Delete: true}, checkPointer(pointer)
}

// Quote writes a text as a JSON string.
func Quote(text string) string { return string(appendQuoted(nil, text)) }
