package coach

import (
	"fmt"
	"slices"

	"strokeledger/analysis/account"
	"strokeledger/web/figures"
	"strokeledger/web/words"
)

// ownLede tells the player what is new and how much there is to practise.
func ownLede(in LessonsInput) string {
	fresh, open := 0, 0
	for _, n := range in.Notes {
		fresh += words.Tally(n.Unread)
	}
	for _, a := range in.Assignments {
		open += words.Tally(!a.Done)
	}
	text := "Nothing new from a coach"
	if fresh > 0 {
		text = words.Capital(words.Spelled(fresh)) + words.OneOrMany(fresh, " note has", " notes have") + " something new for you"
	}
	switch {
	case !in.Coached && len(in.Notes)+len(in.Assignments) == 0:
		return "No coach yet. Invite one, or set yourself something to practise."
	case open == 0:
		return text + ", and nothing to practise."
	default:
		return text + fmt.Sprintf(", and %s to practise.", words.OneOrMany(open, "one thing", words.Spelled(open)+" things"))
	}
}

// sinceLede tells a coach how the pupil has played since the previous visit.
func sinceLede(in LessonsInput) string {
	var fresh []figures.ListedRound
	for _, r := range in.Rounds {
		if r.New && len(r.Round.Holes) > 0 {
			fresh = append(fresh, r)
		}
	}
	since := "Since you last looked, on " + in.Visit.Format("Monday 2 January")
	rounds := words.Spelled(len(fresh)) + words.OneOrMany(len(fresh), " round", " rounds")
	switch {
	case in.Visit.IsZero() && len(fresh) == 0:
		return "No round has been entered yet."
	case in.Visit.IsZero():
		return fmt.Sprintf("Your first look. Over the last %s: %s", words.OneOrMany(len(fresh), "round", rounds), summed(fresh))
	case len(fresh) == 0:
		return since + ": no new rounds."
	case in.Earlier && len(fresh) == len(in.Rounds):
		return fmt.Sprintf("%s: %s or more. Over the last %s: %s", since, rounds, words.Spelled(len(fresh)), summed(fresh))
	}
	var scores []string
	for _, r := range slices.Backward(fresh) {
		scores = append(scores, words.Score(r.Account.Score, len(r.Account.PickedUp()) > 0))
	}
	return fmt.Sprintf("%s: %s, %s. %s", since, rounds, words.List(scores), summed(fresh))
}

// summed says what some rounds lost, where most of it, and their doubles.
func summed(rounds []figures.ListedRound) string {
	var lost account.Split
	holes, doubles, compound := 0, 0, 0
	for _, r := range rounds {
		holes += len(r.Round.Holes)
		lost.Add(r.Account.Lost)
		doubles += len(r.Account.Doubles)
		compound += r.Account.Counts.Compound
	}
	worst := lost.Worst()
	per18 := lost.Total * 18 / float64(holes)
	text := fmt.Sprintf("%s over target for 18 holes, the largest part %s", words.StrokeCount(per18), words.Where(worst))
	switch {
	case per18 <= -.05:
		text = words.StrokeCount(-per18) + " under target for 18 holes"
	case per18 < .05:
		text = "Level with the target"
	}
	return text + "; " + doublesWords(doubles, compound) + "."
}

// doublesWords counts doubles, and how many of them are compound.
func doublesWords(doubles, compound int) string {
	if doubles == 0 {
		return "no doubles"
	}
	which := words.Spelled(compound)
	switch {
	case doubles == 1:
		return "one " + words.OneOrMany(compound, "compound double", "double, not compound")
	case compound == 0:
		which = "none"
	case compound == doubles:
		which = "all"
	}
	return fmt.Sprintf("%s doubles, %s compound", words.Spelled(doubles), which)
}
