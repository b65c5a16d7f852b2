package report

import _ "embed"

//go:embed report.schema.json
var schema []byte

// Schema is the published JSON Schema (2020-12) of a machine-readable report.
func Schema() []byte { return schema }

//go:embed sweep.schema.json
var sweepSchema []byte

// SweepSchema is the published JSON Schema (2020-12) of a machine-readable sweep.
func SweepSchema() []byte { return sweepSchema }
