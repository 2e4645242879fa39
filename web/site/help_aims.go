package site

// helpAims are the words of the pages that prepare a round.
var helpAims = HelpWords{"aims", "Aims", []Explained{
	{"Drawing", "What matters on a hole, in yards: where it bends, its fairway, ground beside it, its green. Any player may draw a hole; the newest drawing holds for all. Ground that is not drawn is what golfers of that level meet on average."},
	{"Aim", "Where you point; a ball struck well ends there on average, moved by what your pattern leans to. An aim from a tee is so far left or right of the middle, an aim at a green so far from the flag."},
	{"Pattern", "Where the balls of one aim end, bad strikes among them: as those of the level, moved and widened by balls from the range and by misses that were noted. The rings hold half of the well-struck balls, and nine in ten."},
	{"Costs", "Strokes to hole out, on average, with all that may happen to the ball. Out of bounds is a stroke and the distance, water a stroke and a drop, trees a stroke back into play."},
	{"The aim hardly matters", "No aim saves 0.03 strokes or more. A round has about 36 aims, and 36 of those come to one stroke."},
	{"Safe side", "The sides of the green on which a miss leaves least, where the four differ by 0.2 strokes or more. A coach may propose another."},
	{"Short side", "A ball within 30 yards of the hole with too little green to stop the next one."},
	{"Chance of the target", "The share of 20,000 rounds that the golfer of your four levels plays with that score or better. The plan’s aims are the best, or what you took of a coach in their place. Its range comes from resampling your rounds."},
	{"The card to carry", "Written notes are normally allowed under the Rules. Ask the committee about distance devices, green maps and advice during a round."},
}}
