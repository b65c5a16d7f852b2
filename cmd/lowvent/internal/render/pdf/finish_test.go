package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// TestEveryObjectIsWhereTheTablesSay: the table of the update and the one before it
// (ISO 32000-1, 7.5.4).
func TestEveryObjectIsWhereTheTablesSay(t *testing.T) {
	file := written(t, sample(), A4)
	checked := 0
	for at := number1(t, file, `startxref\n(\d+)\n%%EOF\n$`); at > 0; {
		table, _, _ := bytes.Cut(file[at:], []byte("startxref"))
		first, count := number1(t, table, `^xref\n(\d+) `), number1(t, table, `^xref\n\d+ (\d+)\n`)
		rows := table[bytes.IndexByte(table[5:], '\n')+6:]
		for i := range count {
			offset, err := strconv.Atoi(string(rows[20*i : 20*i+10]))
			if err != nil {
				t.Fatal(err)
			}
			if first+i > 0 && !bytes.HasPrefix(file[offset:], fmt.Appendf(nil, "%d 0 obj\n", first+i)) {
				t.Errorf("at %d there is no object %d but %.20q", offset, first+i, file[offset:])
			}
			checked++
		}
		previous := regexp.MustCompile(`/Prev (\d+)`).FindSubmatch(table)
		if at = 0; previous != nil {
			at, _ = strconv.Atoi(string(previous[1]))
		}
	}
	if checked < 40 {
		t.Errorf("only %d objects were looked at", checked)
	}
}

func number1(t *testing.T, text []byte, pattern string) int {
	t.Helper()
	found := regexp.MustCompile(pattern).FindSubmatch(text)
	if found == nil {
		t.Fatalf("no %s", pattern)
	}
	n, err := strconv.Atoi(string(found[1]))
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// object is the text of an object, the last one of its number.
func object(t *testing.T, file []byte, n int) string {
	t.Helper()
	from := bytes.LastIndex(file, fmt.Appendf(nil, "\n%d 0 obj\n", n))
	if from < 0 {
		t.Fatalf("no object %d", n)
	}
	body, _, _ := strings.Cut(string(file[from+1:]), "\nendobj\n")
	return body
}

func catalog(t *testing.T, file []byte) string {
	return object(t, file, number1(t, file[bytes.LastIndex(file, []byte("trailer")):], `/Root (\d+) 0 R`))
}

func TestWhatAReaderIsTold(t *testing.T) {
	file := written(t, sample(), A4)
	for _, want := range []string{"/Lang (en)", "/DisplayDocTitle true", "/PrintScaling /None", "/Version /1.7", "/PageMode /UseOutlines"} {
		if !strings.Contains(catalog(t, file), want) {
			t.Errorf("the catalog does not say %s", want)
		}
	}
	info := object(t, file, number1(t, file[bytes.LastIndex(file, []byte("trailer")):], `/Info (\d+) 0 R`))
	for _, want := range []string{"/CreationDate (D:20261125000000)", "/ModDate (D:20261125000000)", "/Title", "/Subject", "/Creator", "/Producer"} {
		if !strings.Contains(info, want) {
			t.Errorf("the document's information does not say %s:\n%s", want, info)
		}
	}
	d := sample()
	d.Language = "en) /OpenAction (x"
	if strings.Contains(string(written(t, d, A4)), "/OpenAction") {
		t.Error("a language that is none got into the catalog")
	}
}

// TestTheOutlineLeadsToItsPages follows every entry, from the first on.
func TestTheOutlineLeadsToItsPages(t *testing.T) {
	d := sample()
	file := written(t, d, A4)
	pages, _ := arrange(d, A4)
	var want []string
	for _, g := range pages {
		for _, b := range g.bookmarks {
			want = append(want, fmt.Sprintf("%d %s page %d", b.level, textString(b.title), b.page))
		}
	}
	var got []string
	var follow func(n, level int)
	follow = func(n, level int) {
		entry := []byte(object(t, file, n))
		to := number1(t, entry, `/Dest \[(\d+) 0 R`)
		got = append(got, fmt.Sprintf("%d %s page %d", level, regexp.MustCompile(`<FEFF[0-9A-F]*>`).Find(entry), (to-3)/2))
		if !strings.Contains(object(t, file, to), "/Type /Page\n") {
			t.Errorf("object %d is no page", to)
		}
		if bytes.Contains(entry, []byte("/First")) {
			follow(number1(t, entry, `/First (\d+)`), level+1)
		}
		if bytes.Contains(entry, []byte("/Next")) {
			follow(number1(t, entry, `/Next (\d+)`), level)
		}
	}
	follow(number1(t, []byte(object(t, file, number1(t, []byte(catalog(t, file)), `/Outlines (\d+)`))), `/First (\d+)`), 0)
	if strings.Join(got, "\n") != strings.Join(want, "\n") || len(got) != 7 {
		t.Errorf("the outline is\n%s\nand should be\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

func TestTheEnclosuresComeBack(t *testing.T) {
	d := sample()
	file := written(t, d, A4)
	names := regexp.MustCompile(`\(\d{6}\) (\d+) 0 R`).FindAllStringSubmatch(catalog(t, file), -1)
	if len(names) != len(d.Enclosed) {
		t.Fatalf("%d files are named, and %d enclosed", len(names), len(d.Enclosed))
	}
	for i, e := range d.Enclosed {
		n, _ := strconv.Atoi(names[i][1])
		about := object(t, file, n)
		if !strings.Contains(about, "/UF "+textString(e.Name)+" ") {
			t.Errorf("%s is not named: %s", e.Name, about)
		}
		_, stream, _ := strings.Cut(object(t, file, number1(t, []byte(about), `/EF <</F (\d+)`)), "stream\n")
		unpacked, err := zlib.NewReader(strings.NewReader(stream))
		if err != nil {
			t.Fatal(err)
		}
		if data, err := io.ReadAll(unpacked); err != nil || !bytes.Equal(data, e.Data) {
			t.Errorf("%s came back as %q, %v", e.Name, data, err)
		}
	}
}

func TestALibraryThatEndsOtherwiseIsNoticed(t *testing.T) {
	if _, err := finish([]byte("%PDF-1.3\n%%EOF\n"), sample(), nil); err == nil {
		t.Error("an end that is not known was taken for one that is")
	}
}
