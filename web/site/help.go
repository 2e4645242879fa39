package site

import (
	"fmt"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/static"
	"strokeledger/web/layout"
)

// HelpPage says how a line is written, what the words mean and what to do with a
// ball that is nowhere plain. It is open to everybody.
type HelpPage struct {
	layout.Page
	Lines    []HelpLine
	Signs    []Explained
	Balls    []Explained
	Words    []HelpWords
	Pictures []HelpPicture
	Columns  []Explained // of a shots file
	Guides   []GuideLink // the longer pages
	Licences []GuideLink // of the typefaces
}

// HelpLine is a hole as it is typed, and what it says.
type HelpLine struct {
	Line, Means string
	Par         int
	Score       int
}

// Explained is a word or sign with its meaning.
type Explained struct{ Term, Means string }

// HelpWords are words that belong together.
type HelpWords struct {
	ID, Heading string
	All         []Explained
}

// NewHelpPage makes the page.
func NewHelpPage(page layout.Page) HelpPage {
	page.Title = "How to read this"
	return HelpPage{Page: page, Lines: helpLines, Signs: helpSigns, Balls: helpBalls, Words: helpWords(), Pictures: helpPictures, Columns: helpColumns, Guides: guideLinks(),
		Licences: []GuideLink{{static.URL("book-licence.txt"), "Source Serif 4"}, {static.URL("column-licence.txt"), "IBM Plex Sans Condensed"}}}
}

// helpLength is the length in yards of the hole of the examples.
const helpLength = 392

var helpLines = []HelpLine{
	{"r165 g24 3", "drive into the rough, 165 yards left; then on the green, 24 feet; then 3 feet, holed", 4, 4},
	{"x f150 g20 2", "drive out of bounds; a second from the tee; fairway 150; green 20, 2 feet", 4, 6},
	{"f180w r120 g18 1", "from 180 into a penalty area; dropped in the rough at 120; green 18, 1 foot", 4, 6},
	{"f95 r12", "from 95 into the rough 12 yards away, and chipped in", 4, 3},
	{"r150 f8 g3-", "picked up with 3 feet to go", 4, 3},
	{"f260/3w r110/pw g40 5", "the same with clubs: 3 wood from 260, pitching wedge from 110", 4, 5},
	{"=6", "a score of 6, and no more is known", 4, 6},
	{"h", "holed from the tee", 3, 1},
}

var helpSigns = []Explained{
	{"f r b v g", "fairway, rough, bunker, recovery (the way to the green is blocked) and green: where a shot was played from. The number after it is how far it was to the hole, in your units. The tee shot writes itself."},
	{"3", "a number alone, after a shot on the green: the next putt"},
	{"x", "after the shot that went out of bounds or was lost: one penalty stroke, and played again from the same spot"},
	{"w, u", "penalty area, unplayable: one penalty stroke. The next shot is the drop, with its own lie and distance."},
	{"u2, d", "unplayable and dropped outside the bunker; the local rule for a lost ball: two penalty strokes"},
	{"+2", "any other penalty strokes"},
	{"s6", "short side, with 6 yards of green to work with; s alone when you did not pace it"},
	{"/7i", "the club, up to the next space"},
	{"-", "picked up: the last shot lay there and was not played"},
	{"h", "holed; only a hole in one needs it"},
	{"=5", "after the shots, to check the score; alone, a hole known by its score"},
	{"m, yd, ft, p", "units where yours are others; p is paces of a yard"},
	{"~", "a distance that you are not sure of"},
}

var helpBalls = []Explained{
	{"On the fringe", "Write fairway, with the distance in yards or metres, also when you putted."},
	{"Provisional ball", "First ball lost: write x and go on with the provisional. First ball found: forget the provisional."},
	{"Out of bounds", "x on the shot that went out. It is played again from the same lie and distance, and that shot writes itself."},
	{"Penalty area", "w on the shot that went in, then where you dropped. If you played the ball as it lay in there, it counts as rough, or as recovery when the way is blocked."},
	{"A course whose card is not known", "Start on a new course, and give par and length of each hole as you come to it. That card is provisional: put it right on the page of the course at any time, and give it to the rounds that were played there."},
	{"Picked up", "A hyphen after the last place where the ball lay. What it would still have taken is counted in, in whole strokes, and the score stands in brackets."},
	{"A shot you cannot remember", "Write your best guess with ~ before it. A hole of which you only know the score is =6."},
}

