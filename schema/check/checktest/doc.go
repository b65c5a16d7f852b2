// Package checktest reads and runs the examples that stand beside the checks.
//
// Each check has one text file of examples, testdata/<id>.txtar, in the txtar
// format: words for people, then files. An example is a patch on a layout and
// what the check then says of it:
//
//	The rack hangs 24 in over the burners: just what the code asks for.
//
//	-- code --
//	us-mobile-structure
//	-- at-limit.patch --
//	# the rack, lowered
//	/combustibles/rack/box/from/2 = "1.5296 m"
//	-- at-limit.want --
//	appliances/hob within
//
// The file "base" names the layout that is patched, from the top of the module;
// it is testdata/layouts/sorrel.json unless the file says otherwise. "code" names
// the profile, by its id or as a file from the top of the module; it is
// us-mobile-structure unless the file says otherwise, and "<name>.code" is that
// of one case; "none" is no code, and only the books that every run is judged
// by. A patch has one edit a line, as source.ParseEdit reads it, and may have
// lines of comment that begin with "#". What is wanted is a subject, an outcome
// and, where there is one, a reason a line; every subject that is not listed
// must come out as it does in the base without the patch.
//
// The same files are the examples of docs/checks.md. The package is used by tests
// and by nothing else.
package checktest
