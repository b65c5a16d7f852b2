package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"unicode/utf16"

	"lowvent.example/cmd/lowvent/internal/paper"
)

// finish appends what the library can't write or writes wrong: the outline (its own points
// to wrong pages when there are enclosures), the enclosures, the language and the reader's
// settings. It is an incremental update (ISO 32000-1, 7.5.6): new objects, a new catalog
// in place of the old one, and a table that refers to the one before.
func finish(body []byte, d *paper.Document, pages []*page) ([]byte, error) {
	t := &tail{Buffer: bytes.NewBuffer(body)}
	size, root, info, before, err := trailer(body)
	if err != nil {
		return nil, err
	}
	t.first = root
	t.offsets = make([]int, size-root)
	outline := t.outline(pages)
	files := t.enclose(d.Enclosed)
	t.offsets[0] = t.Len()
	fmt.Fprintf(t, "%d 0 obj\n<</Type /Catalog /Version /1.7 /Pages 1 0 R\n", root)
	if language := tag().FindString(d.Language); language != "" {
		fmt.Fprintf(t, "/Lang (%s)\n", language)
	}
	// Drawings are to scale: a reader's program should not offer to fit them to the sheet.
	fmt.Fprintf(t, "/ViewerPreferences <</DisplayDocTitle true /PrintScaling /None>>\n%s%s>>\nendobj\n", outline, files)
	at := t.Len()
	fmt.Fprintf(t, "xref\n%d %d\n", root, len(t.offsets))
	for _, offset := range t.offsets {
		fmt.Fprintf(t, "%010d 00000 n \n", offset)
	}
	id := sha256.Sum256(t.Bytes())
	fmt.Fprintf(t, "trailer\n<</Size %d /Root %d 0 R /Info %d 0 R /Prev %d /ID [<%x><%x>]>>\nstartxref\n%d\n%%%%EOF\n",
		root+len(t.offsets), root, info, before, id[:16], id[:16], at)
	return t.Bytes(), nil
}

// tag is a language as BCP 47 writes it.
var tag = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[A-Za-z0-9]+(-[A-Za-z0-9]+)*$`) })

var ending = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`trailer\n<<\n/Size (\d+)\n/Root (\d+) 0 R\n/Info (\d+) 0 R\n>>\nstartxref\n(\d+)\n%%EOF\n$`)
})

// trailer reads the end of what the library wrote.
func trailer(body []byte) (size, root, info, before int, err error) {
	found := ending().FindSubmatch(body[max(0, len(body)-200):])
	if found == nil {
		return 0, 0, 0, 0, fmt.Errorf("the library ends a PDF otherwise than was known of it")
	}
	var n [4]int
	for i := range n {
		if n[i], err = strconv.Atoi(string(found[i+1])); err != nil {
			return 0, 0, 0, 0, err
		}
	}
	return n[0], n[1], n[2], n[3], nil
}

// tail is the update with the places of its objects, the first of which is the catalog.
type tail struct {
	*bytes.Buffer
	first   int
	offsets []int
}

// object writes an object and gives its number.
func (t *tail) object(format string, values ...any) int {
	n := t.first + len(t.offsets)
	t.offsets = append(t.offsets, t.Len())
	fmt.Fprintf(t, "%d 0 obj\n", n)
	fmt.Fprintf(t, format, values...)
	t.WriteString("\nendobj\n")
	return n
}

// textString is a text as PDF writes it outside pages (UTF-16, in hexadecimal digits).
func textString(text string) string {
	var out strings.Builder
	out.WriteString("<FEFF")
	for _, unit := range utf16.Encode([]rune(text)) {
		fmt.Fprintf(&out, "%04X", unit)
	}
	return out.String() + ">"
}

// enclose writes the files and gives the catalog's entry for them.
func (t *tail) enclose(files []paper.Enclosure) string {
	var names, all strings.Builder
	for i, f := range files {
		var packed bytes.Buffer
		w := zlib.NewWriter(&packed)
		w.Write(f.Data) // neither this nor the next can fail: they write to memory
		w.Close()
		data := t.object("<</Type /EmbeddedFile /Filter /FlateDecode /Length %d /Params <</Size %d>>>>\nstream\n%s\nendstream", packed.Len(), len(f.Data), packed.Bytes())
		name := textString(f.Name)
		file := t.object("<</Type /Filespec /F %s /UF %s /Desc %s /AFRelationship /Source /EF <</F %d 0 R /UF %d 0 R>>>>", name, name, textString(f.About), data, data)
		fmt.Fprintf(&names, "(%06d) %d 0 R ", i, file)
		fmt.Fprintf(&all, "%d 0 R ", file)
	}
	if len(files) == 0 {
		return ""
	}
	return fmt.Sprintf("/Names <</EmbeddedFiles <</Names [%s]>>>> /AF [%s]\n", names.String(), all.String())
}
