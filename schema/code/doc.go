// Package code holds the limits of published codes as data.
//
// A [Term] is one question that a code may answer: how large the low vent of a
// cylinder locker must be, whether a flue is asked for. A [Profile] is one
// published code; each of its [Entry] values answers one term by a [Rule] and
// says where that stands, which edition it was, and whether anybody read it.
// [Codes.Ask] puts a term to the codes that were chosen and gives an [Answer].
//
// Four books are kept apart and a term belongs to exactly one of them: the
// code chosen for the dwelling, the law on the thing itself (how far a cylinder
// may be filled), common practice that has no source, and the rules of this
// program. A term that its book does not answer is [Silent]: no other profile,
// no other book and no formula steps in. What was only remembered is
// [Remembered] and is never judged. A fact that nobody stated leaves the answer
// [Open]. Only [Answered] carries a figure.
//
// Rules come in a small closed set: a fixed figure, a share of a fact, so much
// per unit of one or more facts, a table read at the next row up, one of some
// words, all of several rules, a choice by a fact, and a plain duty. They are
// evaluated on a closed set of facts ([Fact]) which the asker supplies, in SI.
//
// The built-in profiles are the files of the folder codes. Their format is
// told by [Schema], and [Load] reads one that a user wrote.
package code
