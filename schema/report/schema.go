package report

import _ "embed"

//go:embed report.schema.json
var schema []byte

// Schema is the published JSON Schema (2020-12) of a machine-readable report.
func Schema() []byte { return schema }
