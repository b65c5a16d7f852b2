package source

import (
	"strings"
	"testing"
)

func TestParseSet(t *testing.T) {
	for _, c := range []struct{ text, pointer, value string }{
		{"/a/b=24 in", "/a/b", `"24 in"`},
		{"/a/b = 24 in ", "/a/b", `"24 in"`},
		{"/a=2", "/a", `2`},
		{"/a=-2.5", "/a", `-2.5`},
		{"/a=true", "/a", `true`},
		{"/a=null", "/a", `null`},
		{`/a="2"`, "/a", `"2"`},
		{`/a=""`, "/a", `""`},
		{`/a={"b": [1, "2 in"]}`, "/a", `{"b": [1, "2 in"]}`},
		{"/a=[]", "/a", "[]"},
		{"/a=b=c", "/a", `"b=c"`},
		{"/a=5/8 in", "/a", `"5/8 in"`},
		{"/a=65 % ± 5 %", "/a", `"65 % ± 5 %"`},
		{"/a=024", "/a", `"024"`},
		{"/a=1 2", "/a", `"1 2"`},
		{"/a=NaN", "/a", `"NaN"`},
		{`/a=it's "so"`, "/a", `"it's \"so\""`},
		{"/a~1b=x", "/a~1b", `"x"`},
	} {
		got, err := ParseSet(c.text)
		if err != nil || got != (Edit{Pointer: c.pointer, Value: c.value}) {
			t.Errorf("%s: %+v, %v", c.text, got, err)
		}
	}
}

func TestParseSetRefuses(t *testing.T) {
	for _, c := range []struct{ text, says string }{
		{"", `no "="`}, {"/a/b", `expected /path=value`}, {"=1", "no pointer"}, {"a=1", `expected one such as "/a"`}, {"/a~=1", "not well formed"},
		{"/a=", `an empty text is written /a=""`}, {"/a=  ", "no value"}, {"/a={", "not JSON"}, {"/a=[1,]", "not JSON"}, {`/a="x`, "not JSON"}, {"/a=\xff", "not UTF-8"},
		{`/a={"b": 1, "b": 2}`, "not JSON"},
	} {
		got, err := ParseSet(c.text)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q: %+v, %v; want %q", c.text, got, err, c.says)
		}
	}
	for _, c := range []struct{ text, says string }{{"", "no pointer"}, {" ", "no pointer"}, {"a/b", `"/a/b"`}, {"/a~2", "not well formed"}} {
		if got, err := ParseUnset(c.text); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q: %+v, %v; want %q", c.text, got, err, c.says)
		}
	}
	if got, err := ParseUnset(" /a/b "); err != nil || got != (Edit{Pointer: "/a/b", Delete: true}) {
		t.Errorf("%+v, %v", got, err)
	}
}

// FuzzParseSet: whatever the text, what is not refused is an edit that can be made, and
// that reads back from its line.
func FuzzParseSet(f *testing.F) {
	for _, seed := range []string{"/a=24 in", `/a={"b": 1}`, "/a/b/-=true", "/=x", "/a~0=~", "/a=\"\\ud800\"", "/a==", "/a=1e9", "delete /a", "/a=\x00", "/a\n=b", "/a=\u00a0"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		e, err := ParseSet(text)
		if err != nil {
			if err.Error() == "" || e != (Edit{}) {
				t.Fatalf("refused with %q and %+v", err, e)
			}
			return
		}
		again, err := ParseEdit(e.String())
		if err != nil || again != e {
			t.Fatalf("%q is %+v, and reads back as %+v, %v", text, e, again, err)
		}
		changed, err := Apply(NewFile("x", []byte("{}")), nil, []Edit{e})
		if err != nil {
			t.Fatalf("%q can't be made: %v", text, err)
		}
		root, fault := Parse(changed, DefaultLimits())
		if fault != nil {
			t.Fatalf("%q makes %q: %v", text, changed.Data, fault)
		}
		if at := root.At(e.Pointer); at == nil && !strings.HasSuffix(e.Pointer, "/-") && !strings.Contains(e.Pointer, "/-/") {
			t.Fatalf("%q is not where it was put: %s", text, changed.Data)
		}
	})
}
