package coach

import (
	"fmt"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/words"
)

// ShareList is where pupils lose more than is usual at their scores.
type ShareList struct {
	Aside string
	Rows  []ShareRow // what two share or more; of chosen pupils, also what one has alone
	Rest  string     // says what is folded away; empty for nothing
	Alone []ShareRow
	None  string // why there is no row; empty when there is one
}

// ShareRow is a part of the game, or a band of it.
type ShareRow struct {
	Whole bool   // it is a part of the game
	Name  string // of the part or the band
	Count string // how many pupils
	Who   []ShareName
	At    string // brings them together, or, of those who are chosen already, is their sheet
	Do    string // what that link is for
}

// ShareName is a pupil in a row.
type ShareName struct {
	Name   string
	Figure string // strokes for 18 holes beyond what is usual
	Clear  bool   // that is clear; otherwise it leans that way
}

// newShareList makes the list: to choose from while nobody is chosen.
func newShareList(in SquadInput) ShareList {
	choosing := in.Choosing()
	l := ShareList{Aside: "Strokes a round beyond what a golfer of the same score loses there. Bold is clear, the rest leans that way. Of a hundred pupils with nothing unusual, about four stand in a line by luck."}
	for _, r := range in.Shared.Rows {
		row := in.shareRow(r, choosing)
		if choosing && len(r.Who) == 1 {
			l.Alone = append(l.Alone, row)
		} else {
			l.Rows = append(l.Rows, row)
		}
	}
	if n := len(l.Alone); n > 0 {
		l.Rest = words.Plural(n, "line", "lines") + " with one pupil"
	}
	switch {
	case len(l.Rows) > 0:
	case in.Shared.Told == 0:
		l.None = fmt.Sprintf("It takes %s rounds of a pupil to say what is unusual.", words.Spelled(practice.MinRounds))
	case choosing:
		l.None = "No two pupils lose more than is usual for their scores in the same place."
	default:
		l.None = "None of them loses more than is usual for the score anywhere, beyond luck."
	}
	return l
}

// shareRow words a row.
func (in SquadInput) shareRow(r analysis.SharedRow, choosing bool) ShareRow {
	row := ShareRow{Whole: r.Whole(), Name: in.rowName(r), Count: words.Plural(len(r.Who), "pupil", "pupils")}
	var ids []golf.PlayerID
	for _, u := range r.Who {
		m := in.Members[u.Player]
		ids = append(ids, m.ID)
		row.Who = append(row.Who, ShareName{m.Name, words.Signed(u.Excess(), 1), u.Certainty() == practice.Clear})
	}
	if choosing {
		row.At, row.Do = in.At.Of(ids).About(r.Row.String()).Page(), words.OneOrMany(len(ids), "Choose this one", "Choose these "+words.Spelled(len(ids)))
	} else {
		row.At, row.Do = in.At.About(r.Row.String()).Sheet(), "Sheet about this"
	}
	return row
}

// rowName names a part of the game as a whole, or a band with its part.
func (in SquadInput) rowName(r analysis.SharedRow) string {
	if r.Whole() {
		return figures.RowName(r.Row, in.Units) + ", all of it"
	}
	return figures.RowName(r.Row, in.Units)
}

// lede says what most share, before anybody is chosen.
func (l ShareList) lede(in SquadInput) string {
	if len(l.Rows) == 0 {
		return "Who comes? Choose a group, or tick the pupils."
	}
	most := l.Rows[0]
	for _, r := range l.Rows {
		if len(r.Who) > len(most.Who) {
			most = r
		}
	}
	return fmt.Sprintf("Most shared: %s, where %s of %s pupils lose more than is usual for their scores.", lowerFirst(most.Name), words.Spelled(len(most.Who)), words.Spelled(in.Shared.Told))
}

// teams are the links that bring a group, or everybody, together.
func (s *SquadPage) teams(in SquadInput) {
	for _, name := range in.Groups {
		s.Teams = append(s.Teams, components.Link{Name: name, At: in.At.In(name).Page()})
	}
	if len(in.Members) > 0 {
		s.Teams = append(s.Teams, components.Link{Name: "Everybody", At: in.At.Everybody().Page(), Here: in.All})
	}
}
