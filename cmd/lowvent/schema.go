package main

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"

	"lowvent.example/schema/code"
	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

// schemaNames lists the published schemas in the order in which a newcomer
// meets them.
func schemaNames() []string { return []string{"layout", "report", "code", "overlay", "sweep"} }

func published(name string) []byte {
	switch name {
	case "layout":
		return layout.Schema()
	case "report":
		return report.Schema()
	case "sweep":
		return report.SweepSchema()
	case "code":
		return code.Schema()
	case "overlay":
		return code.OverlaySchema()
	}
	return nil
}

func (a *app) schemaCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "schema layout|report|code|overlay|sweep",
		Short: "Print the published JSON Schema of a form of file",
		Long: `Schema prints the JSON Schema (2020-12) of layouts, of reports, of codes, of
local overlays or of sweeps. That of layouts tells for every key what to measure and how;
an editor that knows JSON Schema shows it while you write.`,
		Example:   `  lowvent schema layout > layout.schema.json`,
		ValidArgs: schemaNames(),
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return errors.New("name one schema: " + strings.Join(schemaNames(), ", "))
			}
			name, err := oneWord("schema", args[0], schemaNames())
			if err != nil {
				return err
			}
			_, err = a.stdout.Write(published(name))
			return err
		},
	}
}
