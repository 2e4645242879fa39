package practice

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// Drill is something to practise, with a way to tell how well it went.
type Drill struct {
	Key      string        // in addresses, commands and stored results; never changes
	Name     string        // what the drill is called
	Part     golf.Category // the part of the game that it serves
	SetUp    [3]string     // how it is set up, a sentence a line
	Counts   string        // when a try counts, to follow "A try counts when"
	Stations []Station     // a set is one try from each
	Written  Written
	Swing    bool // full swings: the cautions for them are shown
	NoMark   bool // its results cannot tell levels apart, so it has no mark
	DrillSpan
}

// DrillSpan is what the player may choose within a drill: from how far, where
// there is one station.
type DrillSpan struct{ MinFeet, MaxFeet float64 }

// Written is what is written down about a try.
type Written uint8

// What may be written down. The zero value is invalid.
const (
	_     Written = iota
	Sides         // counted, or missed left, right, short or long
	Tally         // counted or not
	Run           // counted or not, in order: the longest run is told
	Notes         // in words, without a mark
)

// Station is one place of a drill: where from, and the chance that a try counts
// for the golfer who plays it.
type Station struct {
	Lie      golf.Lie
	Distance golf.Distance
	chance   func(golfer.Striker) float64
}

// Drills are all drills of the house, in the order in which they are listed.
func Drills() []Drill { return drills }

// Find returns a drill by its key.
func Find(key string) (Drill, error) {
	for _, d := range drills {
		if d.Key == key {
			return d, nil
		}
	}
	return Drill{}, fmt.Errorf("unknown drill %q", key)
}

// At is the drill played from feet instead of where it is usually played.
// Only a drill with MinFeet and MaxFeet can be moved.
func (d Drill) At(feet float64) (Drill, error) {
	if d.MaxFeet == 0 {
		return d, fmt.Errorf("%s is not played from a distance of your own", d.Key)
	}
	if !(feet >= d.MinFeet && feet <= d.MaxFeet) {
		return d, fmt.Errorf("%g ft is not possible; allowed: %g to %g ft", feet, d.MinFeet, d.MaxFeet)
	}
	d.Stations = []Station{holed(feet)}
	return d, nil
}

func holed(feet float64) Station {
	return Station{golf.Green, golf.Distance(feet) * golf.Foot, func(s golfer.Striker) float64 { return s.Putter().MakeRate(feet) }}
}

func lag(feet, within float64) Station {
	return Station{golf.Green, golf.Distance(feet) * golf.Foot, func(s golfer.Striker) float64 { return s.Putter().LagWithin(feet, within) }}
}

// near counts a ball that ends within some feet of the hole.
func near(lie golf.Lie, yd, feet float64) Station {
	return Station{lie, golf.Distance(yd) * golf.Yard, func(s golfer.Striker) float64 { return s.Within(lie, yd, feet/3) }}
}

func onGreenNear(lie golf.Lie, yd, feet float64) Station {
	return Station{lie, golf.Distance(yd) * golf.Yard, func(s golfer.Striker) float64 { return s.OnGreenWithin(lie, yd, feet/3) }}
}

func inTwo(lie golf.Lie, yd float64) Station {
	return Station{lie, golf.Distance(yd) * golf.Yard, func(s golfer.Striker) float64 { return s.InTwo(lie, yd) }}
}

func putts(feet ...float64) []Station {
	var all []Station
	for _, x := range feet {
		all = append(all, holed(x))
	}
	return all
}

// The corridor of the drill with the driver: a narrower gate alone would be easier
// for a short hitter.
const (
	corridorWidth = 40  // yd
	corridorShare = .85 // of the usual drive
)

