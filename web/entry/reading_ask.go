package entry

import (
	"strconv"
	"strings"

	"strokeledger/analysis/account"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

// Ask holds questions about unlikely shots. The player changes the line or saves
// it anyway.
type Ask struct {
	Questions []string // in the order of the line, at least one
	Change    string   // button that goes back to the word of the first question: “Change f420”
	Start     string   // where that word starts in the line, in UTF-16 units; empty if the question is about the whole line
	End       string   // where it ends
}

// Conflict shows the player's line beside the one that another window saved.
type Conflict struct {
	Mine        []Differing // words of the player's line
	Theirs      []Differing // words of the saved line
	MineScore   string      // score of the player's line; empty while it cannot be read
	TheirsScore string      // score of the saved line
}

// Differing is a word of one of two lines.
type Differing struct {
	Word string
	Mark bool // the other line has something else here
}

// newAsk collects the questions of a line, nil for none. Questions about its end
// come only with all.
func newAsk(l form.Line, all bool) *Ask {
	a := &Ask{Change: "Change the line"}
	for _, q := range l.Questions {
		if q.End && !all {
			continue
		}
		if len(a.Questions) == 0 && q.Item >= 0 && q.Item < len(l.Items) {
			item := l.Items[q.Item]
			a.Change = "Change " + item.Text
			a.Start, a.End = itemPlace(l.Text, item)
		}
		a.Questions = append(a.Questions, q.Text)
	}
	if len(a.Questions) == 0 {
		return nil
	}
	return a
}

// newConflict marks what lies between the words that both lines begin and end
// with.
func newConflict(in ReadingInput) *Conflict {
	mine, theirs := strings.Fields(in.Line.Text), strings.Fields(in.Conflict.Text)
	head := 0
	for head < min(len(mine), len(theirs)) && mine[head] == theirs[head] {
		head++
	}
	tail := 0
	for tail < min(len(mine), len(theirs))-head && mine[len(mine)-1-tail] == theirs[len(theirs)-1-tail] {
		tail++
	}
	differing := func(words []string) []Differing {
		var all []Differing
		for i, w := range words {
			all = append(all, Differing{w, i >= head && i < len(words)-tail})
		}
		return all
	}
	return &Conflict{Mine: differing(mine), Theirs: differing(theirs), MineScore: scoreSaid(in.Line, in.Account), TheirsScore: scoreSaid(*in.Conflict, account.Account{})}
}

// scoreSaid is the score of a line, empty while it cannot be read.
func scoreSaid(l form.Line, of account.Account) string {
	if !l.Sound() {
		return ""
	}
	if l.Hole.PickedUp {
		if len(of.Holes) != 1 {
			return "" // the length of the hole is not known, so neither is what was still to come
		}
		return words.Score(float64(of.Holes[0].Whole), true)
	}
	return strconv.Itoa(max(l.Hole.Strokes(), 1))
}
