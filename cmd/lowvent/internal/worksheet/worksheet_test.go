package worksheet

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"

	"lowvent.example/cmd/lowvent/internal/ask"
	"lowvent.example/cmd/lowvent/internal/starter"
	"lowvent.example/gas"
	"lowvent.example/schema/check"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
	"lowvent.example/vent"
)

func options(scene string) ask.Options {
	return ask.Options{Scene: scene, First: starter.Layout(scene), Needs: ask.NeedsOf(check.Join(gas.Checks(), vent.Checks()))}
}

func made(t *testing.T, scene string) []byte {
	t.Helper()
	text, err := Write(options(scene))
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func walked(t *testing.T, o ask.Options) []sheet {
	t.Helper()
	w, err := ask.NewWalk(o)
	if err != nil {
		t.Fatal(err)
	}
	return sheets(w)
}

// element is one element of the page, with the text in it.
type element struct {
	Name     xml.Name
	Attrs    []xml.Attr
	Text     string
	Children []element
}

func (e *element) UnmarshalXML(d *xml.Decoder, start xml.StartElement) error {
	e.Name, e.Attrs = start.Name, start.Attr
	for {
		token, err := d.Token()
		if err != nil {
			return err
		}
		switch token := token.(type) {
		case xml.StartElement:
			var child element
			if err := child.UnmarshalXML(d, token); err != nil {
				return err
			}
			e.Children = append(e.Children, child)
			e.Text += child.Text
		case xml.CharData:
			e.Text += string(token)
		case xml.EndElement:
			return nil
		}
	}
}

// all visits an element and all in it.
func (e *element) all(visit func(*element)) {
	visit(e)
	for i := range e.Children {
		e.Children[i].all(visit)
	}
}

func (e *element) named(name string) (found []*element) {
	e.all(func(each *element) {
		if each.Name.Local == name {
			found = append(found, each)
		}
	})
	return found
}

func (e *element) attr(name string) string {
	for _, a := range e.Attrs {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// read reads the page of a scene.
func read(t *testing.T, scene string) *element {
	t.Helper()
	return parsed(t, scene, made(t, scene))
}

// tester is a test, or the check of a property.
type tester interface {
	Helper()
	Fatal(...any)
	Fatalf(string, ...any)
	Errorf(string, ...any)
}

// parsed reads a page as strict XML, which finds every tag that is not closed and every
// text that is not escaped.
func parsed(t tester, scene string, text []byte) *element {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(bytes.TrimPrefix(text, []byte("<!DOCTYPE html>\n"))))
	for {
		token, err := d.Token()
		if err != nil {
			t.Fatalf("%s: the page is not well-formed: %v", scene, err)
		}
		if start, ok := token.(xml.StartElement); ok {
			var root element
			if err := root.UnmarshalXML(d, start); err != nil {
				t.Fatalf("%s: the page is not well-formed: %v", scene, err)
			}
			for {
				if _, err := d.Token(); errors.Is(err, io.EOF) {
					return &root
				} else if err != nil {
					t.Fatal(err)
				}
			}
		}
	}
}

func TestThePageNeedsNothingElse(t *testing.T) {
	for _, scene := range starter.Scenes() {
		text := string(made(t, scene))
		for _, banned := range []string{"http:", "https:", "<script", "<link", "<img", "<iframe", "url(", "@import", "@font-face", "javascript", " on=", "onload"} {
			if strings.Contains(strings.ToLower(text), banned) {
				t.Errorf("%s: the page holds %q", scene, banned)
			}
		}
	}
}

func TestThePageReadsWell(t *testing.T) {
	for _, scene := range starter.Scenes() {
		root := read(t, scene)
		if root.attr("lang") != "en" || len(root.named("h1")) != 1 || len(root.named("main")) != 1 || len(root.named("title")) < 1 {
			t.Errorf("%s: language, title, main part or first heading is lacking", scene)
		}
		for _, th := range root.named("th") {
			if scope := th.attr("scope"); scope != "col" && scope != "row" {
				t.Errorf("%s: a head of a table without a scope: %s", scene, th.Text)
			}
		}
		for _, table := range root.named("table") {
			if len(table.named("caption")) != 1 || strings.TrimSpace(table.named("caption")[0].Text) == "" {
				t.Errorf("%s: a table without a caption", scene)
			}
		}
		ids := map[string]bool{}
		root.all(func(e *element) {
			if id := e.attr("id"); id != "" {
				if ids[id] {
					t.Errorf("%s: the id %s stands twice", scene, id)
				}
				ids[id] = true
			}
		})
		for _, a := range root.named("a") {
			if !ids[strings.TrimPrefix(a.attr("href"), "#")] {
				t.Errorf("%s: a link to nowhere: %s", scene, a.attr("href"))
			}
		}
		drawings := root.named("svg")
		if len(drawings) != 2 {
			t.Fatalf("%s: %d drawings", scene, len(drawings))
		}
		for _, svg := range drawings {
			for _, id := range strings.Fields(svg.attr("aria-labelledby")) {
				if !ids[id] {
					t.Errorf("%s: the drawing is described by %s, which is not there", scene, id)
				}
			}
			if svg.attr("role") != "img" || len(svg.named("title")) != 1 || len(svg.named("desc")) != 1 {
				t.Errorf("%s: a drawing without words", scene)
			}
		}
	}
}

// TestEveryRowHasABlank holds that there is room for every answer, and for who gave it.
func TestEveryRowHasABlank(t *testing.T) {
	for _, scene := range starter.Scenes() {
		rows := 0
		for _, table := range read(t, scene).named("table") {
			for _, body := range table.named("tbody") {
				for _, tr := range body.named("tr") {
					rows++
					blanks := 0
					for _, td := range tr.named("td") {
						if td.attr("class") == "blank" {
							blanks++
						}
					}
					if blanks == 0 {
						t.Errorf("%s: a row without a blank: %s", scene, tr.Text)
					}
				}
			}
			if heads := table.named("thead")[0].Text; !strings.Contains(table.Text, "Who measured, and when") && !(strings.Contains(heads, "Who") && strings.Contains(heads, "Date") && strings.Contains(heads, "Unit")) {
				t.Errorf("%s: a table that does not ask who measured: %s", scene, heads)
			}
		}
		if rows < 200 {
			t.Errorf("%s: only %d rows", scene, rows)
		}
	}
}

func TestCautionsAreAtTheHeadAndTheFoot(t *testing.T) {
	for _, scene := range starter.Scenes() {
		root := read(t, scene)
		header, footer := root.named("header")[0].Text, root.named("footer")[0].Text
		for _, each := range report.Cautions() {
			if !strings.Contains(header, each) {
				t.Errorf("%s: the head lacks %q", scene, each)
			}
		}
		if strings.TrimSpace(footer) != report.KeepOff || !strings.Contains(style, "footer { position: fixed; bottom: 0;") {
			t.Errorf("%s: the foot of every page is %q", scene, footer)
		}
		if !strings.Contains(root.Text, "A blank stays not known.") {
			t.Errorf("%s: it does not say what a blank means", scene)
		}
	}
}

// TestTheRowsAreWhatIsAsked holds that the worksheet and the questions can't drift
// apart: every key that comes first has its blank, and no other has.
func TestTheRowsAreWhatIsAsked(t *testing.T) {
	for _, scene := range starter.Scenes() {
		o := options(scene)
		got := map[string]bool{}
		for _, one := range walked(t, o) {
			for _, table := range one.tables {
				for _, r := range table.rows {
					got[r.asked.Template] = true
				}
			}
		}
		want := map[string]bool{}
		var walk func(string)
		walk = func(at string) {
			for _, k := range o.Needs.Keys(at) {
				switch {
				case !k.First && k.Template != "/title":
				case k.Form == layout.FormThings:
					walk(k.Template + "/*")
				default:
					want[k.Template] = true
				}
			}
		}
		walk("")
		for template := range got {
			if !want[template] && !strings.HasSuffix(template, "/openTo") && !strings.HasSuffix(template, "/through") {
				t.Errorf("%s: a blank for %s, which is not asked first", scene, template)
			}
		}
		missing := 0
		for template := range want {
			if !got[template] {
				missing++
				if !slices.Contains(notHere[scene], template) {
					t.Errorf("%s: no blank for %s", scene, template)
				}
			}
		}
		if missing != len(notHere[scene]) {
			t.Errorf("%s: %d keys have no blank, want %d", scene, missing, len(notHere[scene]))
		}
	}
}

// notHere are the keys that don't fit a scene.
var notHere = map[string][]string{
	"van":   {"/lockers/*/vents/*/endsIn/overWaterline"},
	"bus":   {"/lockers/*/vents/*/endsIn/overWaterline"},
	"boat":  {"/dwelling/frontAxle", "/dwelling/rearBumper", "/lockers/*/vents/*/endsIn/inWheelSpray"},
	"cabin": {"/appliances/*/offWhileDriving", "/dwelling/frontAxle", "/dwelling/rearBumper", "/lockers/*/vents/*/endsIn/inWheelSpray", "/lockers/*/vents/*/endsIn/overWaterline"},
}

func TestANewChecksKeyGetsABlank(t *testing.T) {
	o := options("van")
	o.Needs["/people/children"] = []ask.Need{{Check: "people.children", Asks: "Can a child reach the tap?", Word: report.Danger}}
	text, err := Write(o)
	if err != nil {
		t.Fatal(err)
	}
	if how := "turn a tap unwatched"; !bytes.Contains(text, []byte(how)) || bytes.Contains(made(t, "van"), []byte(how)) {
		t.Error("the new check's key has no blank of its own")
	}
}

// TestEachListCanBeTicked holds that every list that can be complete has its box, with
// what it means.
func TestEachListCanBeTicked(t *testing.T) {
	for _, one := range walked(t, options("van")) {
		want := 0
		switch section, _, _ := strings.Cut(strings.TrimPrefix(one.at, "/"), "/"); section {
		case "spaces":
			want = 6
		case "lockers":
			want = 6
		case "outside":
			want = 3
		case "surveyedBy":
			want = len(layout.InventoryList("").Choices())
		}
		if len(one.ticks) != want {
			t.Errorf("%s: %d lists can be ticked, want %d: %v", one.title, len(one.ticks), want, one.ticks)
		}
		for _, each := range one.ticks {
			if each.meaning == "" {
				t.Errorf("%s: nothing is said of what %s means", one.title, each.word)
			}
		}
	}
}

// TestMarksAreRows holds that each mark of the drawings is the number of a row.
func TestMarksAreRows(t *testing.T) {
	for _, scene := range starter.Scenes() {
		codes := map[string]bool{}
		for _, one := range walked(t, options(scene)) {
			for _, table := range one.tables {
				for _, r := range table.rows {
					if codes[r.code] {
						t.Errorf("%s: two rows are %s", scene, r.code)
					}
					codes[r.code] = true
				}
			}
		}
		svg := read(t, scene).named("svg")
		for _, drawing := range svg {
			marks := 0
			for _, text := range drawing.named("text") {
				if regexp.MustCompile(`^[A-Z]+[0-9]+$`).MatchString(text.Text) {
					marks++
					if !codes[text.Text] {
						t.Errorf("%s: the mark %s is no row", scene, text.Text)
					}
				}
			}
			if marks < 8 {
				t.Errorf("%s: only %d marks", scene, marks)
			}
		}
	}
}

func TestLetters(t *testing.T) {
	for n, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 27: "AB", 51: "AZ", 52: "BA"} {
		if got := letters(n); got != want {
			t.Errorf("letters(%d) = %s", n, got)
		}
	}
}

func TestTextsAreEscaped(t *testing.T) {
	p := &page{}
	p.put("<p title=\"%s\">%s</p>", `"a" & 'b'`, "<script>")
	if got := p.String(); got != `<p title="&#34;a&#34; &amp; &#39;b&#39;">&lt;script&gt;</p>` {
		t.Error(got)
	}
}

// TestBlackOnWhite holds that no colour but black and white is used, so that contrast
// is the greatest there is and nothing hangs on a colour.
func TestBlackOnWhite(t *testing.T) {
	for _, scene := range starter.Scenes() {
		for _, colour := range regexp.MustCompile(`#[0-9a-f]{3,6}\b|(fill|stroke|color)="[a-z]+"|rgb\(`).FindAllString(string(made(t, scene)), -1) {
			if !slices.Contains([]string{"#000", "#fff", `fill="none"`}, colour) {
				t.Errorf("%s: the colour %s", scene, colour)
			}
		}
	}
}

func TestWhatIsNoLayoutIsRefused(t *testing.T) {
	for _, text := range []string{"", "{", `{ "format": "lowvent-layout/1", "nothing": 1 }`} {
		o := options("van")
		o.First = []byte(text)
		if got, err := Write(o); err == nil || got != nil {
			t.Errorf("%q made %d bytes and %v", text, len(got), err)
		}
	}
}

func TestTwiceTheSame(t *testing.T) {
	if one, other := made(t, "bus"), made(t, "bus"); !bytes.Equal(one, other) {
		t.Error(fmt.Sprint("two worksheets of one scene differ: ", len(one), " and ", len(other), " bytes"))
	}
}
