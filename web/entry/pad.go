package entry

import (
	"strokeledger/web/components"
)

type padKey struct{ Key, Name, Class, Lie string }

var padLies = []padKey{
	{Key: "f", Name: "Fairway", Lie: "fairway"}, {Key: "r", Name: "Rough", Lie: "rough"}, {Key: "b", Name: "Bunker", Lie: "bunker"},
	{Key: "v", Name: "Recovery", Lie: "recovery"}, {Key: "g", Name: "Green", Lie: "green"},
}

var padKeys = []padKey{
	{Key: "x", Name: "Out or lost", Class: "red-key"}, {Key: "w", Name: "Penalty area", Class: "red-key"}, {Key: "u", Name: "Unplayable", Class: "red-key"}, {Key: "undo", Name: "Undo", Class: "undo-key"},
	{Key: "1", Name: "1", Class: "number-key"}, {Key: "2", Name: "2", Class: "number-key"}, {Key: "3", Name: "3", Class: "number-key"}, {Key: "next", Name: "Next shot", Class: "side-key"},
	{Key: "4", Name: "4", Class: "number-key"}, {Key: "5", Name: "5", Class: "number-key"}, {Key: "6", Name: "6", Class: "number-key"}, {Key: "s", Name: "Short side", Class: "side-key"},
	{Key: "7", Name: "7", Class: "number-key"}, {Key: "8", Name: "8", Class: "number-key"}, {Key: "9", Name: "9", Class: "number-key"}, {Key: "h", Name: "Holed", Class: "side-key"},
}

// moreKeys are those behind More.
var moreKeys = []padKey{
	{Key: "=", Name: "Score only"}, {Key: "t", Name: "Another tee"},
	{Key: "d", Name: "Lost ball, two strokes"}, {Key: "u2", Name: "Out of the bunker, two strokes"},
	{Key: "/", Name: "Club"}, {Key: "~", Name: "About"},
	{Key: "-", Name: "Picked up"}, {Key: ".", Name: "Decimal point"},
}

// marks are the words of the line.
var marks = []components.Fact{
	{Name: "f r b v g", Value: "fairway, rough, bunker, recovery, green"},
	{Name: "x", Value: "out of bounds or lost: you play again from the same spot"},
	{Name: "w u", Value: "penalty area, unplayable: the next shot is the drop"},
	{Name: "u2 d", Value: "two strokes: out of the bunker, lost ball by the local rule"},
	{Name: "s s4", Value: "short side, with 4 yards of green"},
	{Name: "t385", Value: "another tee"},
	{Name: "~165", Value: "about 165"},
	{Name: "/7i", Value: "the club"},
	{Name: "h -", Value: "holed, picked up"},
	{Name: "=5", Value: "the score, as a check or on its own"},
}
