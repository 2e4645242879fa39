package coach

import (
	"fmt"
	"slices"
	"strings"

	"strokeledger/analysis/golf"
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

// sinceLede tells a coach what the pupil entered since the previous visit, and how
// the latest rounds went; since is the first day that the coach sees.
func sinceLede(in LessonsInput, since golf.Date) string {
	late := figures.Late(in.Rounds)
	text := figures.Lately(in.Rounds, in.Name, "")
	if text != "" {
		text = strings.TrimSuffix(text, ".") + "; " + doublesOf(late) + "."
	}
	entered := slices.ContainsFunc(in.Rounds, func(r figures.ListedRound) bool { return len(r.Round.Holes) > 0 })
	switch {
	case !entered:
		return words.NoRounds(in.Name, since)
	case in.Visit.IsZero():
		return strings.TrimSpace("Your first look. " + text)
	default:
		return strings.TrimSpace(fmt.Sprintf("Since you last looked, on %s, %s %s. %s", in.Visit.Format("Monday 2 January"), in.Name, sinceThen(in), text))
	}
}

// sinceThen says which rounds the pupil entered since the previous visit, with their
// scores, and how many others were corrected.
func sinceThen(in LessonsInput) string {
	var scores []string
	corrected, all := 0, true
	for _, r := range slices.Backward(in.Rounds) {
		corrected += words.Tally(r.New == figures.Corrected)
		all = all && r.New == figures.Entered
		if r.New == figures.Entered && len(r.Round.Holes) > 0 {
			scores = append(scores, words.Score(r.Account.Score, len(r.Account.PickedUp()) > 0)+words.OnHoles(len(r.Round.Holes)))
		}
	}
	text := "entered " + words.SpelledPlural(len(scores), "round", "rounds")
	switch {
	case len(scores) == 0:
		text = "entered no new rounds"
	case all && in.Earlier:
		text += " or more"
	default:
		text += ", " + words.List(scores)
	}
	if corrected > 0 {
		text += fmt.Sprintf(", and corrected %s", words.OneOrMany(corrected, "one", words.Spelled(corrected)))
	}
	return text
}

// doublesOf counts the doubles of some rounds.
func doublesOf(rounds []figures.ListedRound) string {
	doubles, compound := 0, 0
	for _, r := range rounds {
		doubles += len(r.Account.Doubles)
		compound += r.Account.Counts.Compound
	}
	return doublesWords(doubles, compound)
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
