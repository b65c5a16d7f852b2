package source

import (
	"strings"
	"sync"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func TestPosition(t *testing.T) {
	tests := []struct {
		name, data   string
		offset       int
		line, column int
	}{
		{"empty", "", 0, 1, 1},
		{"before the file", "ab", -5, 1, 1},
		{"after the file", "ab", 99, 1, 3},
		{"end without line end", "ab", 2, 1, 3},
		{"on LF", "ab\ncd", 2, 1, 3},
		{"after LF", "ab\ncd", 3, 2, 1},
		{"on CR of CR LF", "ab\r\ncd", 2, 1, 3},
		{"on LF of CR LF", "ab\r\ncd", 3, 1, 4},
		{"after CR LF", "ab\r\ncd", 4, 2, 1},
		{"on lone CR", "ab\rcd", 2, 1, 3},
		{"after lone CR", "ab\rcd", 3, 2, 1},
		{"lone CR at the end", "ab\r", 3, 2, 1},
		{"CR CR LF is two ends", "a\r\r\nb", 4, 3, 1},
		{"LF CR is two ends", "a\n\rb", 3, 3, 1},
		{"after the last line end", "ab\n", 3, 2, 1},
		{"two bytes a character", "éa", 2, 1, 2},
		{"inside two bytes", "éa", 1, 1, 1},
		{"three bytes", "€a", 3, 1, 2},
		{"inside three bytes", "x€a", 3, 1, 2},
		{"four bytes", "𝄞a", 4, 1, 2},
		{"inside four bytes", "𝄞a", 3, 1, 1},
		{"combining marks are code points of their own", "e\u0301a", 3, 1, 3},
		{"U+2028 ends no line", "a\u2028b", 4, 1, 3},
		{"stray continuation byte", "a\x80b", 1, 1, 2},
		{"tab is one column", "\ta", 1, 1, 2},
		{"second line of many bytes", "éé\nßx", 7, 2, 2},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			line, column := NewFile("", []byte(test.data)).Position(test.offset)
			if line != test.line || column != test.column {
				t.Errorf("%q at %d: got %d:%d, want %d:%d", test.data, test.offset, line, column, test.line, test.column)
			}
		})
	}
}

// naivePosition counts from the start each time.
func naivePosition(text string, offset int) (line, column int) {
	line, column = 1, 1
	for i, r := range text {
		if i+utf8.RuneLen(r) > offset {
			break
		}
		column++
		if r == '\n' || r == '\r' && !strings.HasPrefix(text[i+1:], "\n") {
			line, column = line+1, 1
		}
	}
	return line, column
}

func TestPositionAgreesWithCounting(t *testing.T) {
	pieces := rapid.SampledFrom([]string{"a", "é", "€", "𝄞", "\n", "\r", "\r\n", "\t", strings.Repeat("xé", 700)})
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOf(pieces).Draw(t, "pieces"), "")
		f := NewFile("", []byte(text))
		offset := rapid.IntRange(0, len(text)).Draw(t, "offset")
		line, column := f.Position(offset)
		if wantLine, wantColumn := naivePosition(text, offset); line != wantLine || column != wantColumn {
			t.Fatalf("at %d of %d: got %d:%d, want %d:%d", offset, len(text), line, column, wantLine, wantColumn)
		}
	})
}

// Blocks of the index end at multiples of its size, also at the end of a file.
func TestPositionAtBlockEdges(t *testing.T) {
	for _, size := range []int{blockBytes - 1, blockBytes, blockBytes + 1, 3 * blockBytes} {
		f := NewFile("", []byte(strings.Repeat("x", size)))
		for offset := max(0, size-2); offset <= size; offset++ {
			if line, column := f.Position(offset); line != 1 || column != offset+1 {
				t.Errorf("size %d offset %d: got %d:%d", size, offset, line, column)
			}
		}
	}
}

func TestPositionFromManyGoroutines(t *testing.T) {
	text := strings.Repeat("é\nab\r\n", 500)
	f := NewFile("", []byte(text))
	var wait sync.WaitGroup
	for worker := range 8 {
		wait.Go(func() {
			for offset := worker; offset < len(text); offset += 97 {
				line, column := f.Position(offset)
				if wantLine, wantColumn := naivePosition(text, offset); line != wantLine || column != wantColumn {
					t.Errorf("at %d: got %d:%d, want %d:%d", offset, line, column, wantLine, wantColumn)
				}
			}
			if got := f.SHA256(); len(got) != 64 {
				t.Errorf("digest %q", got)
			}
		})
	}
	wait.Wait()
}

// FIPS 180-4's published example values ("abc" and the 448-bit message) and the
// digest of the empty message; from memory, checked against sha256sum.
func TestSHA256(t *testing.T) {
	tests := []struct{ data, want string }{
		{"", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"},
		{"abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"},
		{"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq", "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"},
	}
	for _, test := range tests {
		if got := NewFile("", []byte(test.data)).SHA256(); got != test.want {
			t.Errorf("%q: got %s, want %s", test.data, got, test.want)
		}
	}
}
