package source

import (
	"slices"

	"github.com/go-json-experiment/json/jsontext"
)

// Join gives the JSON Pointer (RFC 6901) of the member or element key of the
// value at pointer. "~" and "/" in the key are escaped.
func Join(pointer, key string) string {
	return string(AppendToken([]byte(pointer), key))
}

// AppendToken adds one token to a JSON Pointer, escaped as RFC 6901, section 3, has it:
// "~" as "~0", "/" as "~1".
func AppendToken(b []byte, key string) []byte {
	b = append(b, '/')
	for _, c := range []byte(key) {
		switch c {
		case '~':
			b = append(b, "~0"...)
		case '/':
			b = append(b, "~1"...)
		default:
			b = append(b, c)
		}
	}
	return b
}

// Split gives the unescaped reference tokens of a JSON Pointer (RFC 6901),
// none for the root. A pointer that is not well formed is split as far as it
// can be read; [Node.At] and [Apply] refuse it.
func Split(pointer string) []string {
	return slices.Collect(jsontext.Pointer(pointer).Tokens())
}

// wellFormed reports whether the text is a JSON Pointer: empty or beginning
// with "/", UTF-8, and "~" only as "~0" or "~1".
func wellFormed(pointer string) bool { return jsontext.Pointer(pointer).IsValid() }
