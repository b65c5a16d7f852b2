package report_test

import (
	"bytes"
	"encoding/json"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v5"
	"pgregory.net/rapid"

	"lowvent.example/schema/report"
	"lowvent.example/schema/unit"
)

func compiled(t *testing.T) *jsonschema.Schema { return compile(t, report.Schema()) }

func compile(t *testing.T, schema []byte) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	if err := c.AddResource("it.schema.json", bytes.NewReader(schema)); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("it.schema.json") // holds it against the meta-schema of 2020-12 as well
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestTypesAndSchemaSayTheSame walks the Go types and the published schemas side
// by side, both ways.
func TestTypesAndSchemaSayTheSame(t *testing.T) {
	sameKeys(t, reflect.TypeFor[report.Run](), report.Schema())
	sameKeys(t, reflect.TypeFor[report.Sweep](), report.SweepSchema())
}

func sameKeys(t *testing.T, top reflect.Type, schema []byte) {
	t.Helper()
	var root map[string]any
	if err := json.Unmarshal(schema, &root); err != nil {
		t.Fatal(err)
	}
	defs := root["$defs"].(map[string]any)
	seen := map[reflect.Type]bool{}
	var walk func(reflect.Type, map[string]any)
	walk = func(typ reflect.Type, node map[string]any) {
		for typ.Kind() == reflect.Pointer || typ.Kind() == reflect.Slice {
			if items, ok := node["items"].(map[string]any); ok && typ.Kind() == reflect.Slice {
				node = items
			}
			typ = typ.Elem()
		}
		if ref, ok := node["$ref"].(string); ok {
			node = defs[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any)
		}
		if typ.Kind() != reflect.Struct || seen[typ] {
			return
		}
		seen[typ] = true
		properties := node["properties"].(map[string]any)
		var names, required []string
		for _, f := range reflect.VisibleFields(typ) {
			if f.Anonymous {
				continue // its fields are seen by themselves
			}
			name, option, _ := strings.Cut(f.Tag.Get("json"), ",")
			names = append(names, name)
			if option != "omitempty" {
				required = append(required, name)
			}
			if property, ok := properties[name].(map[string]any); ok {
				walk(f.Type, property)
			}
		}
		var has, must []string
		for name := range properties {
			has = append(has, name)
		}
		for _, each := range node["required"].([]any) {
			must = append(must, each.(string))
		}
		for _, list := range [][]string{names, required, has, must} {
			slices.Sort(list)
		}
		if diff := cmp.Diff(names, has); diff != "" {
			t.Errorf("%s: keys of the type (-) and of the schema (+)\n%s", typ, diff)
		}
		if diff := cmp.Diff(required, must); diff != "" {
			t.Errorf("%s: required by the type (-) and by the schema (+)\n%s", typ, diff)
		}
	}
	walk(top, root)
	if len(seen) < 12 {
		t.Errorf("only %d types were compared", len(seen))
	}
}

// TestWordsAndSchemaSayTheSame holds the words of the schema against the
// constants, by validating one report that uses each.
func TestWordsAndSchemaSayTheSame(t *testing.T) {
	s := compiled(t)
	for _, word := range report.Signals() {
		for _, o := range []report.Outcome{report.Within, report.NotMet, report.NotKnown, report.NotApplicable} {
			for _, r := range []report.Reason{report.NoReason, report.NoSubject, report.RuleExempts, report.NotCovered, report.AskFitter, report.MissingInput, report.NotSurveyed, report.ToProve} {
				if err := s.Validate(plain(t, runWith(finding(word, o, r)))); err != nil {
					t.Errorf("%s %s %s: %v", word, o, r, err)
				}
			}
		}
	}
	if err := s.Validate(plain(t, runWith(finding("ALARM", report.Within, "")))); err == nil {
		t.Error("the schema lets a signal word pass that is none")
	}
}

func finding(word report.Signal, o report.Outcome, r report.Reason) report.Finding {
	return report.Finding{Check: "a.b", Word: word, Outcome: o, Reason: r, MayAct: report.Owner,
		Parts: []report.Part{{Outcome: o, Reason: r, Found: report.Quantity(unit.KindLength, 1), Needed: report.Words("two")}}}
}

func runWith(findings ...report.Finding) report.Run {
	return report.Run{Format: report.Format, On: "2026-11-25", FailAt: report.Warning, Caution: report.Cautions(),
		Files: []report.FileReport{{File: "x.json", Findings: findings, Counts: report.Count(findings, report.Warning)}}}
}

