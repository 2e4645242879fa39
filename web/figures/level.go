package figures

import (
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/words"
)

// PartLevelInput is what a part of the game plays to, now and before, beside a
// target.
type PartLevelInput struct {
	Part   golf.Category   // off the tee, approach, short game or putting
	Now    compare.PlaysTo // the level over the later rounds; not known with too few
	Before compare.Level   // the level over the earlier rounds; not known with too few
	Change compare.Change  // in strokes lost from the earlier rounds to the later
	Target float64         // the player's, a score for 18 holes of par 72
}

// PartLevel is what a part of the game plays to, in words and as a picture.
type PartLevel struct {
	Name     string   // the part of the game, with a capital letter
	Now      string   // the level, or how many more rounds it takes
	Was      string   // the level before, as "was 84"; empty when not known
	Interval string   // 95% interval of Now, as "80 to 88"; empty when not known
	Moved    string   // "better, clear" or "worse, leaning"; empty where the change could be chance
	Dumbbell Dumbbell // the picture of it
}

// Dumbbell is a level and the one before on a line of levels, further left for
// the better player. Every place is a percentage of the line's width.
type Dumbbell struct {
	Known     bool   // there is a level; nothing is drawn otherwise
	X         string // the level now, a filled dot
	Low, High string // ends of its 95% interval
	Target    string // the dashed rule
	HasBefore bool   // there is a level before
	Before    string // that level, an open dot; empty unless HasBefore
}

// LevelScale is the one line of levels on which all of the given fit.
func LevelScale(all []PartLevelInput) chart.Range {
	var values []float64
	for _, in := range all {
		if !in.Now.Known() {
			continue
		}
		values = append(values, in.Now.Low.Value, in.Now.High.Value, in.Target)
		if in.Before.Known() {
			values = append(values, in.Before.Value)
		}
	}
	return chart.NewRange(5, values...)
}

// NewPartLevel words and places the level of a part of the game.
func NewPartLevel(in PartLevelInput, scale chart.Range) PartLevel {
	p := PartLevel{Name: words.Capital(in.Part.String()), Now: words.Thin(in.Now.Thin()), Moved: movedWords(in.Change)}
	if !in.Now.Known() {
		return p
	}
	p.Now, p.Interval = words.Level(in.Now.Level), words.LevelRange(in.Now)
	p.Dumbbell = Dumbbell{Known: true, X: scale.Across(in.Now.Level.Value), Target: scale.Across(in.Target),
		Low: scale.Across(in.Now.Low.Value), High: scale.Across(in.Now.High.Value)}
	if in.Before.Known() {
		p.Was, p.Dumbbell.HasBefore, p.Dumbbell.Before = "was "+words.Level(in.Before), true, scale.Across(in.Before.Value)
	}
	return p
}

// movedWords says which way strokes lost moved and how sure that is; empty where
// it could be chance.
func movedWords(c compare.Change) string {
	if sure := Sure(c.Word); sure != "" {
		return direction(c.Mean) + ", " + sure
	}
	return ""
}
