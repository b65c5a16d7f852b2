package check

import (
	"sync"

	"lowvent.example/schema/layout"
)

// Once gives what make makes of the layout, made once a run for each key, whoever asks
// first. It is for what helps to find things, such as an index of places: it notes
// nothing on the sheet, so no answer may rest on it. A key stands for one type.
func Once[T any](s *Sheet, key string, make func(*layout.Layout) T) T {
	kept, _ := s.run.kept.LoadOrStore(key, sync.OnceValue(func() any { return make(s.run.layout) }))
	return kept.(func() any)().(T)
}
