package compare

import "strokeledger/analysis/golf"

// FormRounds is over how many rounds a player's form is taken, and over how many
// before them it is compared with.
const FormRounds = 10

// Form is how a player has played over the last ten rounds, beside the ten
// before.
type Form struct {
	Rounds   int                       // of the last ten, with a hole whose strokes are known
	Now      [golf.Putting + 1]PlaysTo // levels over the last ten, by category
	Before   [golf.Putting + 1]Level   // levels over the ten before, by category; not known from too few
	Doubles  float64                   // of a known kind, for 18 holes
	Compound float64                   // the share of the doubles in which one mistake led to the next; 0 without any
}

// Form works out a player's form from summaries, the latest first. The levels
// and intervals are those of NewSheet with the same seed.
func (l Ladder) Form(latestFirst []Summary, seed uint64) Form {
	var f Form
	now := detailed(latestFirst[:min(FormRounds, len(latestFirst))])
	before := detailed(latestFirst[min(FormRounds, len(latestFirst)):min(2*FormRounds, len(latestFirst))])
	f.Rounds = len(now)
	f.count(now)
	profiles, earlier := profilesIn(now), profilesIn(before)
	for _, c := range golf.Categories {
		f.Now[c], f.Before[c] = l.PlaysTo(profiles, c, seed), l.level(earlier, c)
	}
	return f
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

// profilesIn are the profiles in the order of their days: the same draws of the
// same rounds then say the same everywhere.
func profilesIn(latestFirst []Summary) []Profile {
	profiles := make([]Profile, len(latestFirst))
	for i, s := range latestFirst {
		profiles[len(profiles)-1-i] = s.profile
	}
	return profiles
}

// Moved says how the level of a part of the game stands to that of the ten
// rounds before: Better or Worse when the earlier level lies outside the
// interval of the later, which is likely more than luck; otherwise Within.
func (f *Form) Moved(part golf.Category) Past {
	if !f.Now[part].Known() || !f.Before[part].Known() {
		return Within
	}
	switch was := f.Before[part].Value; {
	case was > f.Now[part].High.Value:
		return Better
	case was < f.Now[part].Low.Value:
		return Worse
	default:
		return Within
	}
}

// FormOf is the form of a span of rounds beside that of an earlier one.
func FormOf(before, now *Column) Form {
	f := Form{Rounds: len(now.Rounds), Now: now.PlaysTo}
	for _, c := range golf.Categories {
		f.Before[c] = before.PlaysTo[c].Level
	}
	return f
}