var drills = []Drill{
	{Key: "start-line", Name: "Start line", Part: golf.Putting, Stations: putts(4), Written: Sides, DrillSpan: DrillSpan{3, 10}, Counts: "the putt is holed",
		SetUp: [3]string{"Find a straight putt: from behind the ball, and from behind the hole, it breaks neither way.", "Mark the spot, and draw or pick a line over the ball to the middle of the hole.", "Putt every ball from the mark and note each miss: left, right, short or long."}},
	{Key: "ladder", Name: "Putting ladder", Part: golf.Putting, Stations: putts(3, 4, 5, 6, 7, 8, 9, 10), Written: Tally, Counts: "the putt is holed",
		SetUp: [3]string{"Put a tee beside the line at 3, 4, 5, 6, 7, 8, 9 and 10 ft.", "Putt one ball from each tee, nearest first: that is a set.", "Read every putt anew, and count the ones you hole."}},
	{Key: "lag", Name: "Lag putts", Part: golf.Putting, Stations: []Station{lag(30, 4), lag(40, 4), lag(50, 4)}, Written: Tally, Counts: "the ball ends within 4 ft of the hole, or in it",
		SetUp: [3]string{"Mark 30, 40 and 50 ft from one hole, across the green rather than straight up or down.", "Lay a club from the hole outwards and put tees 4 ft away on every side.", "One putt from each mark is a set; change the mark after every putt."}},
	{Key: "round-the-hole", Name: "Round the hole", Part: golf.Putting, Stations: putts(4, 4, 4, 4, 4, 4, 4, 4), Written: Run, Counts: "the putt is holed",
		SetUp: [3]string{"Choose a hole on a slope and put eight tees round it, each 4 ft away.", "Putt once from each tee on the way round: that is a set.", "Go on after a miss, and note the longest run of holed putts."}},
	{Key: "chip-fairway", Name: "Chips from short grass", Part: golf.ShortGame, Stations: []Station{near(golf.Fairway, 10, 10), near(golf.Fairway, 15, 10), near(golf.Fairway, 20, 10)}, Written: Tally, Counts: "the ball ends within 10 ft of the hole",
		SetUp: [3]string{"Find short grass 10, 15 and 20 yd from a hole.", "Put tees 10 ft from the hole on every side.", "One ball from each place is a set; never two in a row from the same place."}},
	{Key: "chip-rough", Name: "Chips from rough", Part: golf.ShortGame, Stations: []Station{near(golf.Rough, 10, 12), near(golf.Rough, 15, 12), near(golf.Rough, 20, 12)}, Written: Tally, Counts: "the ball ends within 12 ft of the hole",
		SetUp: [3]string{"Find rough 10, 15 and 20 yd from a hole; drop the ball, do not place it.", "Put tees 12 ft from the hole on every side.", "One ball from each place is a set; never two in a row from the same place."}},
	{Key: "bunker", Name: "Out of sand", Part: golf.ShortGame, Stations: []Station{onGreenNear(golf.Bunker, 12, 12)}, Written: Tally, Counts: "the ball is on the green and within 12 ft of the hole",
		SetUp: [3]string{"Choose a bunker with the hole 12 yd from the ball.", "Smooth the sand, and give every ball a clean lie of its own.", "Put tees 12 ft from the hole, and rake when you have finished."}},
	{Key: "up-and-down", Name: "Up and down", Part: golf.ShortGame, Stations: []Station{inTwo(golf.Fairway, 8), inTwo(golf.Fairway, 14), inTwo(golf.Fairway, 20), inTwo(golf.Rough, 8), inTwo(golf.Rough, 14), inTwo(golf.Rough, 20), inTwo(golf.Bunker, 8), inTwo(golf.Bunker, 14), inTwo(golf.Bunker, 20)}, Written: Tally, Counts: "you hole out in two strokes or fewer",
		SetUp: [3]string{"Nine places round one green: short grass, rough and sand, each from 8, 14 and 20 yd.", "Play one ball from each and putt it out, as on the course: that is a set.", "A ball that stays in the sand or misses the green counts as it lies."}},
	{Key: "wedge-ladder", Name: "Wedge ladder", Part: golf.Approach, Stations: []Station{near(golf.Fairway, 40, 12), near(golf.Fairway, 60, 18), near(golf.Fairway, 80, 24)}, Written: Tally, Swing: true, Counts: "the ball ends within a tenth of the marker’s distance of it",
		SetUp: [3]string{"Measure out markers at 40, 60 and 80 yd.", "The targets round them are 4, 6 and 8 yd to every side.", "One ball to each marker is a set; go up the ladder, never twice at the same."}},
	{Key: "approach", Name: "Approach", Part: golf.Approach, Stations: []Station{near(golf.Fairway, 120, 45), near(golf.Fairway, 150, 45)}, Written: Tally, Swing: true, Counts: "the ball ends within 15 yd of the flag",
		SetUp: [3]string{"Find flags or markers at 120 and 150 yd on a range.", "Choose two things 15 yd to each side, and judge the length by the ground about them.", "Change the flag and go through your whole routine for every ball."}},
	{Key: "corridor", Name: "Corridor", Part: golf.TeeShots, Stations: []Station{{golf.Tee, 0, func(s golfer.Striker) float64 { return s.Corridor(corridorWidth, corridorShare) }}}, Written: Tally, Swing: true, Counts: "the drive ends inside the corridor and goes 85 % of your usual drive or farther",
		SetUp: [3]string{"On a range, choose two things 40 yd apart at the length of your drive.", "Know your usual drive; one that goes less than 85 % of it does not count.", "Step away between balls, and choose the line anew for each."}},
	{Key: "short-side", Name: "Short side", Part: golf.ShortGame, Stations: []Station{{Lie: golf.Rough, Distance: 12 * golf.Yard}}, Written: Notes, NoMark: true, Counts: "you say so",
		SetUp: [3]string{"Play from 12 yd with the hole cut 3 yd from the near edge.", "Play to the middle of the green first, then at the hole, ten balls each.", "Note where each ball ends: which of the two would you rather putt from?"}},
	{Key: "back-into-play", Name: "Back into play", Part: golf.Approach, Stations: []Station{{Lie: golf.Recovery, Distance: 40 * golf.Yard}}, Written: Notes, NoMark: true, Counts: "you say so",
		SetUp: [3]string{"Put two stakes 8 yd apart, 40 yd away.", "Punch the ball low between them with the club you would take from under trees.", "Note how many of ten went through, and how far they ran."}},
}
