package vent

import "lowvent.example/schema/check"

// orPractice asks a question by a limit of the code and, where the code is silent, by
// one of common practice, which can add a finding and no more.
func orPractice[T, L any](byCode, byPractice L, ask func(*check.Sheet, T, L) check.Ruling) func(*check.Sheet, T) check.Ruling {
	return func(s *check.Sheet, subject T) check.Ruling {
		return check.ByEither(s, byCode, byPractice, func(s *check.Sheet, l L) check.Ruling { return ask(s, subject, l) })
	}
}
