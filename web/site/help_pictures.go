package site

import "strokeledger/web/components"

// HelpPicture is one thing that pages draw, with what it says.
type HelpPicture struct {
	Explained
	Drawn string            // which small drawing stands before the words; empty for none
	Marks []components.Mark // scores that are shown as they are marked; nil for none
}

var helpPictures = []HelpPicture{
	{Explained: Explained{"Marks of the card", "A circle is a score under par, a square one over, a double square two over or more. Par has no mark."},
		Marks: []components.Mark{components.MarkOf(3, 4, "3"), components.MarkOf(4, 4, "4"), components.MarkOf(5, 4, "5"), components.MarkOf(6, 4, "6")}},
	{Explained: Explained{"Solid bar", "Strokes lost, to the right of the line of zero, or above it."}, Drawn: "lost"},
	{Explained: Explained{"Hollow bar", "Strokes won back, to the left of zero, or below it."}, Drawn: "won"},
	{Explained: Explained{"Whisker", "How far luck alone could move the bar, in 95 cases of 100."}, Drawn: "whisker"},
	{Explained: Explained{"Stack on the card", "What a hole cost, part by part from zero outward: tee dark, approach mid, short game hatched, putting dotted."}, Drawn: "stack"},
	{Explained: Explained{"Chain of a double", "A step a shot, with what it cost. The place where the double began has a ring; a thick line leads to the follow-up."}, Drawn: "chain"},
	{Explained: Explained{"Plays to", "A full dot is the level now, an open one the level before, the dashed line the target. Further left is better."}, Drawn: "levels"},
	{Explained: Explained{"The season", "A dot a round, and the line of what rounds average. The pale band is where the average may lie, the dashed line the target."}, Drawn: "season"},
	{Explained: Explained{"Putts holed", "A dot a distance: the share of putts holed from there. The dashed line is the golfer of your target."}},
	{Explained: Explained{"Double line under a number", "A final sum. What stands above adds up to it, as printed."}, Drawn: "sum"},
	{Explained: Explained{"Red", "Where to look first: where a double began and what followed from it, what is late, a penalty, a field to put right. Never a loss as such."}},
	{Explained: Explained{"Underline", "A link, or something that opens."}},
}

// helpColumns are the columns of a shots file.
var helpColumns = []Explained{
	{"round", "any text that names the round; its rows stand together"},
	{"date", "the day, 2026-05-02"},
	{"player, course, tee", "any text"},
	{"hole, par", "1 to 18; 3 to 6"},
	{"shot", "1, 2, 3 and so on, in the order played"},
	{"lie", "tee, fairway (the fringe too), rough, bunker, recovery or green"},
	{"distance", "from the ball to the hole before the shot: yards, on the green feet"},
	{"unit", "yd, m or ft, when it is another"},
	{"penalty", "penalty strokes that the shot cost"},
	{"short_sided", "within 30 yards: yes when there was too little green for a standard chip"},
	{"green_to_work_with", "or the yards of green there were"},
	{"picked_up", "yes on the last row of a hole: the ball lay there and was lifted"},
	{"score_only", "the score of a hole whose shots are not known, on its only row"},
	{"club", "any text"},
	{"miss", "left, right, short, long, or two joined with a hyphen"},
}