// helpWords are the words that the pages use, by subject.
func helpWords() []HelpWords {
	return []HelpWords{
		{"strokes", "Strokes", []Explained{
			{"Target", "The score you want to average. Every round is compared with a golfer who averages it on the holes you played."},
			{"Lost, won back", "What a shot cost: 1, plus any penalty, plus what it takes from where the ball came to rest, less what it took from where it was. 0 is what the golfer of your target would do on average. A minus is won back."},
			{"Parts", "Tee: every stroke from the tee of a par 4 or 5. Putting: every stroke on the green. Short game: the rest from 50 yards and nearer. Approach: all that remains."},
			{"To play", "The strokes that the golfer of your target takes, on average, from where the ball lies to the bottom of the hole."},
			{"Short side", "Too little green between its edge and the hole for the ball to stop by it. Where you noted the green, it is compared with the run-out of a standard chip. Where you did not, there is green for half the run-out: your own, if your run-out book has three trials of a club for such a shot, or that of a standard chip."},
			{"Working", "A figure with a dotted line under it opens how it comes about, from the figures that are printed, so that you can add it up. Where a tenth was given or taken so that a column adds up, it says so."},
			{"Target here, fixed golfer", "A statement compares with a golfer who averages your target on that course, so that its lines add up to your score. Months, roster and doubles compare with one golfer who is the same on every course, so that rounds can be compared."},
			{"Usual, others here", "Usual is what a golfer of the model loses who plays every part of the game equally well and has your score. Others here are five or more players on this server who score about the same: their last ten rounds, on average and without names."},
			{"Plays to", "The score of the golfer whose tee shots, approaches, short game or putting are like yours."},
		}},
		{"doubles-said", "Doubles", []Explained{
			{"Error", "A shot that lost half a stroke or more. The putts of one green count together as one shot; it is marked at the costliest of them."},
			{"Double", "Two over par, or worse."},
			{"Began here", "The error with which a double began: the first of the costliest chain, or else the first of all. A leak began nowhere."},
			{"Costliest", "The shot that lost most, where the double did not begin with it."},
			{"Follow-up", "An error that came of the one before: the next stroke, or a later one when every stroke up to it was played from trouble, which is sand, recovery, the short side or the stroke after a penalty."},
			{"Compound", "A double in which one error led to the next."},
			{"Single", "A double with one error."},
			{"Separate", "A double with several errors that have nothing to do with each other."},
			{"Leak", "A double without any error: little losses that add up."},
			{"Compounding", "The strokes that the follow-ups of a chain lost."},
		}},
		{"sure", "How sure it is", []Explained{
			{"Clear", "In 95 cases of 100, luck alone would not move a figure so far."},
			{"Leaning", "Likely, but luck could have done it."},
			{"Could be chance", "Too few rounds, or too little of a change, to say."},
			{"One test", "A change has the same word wherever it is shown. Strokes are compared round by round (Welch’s test); counts and shares also as events that happen independently, and the less certain word is given."},
			{"95% interval", "Where a figure would lie in 95 cases of 100, if luck alone moved it."},
			{"Strokes to play", sureness()},
			{"Too few rounds", "A level is given from five rounds on. A share from a handful of tries says little; its number of tries stands beside it."},
		}},
		helpAims,
	}
}

// sureness says how sure an expected value is, with figures of the golfer that the
// program was made with.
func sureness() string {
	sd := func(lie golf.Lie, far float64) float64 {
		u, known := golfer.UncertaintyAt(79, lie, far)
		if !known {
			panic(fmt.Sprintf("site: no uncertainty from %s %g", lie, far))
		}
		return u.SD
	}
	return fmt.Sprintf("They rest on published figures, which are not exact either: where those may be off, what a 79 golfer takes is sure to about %.2f of a stroke from 150 yards of fairway, %.2f from 20 yards of rough, %.2f from a bunker beside the green and %.2f for a putt of 20 feet.",
		sd(golf.Fairway, 150), sd(golf.Rough, 20), sd(golf.Bunker, 20), sd(golf.Green, 20))
}

// scored is the score of an example, as it is printed.
func (l HelpLine) scored() string {
	if strings.HasSuffix(l.Line, "-") {
		return fmt.Sprintf("%d and what was left", l.Score)
	}
	return fmt.Sprint(l.Score)
}
