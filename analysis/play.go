package analysis

import (
	"strokeledger/analysis/aim"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// What play is made of, for callers that see only this package.
type (
	Picture       = aim.Picture   // a hole as somebody drew it
	PictureFaults = aim.Faults    // what is wrong with rows or a file
	Flag          = aim.Flag      // where the hole is cut
	FlagPlace     = aim.FlagPlace // one of nine places of it
	Club          = aim.Club      // with its length and pattern
	Ball          = aim.Ball      // of a range session
	Side          = aim.Side      // of a green
	Pattern       = aim.Pattern   // in which the balls of a player end
	PlayLevels    = golfer.Levels // at which the four parts of a game are played
)

// FlagPlaces are the nine places of a hole, from front left to back right.
var FlagPlaces = aim.FlagPlaces

// ParseSide reads the name of a side of a green; false for what is none.
func ParseSide(name string) (Side, bool) { return aim.ParseSide(name) }

// ReadPicture reads the file of a picture; its error is PictureFaults.
func ReadPicture(data []byte) (Picture, error) { return aim.Read(data) }

// PictureOfRows reads the rows of a picture for a hole of the card.
func PictureOfRows(par int, length golf.Distance, rows string) (Picture, PictureFaults) {
	return aim.ParseRows(par, length.Yards(), rows)
}

// ReadBalls reads a range session, a ball a line.
func ReadBalls(text string) ([]Ball, PictureFaults) { return aim.ParseBalls(text) }

// PlaysAs is the golfer that a player is, as far as the rounds say.
type PlaysAs struct {
	Levels  golfer.Levels // of the four parts, each 68 to 110
	Overall float64       // of all parts together
	Rounds  int           // that it stands on, of the latest
	Thin    golf.Thin     // why it is the target's golfer instead; no note when it is the player
}

// TargetsGolfer is a golfer who plays every part at the level of the target.
func TargetsGolfer(target float64) PlaysAs {
	return PlaysAs{Levels: golfer.Even(target), Overall: target}
}

// PlaysAs answers "which golfer is this player?", from the latest PlanRounds
// rounds with a hole whose strokes are known. With fewer than five it is the
// target's. A part of the game without five rounds that have such a stroke is
// played at the overall level. A target outside 68 to 110 is an error.
func (e *Engine) PlaysAs(history []golf.Played, target float64) (PlaysAs, error) {
	as, _, err := e.playsAs(history, target)
	return as, err
}

// playsAs also returns the profiles of the rounds that the answer stands on.
func (e *Engine) playsAs(history []golf.Played, target float64) (PlaysAs, []compare.Profile, error) {
	as := TargetsGolfer(target)
	if _, err := e.golfer.Striker(target); err != nil {
		return as, nil, err
	}
	chosen := latestDetailed(history, PlanRounds)
	if as.Thin = golf.Enough(golf.ThinLevel, len(chosen), compare.MinRounds); as.Thin.Any() {
		return as, nil, nil
	}
	profiles := make([]compare.Profile, len(chosen))
	for i, r := range chosen {
		profiles[i] = e.ladder.Profile(r.Round, golf.StandardBoundary)
	}
	as.Rounds, as.Overall = len(chosen), e.ladder.Overall(profiles)
	for _, c := range golf.Categories {
		level, ok := e.ladder.LevelOf(profiles, c)
		if !ok {
			level = as.Overall
		}
		*levelOf(&as.Levels, c) = level
	}
	return as, profiles, nil
}

// levelOf is the level of a part of the game.
func levelOf(l *golfer.Levels, c golf.Category) *float64 {
	switch c {
	case golf.TeeShots:
		return &l.Tee
	case golf.Approach:
		return &l.Approach
	case golf.ShortGame:
		return &l.ShortGame
	default:
		return &l.Putting
	}
}
