package paths

import (
	"net/url"

	"strokeledger/analysis/golf"
)

// SquadSheet is the sheet of a group lesson.
const SquadSheet = "/coaching/squad/sheet"

// SquadOf is the pupils of a coach's group side by side; without a name, where a coach
// chooses who comes.
func SquadOf(group string) string {
	if group == "" {
		return Squad
	}
	return Squad + "?" + url.Values{"group": {group}}.Encode()
}

// SquadChoice says who comes to a group lesson, over which days, and what it is about,
// as an address holds it.
type SquadChoice struct{ chosen url.Values }

// SquadChosen are the choices that an address makes.
func SquadChosen(query url.Values) SquadChoice {
	kept := url.Values{}
	for _, name := range []string{"from", "to", "pupil", "group", "who", "row"} {
		if given, found := query[name]; found {
			kept[name] = given
		}
	}
	return SquadChoice{kept}
}

// Everybody is the same with everybody who is not archived.
func (s SquadChoice) Everybody() SquadChoice { return s.with("who", "all").with("pupil").with("group") }

// Of is the same with some pupils.
func (s SquadChoice) Of(pupils []golf.PlayerID) SquadChoice {
	var all []string
	for _, id := range pupils {
		all = append(all, number(int64(id)))
	}
	return s.with("pupil", all...).with("who").with("group")
}

// In is the same with the pupils of a group.
func (s SquadChoice) In(group string) SquadChoice {
	return s.with("group", group).with("pupil").with("who")
}

// About is the same about a part of the game or a band, as compare.Row is written.
func (s SquadChoice) About(row string) SquadChoice { return s.with("row", row) }

// Shared is the same about whatever they share.
func (s SquadChoice) Shared() SquadChoice { return s.with("row") }

// with is the same with another choice of one kind; none takes it away.
func (s SquadChoice) with(name string, values ...string) SquadChoice {
	kept := url.Values{}
	for k, v := range s.chosen {
		kept[k] = v
	}
	delete(kept, name)
	if len(values) > 0 {
		kept[name] = values
	}
	return SquadChoice{kept}
}

// Page shows them side by side.
func (s SquadChoice) Page() string { return s.at(Squad) }

// File is the same as a file.
func (s SquadChoice) File() string { return s.Shared().at(SquadCSV) }

// Sheet is what they practise together, on paper.
func (s SquadChoice) Sheet() string { return s.at(SquadSheet) }

func (s SquadChoice) at(page string) string {
	if len(s.chosen) == 0 {
		return page
	}
	return page + "?" + s.chosen.Encode()
}