func plain(t *testing.T, of any) any {
	t.Helper()
	text, err := json.Marshal(of)
	if err != nil {
		t.Fatal(err)
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	var v any
	if err := d.Decode(&v); err != nil {
		t.Fatal(err)
	}
	return v
}

// TestSignalWords holds the words, their order and what they say of people
// against ANSI Z535.4 (from memory: DANGER will, WARNING could, result in death
// or serious injury; CAUTION could result in minor or moderate injury; NOTICE is
// not related to injury) and ISO 3864-2, whose words are the first three.
func TestSignalWords(t *testing.T) {
	for _, c := range []struct {
		word    report.Signal
		rank    int
		meaning []string
	}{
		{"DANGER", 4, []string{"will", "kill"}},
		{"WARNING", 3, []string{"could", "kill"}},
		{"CAUTION", 2, []string{"could", "lightly or moderately"}},
		{"NOTICE", 1, []string{"not for injury"}},
		{"danger", 0, nil},
		{"", 0, nil},
	} {
		if got := c.word.Rank(); got != c.rank {
			t.Errorf("rank of %q is %d, want %d", c.word, got, c.rank)
		}
		for _, part := range c.meaning {
			if !strings.Contains(c.word.Meaning(), part) {
				t.Errorf("%s means %q, which lacks %q", c.word, c.word.Meaning(), part)
			}
		}
		if c.rank == 0 && c.word.Meaning() != "" {
			t.Errorf("%q has a meaning", c.word)
		}
	}
}

// TestWhatCounts is the table of what counts towards the exit status.
func TestWhatCounts(t *testing.T) {
	for _, c := range []struct {
		word      report.Signal
		outcome   report.Outcome
		threshold report.Signal
		counts    bool
	}{
		{report.Danger, report.NotMet, report.Warning, true},
		{report.Warning, report.NotMet, report.Warning, true},
		{report.Caution, report.NotMet, report.Warning, false},
		{report.Caution, report.NotMet, report.Caution, true},
		{report.Danger, report.NotKnown, report.Warning, true},
		{report.Warning, report.NotKnown, report.Danger, false},
		{report.Warning, report.NotKnown, report.Notice, true},
		{report.Caution, report.NotKnown, report.Notice, false}, // lives do not hang on it
		{report.Notice, report.NotKnown, report.Notice, false},
		{report.Danger, report.Within, report.Notice, false},
		{report.Danger, report.NotApplicable, report.Notice, false},
	} {
		f := finding(c.word, c.outcome, "")
		if got := f.Counts(c.threshold); got != c.counts {
			t.Errorf("%s %s at %s counts: %t, want %t", c.word, c.outcome, c.threshold, got, c.counts)
		}
	}
}

// TestCountsLoseNothing: every finding is counted once, whatever its outcome.
func TestCountsLoseNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var findings []report.Finding
		for range rapid.IntRange(0, 30).Draw(t, "findings") {
			o := rapid.SampledFrom([]report.Outcome{report.Within, report.NotMet, report.NotKnown, report.NotApplicable}).Draw(t, "outcome")
			r := report.NoReason
			if o == report.NotApplicable {
				r = rapid.SampledFrom([]report.Reason{report.NoSubject, report.RuleExempts, report.NotCovered, report.AskFitter}).Draw(t, "reason")
			}
			findings = append(findings, finding(rapid.SampledFrom(report.Signals()).Draw(t, "word"), o, r))
		}
		c := report.Count(findings, report.Warning)
		sum := c.Danger + c.Warning + c.Caution + c.Notice + c.NotKnown + c.Within + c.NotCovered + c.AskFitter + c.NoSubject + c.RuleExempts
		if sum != len(findings) || c.Subjects != len(findings) {
			t.Errorf("%d findings, %d counted, %d subjects", len(findings), sum, c.Subjects)
		}
	})
}

// TestSortIsWorstFirst: no finding stands before a worse one, and the order does
// not depend on the order given.
func TestSortIsWorstFirst(t *testing.T) {
	var findings []report.Finding
	for _, o := range []report.Outcome{report.Within, report.NotKnown, report.NotMet, report.NotApplicable} {
		for _, w := range []report.Signal{report.Notice, report.Danger, report.Caution, report.Warning} {
			for _, subject := range []string{"/b", "/a"} {
				f := finding(w, o, "")
				f.Subject = subject
				findings = append(findings, f)
			}
		}
	}
	forward, backward := slices.Clone(findings), slices.Clone(findings)
	slices.Reverse(backward)
	report.Sort(forward)
	report.Sort(backward)
	if diff := cmp.Diff(forward, backward); diff != "" {
		t.Errorf("the order depends on the order given\n%s", diff)
	}
	first, last := forward[0], forward[len(forward)-1]
	if first.Outcome != report.NotMet || first.Word != report.Danger || first.Subject != "/a" {
		t.Errorf("first is %s %s %s", first.Word, first.Outcome, first.Subject)
	}
	if last.Outcome != report.Within || last.Word != report.Notice {
		t.Errorf("last is %s %s", last.Word, last.Outcome)
	}
}

// TestApartReadsApart: a found value that misses its limit never reads the same.
func TestApartReadsApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		need := rapid.Float64Range(0.001, 100).Draw(t, "needed")
		found := need * (1 - rapid.Float64Range(1e-6, 0.5).Draw(t, "short"))
		a, b := report.Apart(unit.KindLength, found, need)
		if a.Text == b.Text {
			t.Errorf("%v and %v both read %q", found, need, a.Text)
		}
	})
}

// TestTheWordsThatMayNotBeSaid: no text of this package calls anything good.
func TestTheWordsThatMayNotBeSaid(t *testing.T) {
	for _, text := range append(report.Cautions(), report.KeepOff, report.NoDwelling, report.Edge, report.Unseen, string(report.Schema()), string(report.SweepSchema())) {
		for _, word := range []string{"safe ", "compliant", "approved", "certified"} {
			if strings.Contains(strings.ToLower(text), word) {
				t.Errorf("%q is said in %.80q", word, text)
			}
		}
	}
}
