package statement

import (
	"strokeledger/analysis/golf"
	"strokeledger/web/figures"
	"strokeledger/web/words"
)

// roundsLede says how the latest rounds went, or why there is none; since is the
// first day that a coach sees.
func roundsLede(in RoundsInput, narrowed bool, since golf.Date) string {
	switch {
	case len(in.Rounds) == 0 && narrowed:
		return "No rounds on that course in those months."
	case len(in.Rounds) == 0 && !in.Narrow.Before.IsZero():
		return "No rounds before " + in.Narrow.Before.Time().Format("January 2006") + "."
	case len(in.Rounds) == 0 && !in.Whose.Own:
		return words.NoRounds(in.Name, since)
	case len(in.Rounds) == 0:
		return "No rounds yet. Enter the first one from its card and your notes."
	case !in.Narrow.Before.IsZero():
		return "Rounds before " + in.Narrow.Before.Time().Format("January 2006") + "."
	}
	return lately(in, narrowed)
}

// lately says how the latest rounds with shots went.
func lately(in RoundsInput, narrowed bool) string {
	whose, among := in.Name, ""
	if in.Whose.Own {
		whose = ""
	}
	if narrowed {
		among = " of these"
	}
	if said := figures.Lately(in.Rounds, whose, among); said != "" {
		return said
	}
	return words.Plural(len(in.Rounds), "round", "rounds") + ". No shots have been entered yet."
}
