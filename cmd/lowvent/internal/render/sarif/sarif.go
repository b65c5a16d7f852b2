// Package sarif writes a report in the Static Analysis Results Interchange Format,
// version 2.1.0 of OASIS, with errata 01, for CI and for viewers of results. Paragraph
// numbers in this package are those of that standard.
package sarif

import (
	"cmp"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"

	"lowvent.example/cmd/lowvent/internal/render/saying"
	"lowvent.example/schema/report"
)

// Schema is the address of the standard's own JSON Schema.
const Schema = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"

// Write writes the report of a run as one SARIF run. What is not met is a result of kind
// "fail", what is not known one of kind "open" and, since many viewers pass those over,
// each file with such answers that count has one more result that fails and counts them.
// What is within its limit, not covered or a fitter's to answer is only counted, in the
// run's properties. The error is that of the writer.
func Write(w io.Writer, r *report.Run) error {
	b := build(r)
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(log{Schema: Schema, Version: "2.1.0", Runs: []run{b.out}})
}

// head is the words that come before all others.
func head(r *report.Run) []string { return r.Caution }

// builder makes the one run of a log.
type builder struct {
	from *report.Run
	out  run
	file map[string]int // index of each artifact
	rule map[string]int // index of each rule
}

func build(r *report.Run) *builder {
	b := &builder{from: r, file: map[string]int{}}
	b.out = run{ColumnKind: "unicodeCodePoints", Artifacts: []artifact{}, Results: []result{},
		Tool:    tool{Driver: driver{Name: cmp.Or(r.Program.Name, "lowvent"), Version: r.Program.Version, Description: say(head(r)...)}},
		BaseIDs: map[string]artifactLocation{baseID: {Description: new(say("The folder in which lowvent was run."))}},
		Properties: runProperties{Cautions: head(r), JudgedOn: r.On, FailAt: string(r.FailAt), Accepted: r.Accept,
			Result: saying.OneLine(saying.Result(r))}}
	b.artifacts()
	b.out.Tool.Driver.Rules = rules(r)
	b.rule = map[string]int{}
	for i, each := range b.out.Tool.Driver.Rules {
		b.rule[each.ID] = i
	}
	for i := range r.Files {
		b.results(&r.Files[i])
	}
	b.out.Invocations = []invocation{b.invocation()}
	return b
}

// artifacts lists the files that were judged. Standard input has no address (3.4.3): it
// is only an entry of the list, to which places refer by its index.
func (b *builder) artifacts() {
	for i := range b.from.Files {
		f := &b.from.Files[i]
		if _, known := b.file[f.File]; known {
			continue
		}
		a := artifact{Roles: []string{"analysisTarget"}, Properties: artifactProperties{Gas: saying.OneLine(f.Gas)}}
		if len(f.Faults) == 0 {
			a.Properties.Code = saying.JudgedBy(f)
		}
		if f.Title != "" {
			a.Description = new(say(f.Title))
		}
		if f.SHA256 != "" {
			a.Hashes = map[string]string{"sha-256": f.SHA256}
		}
		if f.File == saying.StandardInput {
			a.Roles = append(a.Roles, "standardStream")
			a.Description = new(say(strings.TrimSuffix("Standard input: "+f.Title, ": ")))
		} else {
			a.Location = new(address(f.File))
		}
		b.file[f.File] = len(b.out.Artifacts)
		b.out.Artifacts = append(b.out.Artifacts, a)
	}
}

// invocation tells of the run itself. A file that can't be used has a notification at
// level "error", by which no consumer may take the results for complete (3.20.21).
func (b *builder) invocation() invocation {
	in := invocation{ExitCode: b.from.Status, Description: status(b.from.Status), Successful: true, Notifications: []notification{}}
	for _, each := range slices.Concat(head(b.from), []string{saying.Result(b.from)}) {
		in.Notifications = append(in.Notifications, notification{Message: say(each), Level: "note"})
	}
	for i := range b.from.Files {
		f := &b.from.Files[i]
		for _, each := range saying.Unverified(f) {
			in.Notifications = append(in.Notifications, notification{Message: say(each), Level: "warning"})
		}
		if len(f.Faults) == 0 {
			continue
		}
		in.Successful = false
		in.Notifications = append(in.Notifications, notification{Level: "error", Locations: []location{b.location(f.Faults[0].Place, "")},
			Message: say(fmt.Sprintf("%s can't be used, and nothing in it was judged: %s.", f.File, saying.Count(len(f.Faults), "fault")))})
	}
	return in
}

func status(s int) string {
	switch s {
	case 0:
		return "Nothing at or above the threshold in what the files state. This is no pass of the installation."
	case 1:
		return "Findings at or above the threshold: not met, or not known."
	}
	return "A file can't be used."
}

// say makes a message of texts. Braces are doubled, since a viewer would take them for
// the place of an argument (3.11.5), and nothing in it is left to look like a link, so
// that a text from a file leads nowhere (3.11.6).
func say(texts ...string) message {
	s := saying.OneLine(strings.Join(texts, " "))
	return message{strings.NewReplacer("{", "{{", "}", "}}", "](", "] (").Replace(s)}
}
