package source

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestParseEdit(t *testing.T) {
	tests := []struct {
		line string
		want Edit
	}{
		{`/floor = "24 in"`, Edit{Pointer: "/floor", Value: `"24 in"`}},
		{`/floor=5`, Edit{Pointer: "/floor", Value: "5"}},
		{"  /a/b \t=  [1, {}] ", Edit{Pointer: "/a/b", Value: "[1, {}]"}},
		{`/a = "x = y"`, Edit{Pointer: "/a", Value: `"x = y"`}},
		{`/lockers/- = {"id": "a"}`, Edit{Pointer: "/lockers/-", Value: `{"id": "a"}`}},
		{`/a~1b/m~0n = null`, Edit{Pointer: "/a~1b/m~0n", Value: "null"}},
		{`/my van = true`, Edit{Pointer: "/my van", Value: "true"}},
		{`"/k=v" = 1`, Edit{Pointer: "/k=v", Value: "1"}},
		{`"/a " = 1`, Edit{Pointer: "/a ", Value: "1"}},
		{`"/\u00e9" = 1`, Edit{Pointer: "/é", Value: "1"}},
		{`"" = {}`, Edit{Pointer: "", Value: "{}"}},
		{`/ = 0`, Edit{Pointer: "/", Value: "0"}},
		{`delete /a/b`, Edit{Pointer: "/a/b", Delete: true}},
		{`delete   /a b `, Edit{Pointer: "/a b", Delete: true}},
		{`delete "/k=v"`, Edit{Pointer: "/k=v", Delete: true}},
	}
	for _, test := range tests {
		got, err := ParseEdit(test.line)
		if err != nil || got != test.want {
			t.Errorf("%s: got %+v, %v", test.line, got, err)
		}
	}
}

func TestParseEditRefuses(t *testing.T) {
	tests := []struct{ line, want string }{
		{``, "no pointer"},
		{` = 1`, "no pointer"},
		{`= 1`, "no pointer"},
		{`delete `, "no pointer"},
		{`deleted = 1`, "does not begin with /"},
		{`delete = 1`, "no pointer"},
		{`/a`, `no "="`},
		{`/a 1`, `no "="`},
		{`a = 1`, `such as "/a"`},
		{`delete a`, `such as "/a"`},
		{`/a~ = 1`, "~ is written ~0"},
		{`/a~2 = 1`, "~ is written ~0"},
		{`/a =`, "delete /a"},
		{`/a = 24 in`, `such as /a = "24 in"`},
		{`/a = left`, `such as /a = "left"`},
		{`/a = 'left'`, `such as /a = "left"`},
		{`/a = 1 2`, "not JSON"},
		{`/a = 1, "b": 2`, "not JSON"},
		{`/a = {"x": 1, "x": 2}`, "second time"},
		{`/a = {"x": 1`, "ends too soon"},
		{`/a = 1e999`, "exponent"},
		{`/a = 1 // note`, "comment"},
		{`delete /a = 1`, "nothing more"},
		{`delete "/a" /b`, "nothing more"},
		{`"/a = 1`, `expected "/path"`},
		{`"/a" 1`, `no "="`},
	}
	for _, test := range tests {
		got, err := ParseEdit(test.line)
		if err == nil {
			t.Errorf("%s: read as %+v", test.line, got)
			continue
		}
		if !strings.Contains(err.Error(), test.want) || got != (Edit{}) {
			t.Errorf("%s: %v does not speak of %s", test.line, err, test.want)
		}
	}
}

func TestEditStringIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := Edit{Delete: rapid.Bool().Draw(t, "delete")}
		for _, key := range rapid.SliceOfN(names(), 0, 4).Draw(t, "keys") {
			want.Pointer = Join(want.Pointer, key)
		}
		if !want.Delete {
			want.Value = values(2).Draw(t, "value")
		}
		got, err := ParseEdit(want.String())
		if err != nil || got != want {
			t.Fatalf("%s: got %+v, %v; want %+v", want, got, err, want)
		}
	})
}

func FuzzParseEdit(f *testing.F) {
	for _, seed := range []string{`/a = 1`, `delete /a`, `"/k=v" = 1`, `= `, `delete "`, `"" = {}`, "/\xff = 1", `/a~ = 1`} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, line string) {
		e, err := ParseEdit(line)
		if err != nil {
			if err.Error() == "" || e != (Edit{}) {
				t.Fatalf("%q: %+v and %q", line, e, err)
			}
			return
		}
		if again, err := ParseEdit(e.String()); err != nil || again != e {
			t.Fatalf("%q: %+v becomes %+v, %v", line, e, again, err)
		}
	})
}
