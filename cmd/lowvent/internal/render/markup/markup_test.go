package markup

import (
	"encoding/xml"
	"io"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/render/text"
)

// TestTextsStayTexts: whatever stands in a text or an attribute, a parser reads back that
// text, cleaned, and no element that nobody wrote.
func TestTextsStayTexts(t *testing.T) {
	anything := rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"</p><script>alert(1)</script>", `" onload="x`, "]]>", "<!--", "&amp;", "\x1b[31m", "a\nb", "\xff", "\ufffe"}))
	rapid.Check(t, func(t *rapid.T) {
		content, value := anything.Draw(t, "content"), anything.Draw(t, "value")
		var w Writer
		w.Open("section", "title", value)
		w.Element("p", content, "class", "")
		w.Empty("br")
		w.Line()
		w.Close()
		var read struct {
			XMLName xml.Name   `xml:"section"`
			Any     []xml.Attr `xml:",any,attr"`
			P       struct {
				Text string     `xml:",chardata"`
				Any  []xml.Attr `xml:",any,attr"`
			} `xml:"p"`
			Rest []struct{ XMLName xml.Name } `xml:",any"`
		}
		if err := xml.Unmarshal(w.Bytes(), &read); err != nil {
			t.Fatalf("%s: %v", w.String(), err)
		}
		if read.P.Text != clean(content) || len(read.P.Any) > 0 || len(read.Rest) != 1 || read.Rest[0].XMLName.Local != "br" {
			t.Fatalf("%q came out as %s", content, w.String())
		}
		if got := read.Any; value != "" && (len(got) != 1 || got[0].Value != clean(value)) || value == "" && len(got) > 0 {
			t.Fatalf("%q came out as %v", value, got)
		}
	})
}

// clean is a text as XML can hold it.
func clean(s string) string {
	return strings.NewReplacer("\ufffe", "\ufffd", "\uffff", "\ufffd").Replace(text.Clean(s))
}

func TestWriterNests(t *testing.T) {
	var w Writer
	w.Open("ul", "class", "a", "id", "")
	w.Element("li", "1 < 2")
	w.Close()
	got, err := io.ReadAll(&w)
	if want := `<ul class="a"><li>1 &lt; 2</li></ul>`; err != nil || string(got) != want {
		t.Errorf("%s, want %s", got, want)
	}
}

// TestDifferentWordsDifferentIDs: two lists of words have the same id only if they are the
// same, and an id needs no quoting in a link.
func TestDifferentWordsDifferentIDs(t *testing.T) {
	plain := regexp.MustCompile(`^[A-Za-z0-9_.-]*$`)
	words := rapid.SliceOfN(rapid.StringOfN(rapid.RuneFrom([]rune("ab-._ /é5")), 1, 4, -1), 1, 3)
	rapid.Check(t, func(t *rapid.T) {
		one, two := words.Draw(t, "one"), words.Draw(t, "two")
		same := strings.Join(one, "\x00") == strings.Join(two, "\x00")
		if a, b := ID(one...), ID(two...); (a == b) != same || !plain.MatchString(a) {
			t.Fatalf("%q and %q: %s and %s", one, two, a, b)
		}
	})
	if got := ID("page", "low vent"); got != "page.low_20_vent" {
		t.Error(got)
	}
}
