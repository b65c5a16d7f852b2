package sarif

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"
	"pgregory.net/rapid"

	"lowvent.example/cmd/lowvent/internal/render/rendertest"
	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/report"
)

// standard compiles the schema that the standard publishes, formats asserted.
func standard(t *testing.T) *jsonschema.Schema {
	t.Helper()
	data, err := os.ReadFile("testdata/sarif-schema-2.1.0.json")
	if err != nil {
		t.Fatal(err)
	}
	sum := sha256.Sum256(data)
	if got := hex.EncodeToString(sum[:]); got != "c3b4bb2d6093897483348925aaa73af03b3e3f4bd4ca38cef26dcb4212a2682e" {
		t.Fatalf("the published schema was edited: %s", got)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat = true
	if err := c.AddResource(Schema, bytes.NewReader(data)); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile(Schema)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func written(t interface {
	Helper()
	Fatal(...any)
}, r *report.Run) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := Write(&out, r); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func decoded(t interface {
	Helper()
	Fatal(...any)
}, data []byte) any {
	t.Helper()
	var v any
	if err := json.Unmarshal(data, &v); err != nil {
		t.Fatal(err)
	}
	return v
}

// TestEveryReportIsValid: whatever the report holds, it is SARIF by the published
// schema, and each finding that is to be told has its one result.
func TestEveryReportIsValid(t *testing.T) {
	s := standard(t)
	rapid.Check(t, func(t *rapid.T) {
		r := rendertest.Run().Draw(t, "run")
		data := written(t, r)
		if err := s.Validate(decoded(t, data)); err != nil {
			t.Fatalf("%#v\n%s", err, data)
		}
		var l log
		if err := json.Unmarshal(data, &l); err != nil {
			t.Fatal(err)
		}
		holds(t, r, &l.Runs[0])
	})
}

func holds(t *rapid.T, r *report.Run, out *run) {
	left := map[string]int{}
	for _, f := range saying.Worst(r) {
		left[f.Check+" "+f.Subject+" "+kindOf(&f)]++
	}
	for _, each := range out.Results {
		if out.Tool.Driver.Rules[each.RuleIndex].ID != each.RuleID {
			t.Fatalf("the rule of %s is %s", each.RuleID, out.Tool.Driver.Rules[each.RuleIndex].ID)
		}
		if (each.Level == "none") != (each.Kind != "fail") {
			t.Fatalf("kind %s with level %s", each.Kind, each.Level)
		}
		if !strings.HasSuffix(each.Message.Text, report.KeepOff) {
			t.Fatalf("a message ends with %q", each.Message.Text)
		}
		if each.Properties != nil {
			left[each.Fingerprints["checkAndSubject/v1"]+" "+each.Kind]--
		}
	}
	for key, n := range left {
		if n != 0 {
			t.Fatalf("%s: %d results too few", key, n)
		}
	}
	if out.Invocations[0].Successful != (r.Status != 2) || out.Invocations[0].ExitCode != r.Status {
		t.Fatalf("status %d is told as %+v", r.Status, out.Invocations[0])
	}
}

func kindOf(f *report.Finding) string {
	if f.Outcome == report.NotKnown {
		return "open"
	}
	return "fail"
}

// TestTheSchemaRefuses shows that the validation is no formality: each of these slips
// was thought possible in this package.
func TestTheSchemaRefuses(t *testing.T) {
	s := standard(t)
	whole := string(written(t, someRun()))
	if err := s.Validate(decoded(t, []byte(whole))); err != nil {
		t.Fatalf("%#v", err)
	}
	for _, slip := range [][2]string{
		{`"kind": "open"`, `"kind": "unknown"`}, {`"level": "none"`, `"level": "caution"`}, {`"startLine": 3`, `"startLine": 0`},
		{`"columnKind": "unicodeCodePoints"`, `"columnKind": "bytes"`}, {`"kind": "inSource"`, `"kind": "file"`}, {`"status": "underReview"`, `"status": "in force"`},
		{`"uri": "a%20b.json"`, `"uri": "a%2 b.json"`}, {`"version": "2.1.0"`, `"version": "2.2.0"`},
	} {
		if !strings.Contains(whole, slip[0]) {
			t.Fatalf("%s is not in:\n%s", slip[0], whole)
		}
		if err := s.Validate(decoded(t, []byte(strings.Replace(whole, slip[0], slip[1], 1)))); err == nil {
			t.Errorf("%s is valid as well", slip[1])
		}
	}
}
