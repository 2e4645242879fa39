package compare

import (
	"slices"

	"strokeledger/analysis/golf"
)

// FormRounds is over how many rounds a player's form is taken, and over how many
// before them it is compared with.
const FormRounds = 10

// Form is how a player has played over the last ten rounds, beside the ten
// before.
type Form struct {
	Rounds   int                       // of the last ten, with a hole whose strokes are known
	Now      [golf.Putting + 1]PlaysTo // levels over the last ten, by category
	Before   [golf.Putting + 1]Level   // levels over the ten before, by category; not known from too few
	Lost     [golf.Putting + 1]float64 // strokes for 18 holes over the last ten, to the golfer of the target, by category; everything at 0; 0 without a round
	Changes  [golf.Putting + 1]Change  // in strokes lost for 18 holes from the ten before, by category; everything at 0
	Doubles  float64                   // of a known kind, for 18 holes
	Compound float64                   // the share of the doubles in which one mistake led to the next; 0 without any
}

// Form works out a player's form from summaries, the latest first. Levels,
// intervals and changes are those of NewSheet with the same seed and the golfer of
// the player's target, a score from 68 to 110.
func (l Ladder) Form(latestFirst []Summary, target float64, seed uint64) Form {
	var f Form
	now := inOrderOfDays(latestFirst[:min(FormRounds, len(latestFirst))])
	before := inOrderOfDays(latestFirst[min(FormRounds, len(latestFirst)):min(2*FormRounds, len(latestFirst))])
	f.Rounds = len(now)
	f.count(now)
	profiles, earlier := profilesIn(now), profilesIn(before)
	for _, c := range golf.Categories {
		f.Now[c], f.Before[c] = l.PlaysTo(profiles, c, seed), l.level(earlier, c)
	}
	f.lost(l.PartsLost(before, target, seed), l.PartsLost(now, target, seed))
	return f
}

// lost fills in what everything and the parts of the game lost, and the changes.
func (f *Form) lost(was, is PartsLost) {
	for k := range f.Changes {
		f.Lost[k], f.Changes[k] = is.Cells[k].Mean, changeOf(was.Cells[k].Figure, is.Cells[k].Figure)
	}
}

// count fills in the doubles.
func (f *Form) count(now []Summary) {
	holes, doubles, compound := 0.0, 0, 0
	for _, s := range now {
		holes += s.Holes
		doubles += s.Doubles
		compound += s.Compound
	}
	if holes > 0 {
		f.Doubles = wholeRound * float64(doubles) / holes
	}
	if doubles > 0 {
		f.Compound = float64(compound) / float64(doubles)
	}
}

// detailed are the rounds that have a hole whose strokes are known.
func detailed(all []Summary) []Summary {
	var kept []Summary
	for _, s := range all {
		if s.Holes > 0 {
			kept = append(kept, s)
		}
	}
	return kept
}

// inOrderOfDays are those of them, in the order of their days: the same draws of
// the same rounds then say the same everywhere.
func inOrderOfDays(latestFirst []Summary) []Summary {
	kept := detailed(latestFirst)
	slices.Reverse(kept)
	return kept
}

// profilesIn are the profiles of rounds.
func profilesIn(rounds []Summary) []Profile {
	profiles := make([]Profile, len(rounds))
	for i, s := range rounds {
		profiles[i] = s.profile
	}
	return profiles
}

// Moved says which way a part of the game has clearly moved, in strokes lost:
// Better or Worse, and Within where it is not clear.
func (f *Form) Moved(part golf.Category) Past {
	switch c := f.Changes[part]; {
	case c.Word != Clear:
		return Within
	case c.Mean < 0:
		return Better
	default:
		return Worse
	}
}

// FormOf is the form of a span of rounds beside that of the one before.
func FormOf(before, now *Column) Form {
	f := Form{Rounds: len(now.Rounds), Now: now.PlaysTo}
	for _, c := range golf.Categories {
		f.Before[c] = before.PlaysTo[c].Level
	}
	for k := range min(len(f.Changes), len(now.Cells)) {
		f.Lost[k], f.Changes[k] = now.Cells[k].Mean, now.Cells[k].Change
	}
	return f
}
