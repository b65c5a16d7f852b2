package main

import (
	"fmt"
	"runtime"
	"runtime/debug"

	"github.com/spf13/cobra"

	"lowvent.example/schema/layout"
	"lowvent.example/schema/report"
)

func (a *app) versionCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "version",
		Short:   "Print the version of the program and of the forms of file that it reads and writes",
		Example: "  lowvent version",
		Args:    noArguments,
		RunE: func(cmd *cobra.Command, _ []string) error {
			_, err := fmt.Fprintf(a.stdout, "lowvent %s\n%s\nreads %s\nwrites %s, %s\n", a.version, runtime.Version(), layout.Format, report.Format, report.SweepFormat)
			return err
		},
	}
}

// builtAs is the version that the Go toolchain wrote into the program.
func builtAs() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" {
		return "(unknown)"
	}
	return info.Main.Version
}
