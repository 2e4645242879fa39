package pages

// padKey is one key of the pad.
type padKey struct{ Key, Name, Said, Class, Lie string }

var padLies = []padKey{
	{Key: "f", Name: "Fairway", Lie: "fairway"}, {Key: "r", Name: "Rough", Lie: "rough"}, {Key: "b", Name: "Bunker", Lie: "bunker"},
	{Key: "v", Name: "Recovery", Lie: "recovery"}, {Key: "g", Name: "Green", Lie: "green"},
}

var padKeys = []padKey{
	{Key: "1", Name: "1", Class: "nk"}, {Key: "2", Name: "2", Class: "nk"}, {Key: "3", Name: "3", Class: "nk"}, {Key: "s", Name: "Short side", Class: "sk"},
	{Key: "4", Name: "4", Class: "nk"}, {Key: "5", Name: "5", Class: "nk"}, {Key: "6", Name: "6", Class: "nk"}, {Key: "undo", Name: "Undo", Class: "sk"},
	{Key: "7", Name: "7", Class: "nk"}, {Key: "8", Name: "8", Class: "nk"}, {Key: "9", Name: "9", Class: "nk"}, {Key: "holed", Name: "Holed", Class: "sk"},
	{Key: ".", Name: ".", Said: "decimal point", Class: "nk"}, {Key: "0", Name: "0", Class: "nk"}, {Key: "back", Name: "←", Said: "delete last", Class: "nk"},
	{Key: "pickedup", Name: "Picked up", Class: "qk"},
	{Key: "x", Name: "Out or lost", Class: "qk red"}, {Key: "w", Name: "Penalty area", Class: "qk red"}, {Key: "u", Name: "Unplayable", Class: "qk red"},
}

// hints are the words of the line.
var hints = []Fact{
	{"f r b v g", "fairway, rough, bunker, recovery, green"},
	{"x w u", "after a shot: out or lost, penalty area, unplayable; the next is the drop"},
	{"u2 d +2", "two strokes: dropped outside the bunker, lost ball by the local rule, any other"},
	{"s s4", "after a distance: short side, with 4 yards of green"},
	{"/7i", "the club"},
	{"~165", "about 165"},
	{"t385 x", "before the first shot: another tee, out of bounds off it"},
	{"h  -", "the tee shot was holed; picked up where it lay"},
	{"=5", "the score, to check; alone, nothing but the score is known"},
}
