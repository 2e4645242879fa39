package statement

import (
	"cmp"
	"fmt"
	"slices"

	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// FoldPage is a round on one A5 sheet that folds in the middle to a scorecard:
// the card outside, the account inside, and space for practice on the back.
type FoldPage struct {
	RoundPage
	Course   string
	Day      string
	Back     string // address of the statement
	Practice []PracticeSpace
}

// PracticeSpace is room for something to practise, with boxes to fill by pencil.
type PracticeSpace struct {
	Name  string     // the part of the game, with what it lost
	Boxes []struct{} // one a try
}

// practiceSpaces and practiceBoxes are how many fit on the back.
const (
	practiceSpaces = 3
	practiceBoxes  = 20
)

// NewFoldPage makes that sheet.
func NewFoldPage(page layout.Page, in RoundInput) FoldPage {
	page.BodyClass = "fold-page"
	in.Coached, in.Notes = false, nil
	f := FoldPage{RoundPage: NewRoundPage(page, in), Course: in.Round.Course, Day: words.LongDay(in.Round.Date), Back: paths.Round(in.ID)}
	f.Title, f.BodyClass, f.Script = "Card of "+f.Day, "fold-page", ""
	if !f.Empty {
		f.Practice = practiceOf(f.printed)
	}
	return f
}

// practiceOf leaves room for the parts of the game that lost most, and for
// something else where they do not fill the back.
func practiceOf(printed map[string]float64) []PracticeSpace {
	names := slices.DeleteFunc(slices.Clone(lineNames), func(name string) bool { return name == scoreOnly || printed[name] < worthNaming-.01 })
	slices.SortStableFunc(names, func(a, b string) int { return cmp.Compare(printed[b], printed[a]) })
	var all []PracticeSpace
	for i := range practiceSpaces {
		space := PracticeSpace{Name: "Something else", Boxes: make([]struct{}, practiceBoxes)}
		if i < len(names) {
			space.Name = fmt.Sprintf("%s, %.1f lost", names[i], printed[names[i]])
		}
		all = append(all, space)
	}
	return all
}
