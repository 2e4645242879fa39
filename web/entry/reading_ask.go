package entry

import (
	"strconv"
	"strings"

	"strokeledger/web/form"
)

// Ask is a question about something unlikely.
type Ask struct {
	Questions  []string
	Change     string // text of the button that leads back to the item
	Start, End string // place of that item
}

// Conflict sets what was typed beside what another window saved.
type Conflict struct {
	Mine, Theirs []Differing
	MineScore    string // empty while the line is not sound
	TheirsScore  string
}

// Differing is a word of a line, marked when the other line has another.
type Differing struct {
	Word string
	Mark bool
}

// newAsk is the questions of a line; those about its end are asked when it is
// saved.
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

func newConflict(q ReadingInput) *Conflict {
	mine, theirs := strings.Fields(q.Line.Text), strings.Fields(q.Conflict.Text)
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
	return &Conflict{Mine: differing(mine), Theirs: differing(theirs), MineScore: scoreSaid(q.Line), TheirsScore: scoreSaid(*q.Conflict)}
}

func scoreSaid(l form.Line) string {
	if !l.Sound() {
		return ""
	}
	return strconv.Itoa(max(l.Hole.Strokes(), 1))
}
