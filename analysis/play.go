package analysis

import (
	"errors"

	"strokeledger/analysis/aim"
	"strokeledger/analysis/forecast"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// What a picture of a hole is, for callers that see only this package.
type (
	Picture       = aim.Picture
	PictureFaults = aim.Faults
	Flag          = aim.Flag
	Clubs         = []aim.Club
	PlayLevels    = golfer.Levels
)

// ReadPicture reads the file of a picture; its error is PictureFaults.
func ReadPicture(data []byte) (Picture, error) { return aim.Read(data) }

// PictureOfRows reads the rows of a picture for a hole of the card.
func PictureOfRows(par int, length golf.Distance, rows string) (Picture, PictureFaults) {
	return aim.ParseRows(par, length.Yards(), rows)
}

// PlaysAs is the golfer that a player is, as far as the rounds say.
type PlaysAs struct {
	Levels  golfer.Levels // of the four parts, each 68 to 110
	Overall float64       // of all parts together
	Rounds  int           // that it stands on, of the latest
	Thin    golf.Thin     // why it is the target's golfer instead; no note when it is the player
}

// PlaysAs answers "which golfer is this player?", from the latest PlanRounds
// rounds whose strokes are known. With fewer than five it is the target's.
func (e *Engine) PlaysAs(history []golf.Played, target float64) (PlaysAs, error) {
	return PlaysAs{}, errUnfinished
}

// AimInput is what an aim is looked for with.
type AimInput struct {
	Picture aim.Picture // one that Check finds no fault with
	Flag    *aim.Flag   // where the hole is cut; nil for the middle
	As      PlaysAs
	Clubs   []aim.Club  // for the tee; none stands for ClubsOf
	Shape   float64     // yd that the ball is bent on purpose, right positive; laid on every pattern
	From    *aim.From   // where an approach is played from, its Length is not read; nil for the tee
	Pattern aim.Pattern // of an approach
}

// Aim answers "where should I aim?" on a hole.
func (e *Engine) Aim(in AimInput) (aim.Advice, error) { return aim.Advice{}, errUnfinished }

// ClubsOf are the clubs for the tee of a golfer, with the lengths of the level.
func (e *Engine) ClubsOf(as PlaysAs) ([]aim.Club, error) { return nil, errUnfinished }

// PatternInput is what is known of how a player hits a club.
type PatternInput struct {
	As      PlaysAs
	Club    aim.Club      // its name finds the shots of the rounds, its length is that of the pattern
	Tee     bool          // the club is used from a tee, at the level of tee shots; otherwise from the fairway
	Session []aim.Ball    // of the range; none, or aim.MinBalls or more
	History []golf.Played // whose words of misses are read
}

// Pattern answers "where do my shots with this club end?".
func (e *Engine) Pattern(in PatternInput) (aim.Pattern, error) { return aim.Pattern{}, errUnfinished }

// RoundPlanInput is what a plan of a round is made of.
type RoundPlanInput struct {
	Card     []golf.CardHole
	Pictures map[int]aim.Picture // by number of the hole
	As       PlaysAs
	Clubs    []aim.Club         // none stands for ClubsOf
	Notify   func(done, of int) // is told of progress; may be nil
}

// RoundPlan is a club and an aim for every hole.
type RoundPlan struct {
	Holes []HolePlan // in the order of the card
	Saved float64    // strokes a round, against the longest club down the middle and the flag
}

// HolePlan is the plan of one hole.
type HolePlan struct {
	Hole     golf.CardHole
	Drawn    bool         // there is a picture; without one there is no advice
	Advice   aim.Advice   // from the tee
	Approach aim.Approach // from the middle of the fairway, where the tee shot ends; that of Advice on a par 3
	Saved    float64      // strokes, by the aim from the tee
}

// RoundPlan answers "where should I aim on each hole, and where does it matter?".
func (e *Engine) RoundPlan(in RoundPlanInput) (RoundPlan, error) { return RoundPlan{}, errUnfinished }

// ChanceInput is what the chance of a target is asked for.
type ChanceInput struct {
	History  []golf.Played // all rounds, in the order of their days
	Target   float64       // score of 18 holes
	Par18    int           // par of the whole course; 0 where it is not known
	Card     []golf.CardHole
	Pictures map[int]aim.Picture // by number of the hole; others are the model's ground
	Clubs    []aim.Club          // for holes with a picture; none stands for ClubsOf
	Planned  bool                // holes with a picture are played with the plan's aims, not straight
	Rounds   int                 // to play; 0 stands for 20,000
	Seed     uint64
}

// Chance answers "how likely is the target on this course, and what would change
// that?".
func (e *Engine) Chance(in ChanceInput) (forecast.Chance, error) {
	return forecast.Chance{}, errUnfinished
}

var errUnfinished = errors.New("not worked out yet")
