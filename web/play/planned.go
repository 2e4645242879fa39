package play

import (
	"fmt"
	"math"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// PlannedInput is what a round is set beside its plan with.
type PlannedInput struct {
	RoundInput
	ID    golf.RoundID
	Round golf.Round // the holes entered
}

// PlannedPage sets what was planned off the tee against what was played.
type PlannedPage struct {
	layout.Page
	Heading  string
	At       string
	Lede     string
	Thin     string
	Progress string // how far it is, while it is worked out; empty when it is done
	Sub      []components.Link
	Rows     []PlannedRow // of the holes where the plan matters
	Cost     string       // of leaving the plan, together; empty where it was nowhere left
	Asides   []string     // what was left out, and why
	Draw     string       // where holes are drawn; empty where one is
}

// PlannedRow is a hole where the plan matters.
type PlannedRow struct {
	Number, At    string
	Club, Aim     string // of the plan
	Played        string // the club; empty where it is not known
	Said          string // of what was played
	Enter         components.Link
	Cost          string // on average; empty where none is known
	Left, Unknown bool
}

// cardsApart is by how much a hole may be longer or shorter than on today's card to be
// taken for the hole that the plan is made for.
const cardsApart = 10 * golf.Yard

// NewPlannedPage makes the page.
func NewPlannedPage(page layout.Page, in PlannedInput) PlannedPage {
	day := words.ShortDay(in.Round.Date)
	page.Title, page.Here = "Planned and played, "+day, layout.Here(in.Whose, in.Whose.Play())
	page.Explained = "aims"
	page.Foot = "A cost is how many more strokes the club that was played takes on average, aimed down the middle, than the plan’s club and aim. It does not depend on where this ball finished. The aim that was taken is not recorded."
	p := PlannedPage{Page: page, Heading: "Planned and played, " + in.Name, Thin: thinAs(in.As, in.Target), Sub: append([]components.Link{{Name: "Statement", At: in.Whose.Round(in.ID)}}, subLinks(in.Whose, in.Course, "")...)}
	p.At = fmt.Sprintf("Round of %s. The plan is today’s. %s", day, asWords(in.Whose, in.Player, in.As))
	if in.Drawn == 0 {
		p.Thin, p.Draw, p.Lede = "", paths.Pictures(in.Course), "No hole of this course is drawn yet, so there is no plan to compare with."
		return p
	}
	if len(in.Plans) < in.Drawn {
		p.Progress = fmt.Sprintf("%d of %d drawn holes are worked out. The page updates by itself.", len(in.Plans), in.Drawn)
	}
	p.rows(in)
	return p
}

// rows are the holes where the plan matters, with the sentence about them.
func (p *PlannedPage) rows(in PlannedInput) {
	m := measure{in.Unit}
	var left []string
	others, compared, total := 0, 0, 0.0
	for _, h := range in.Round.Holes {
		plan, known := in.Plans[h.Number]
		switch {
		case !known || !counts(plan):
			continue
		case h.Par != plan.Hole.Par || math.Abs(float64(h.Length()-plan.Hole.Length)) > float64(cardsApart):
			others++
			continue
		}
		c := analysis.PlannedAndPlayed(plan, h)
		row := plannedRow(m, in, c)
		p.Rows = append(p.Rows, row)
		if c.Stands() == analysis.ClubKept || c.Stands() == analysis.ClubLeft {
			compared++
		}
		if row.Left {
			left = append(left, "the "+ordinal(h.Number))
			total += costOf(c)
		}
	}
	if len(left) > 0 {
		p.Cost = strokes(total)
	}
	if others > 0 {
		p.Asides = append(p.Asides, fmt.Sprintf("%s left out: par or length has changed since.", capital(words.SpelledPlural(others, "hole is", "holes are"))))
	}
	if p.Progress != "" {
		p.Lede = "The plan is being worked out, hole by hole."
		return
	}
	p.Lede = plannedLede(len(p.Rows), compared, left, total)
}

// costOf is what a club costs on average above the plan, as it is printed.
func costOf(c analysis.TeeChoice) float64 {
	return saved(c.With.Straight.Cost, c.Plan.Stands().Aim.Cost)
}

func plannedRow(m measure, in PlannedInput, c analysis.TeeChoice) PlannedRow {
	n := c.Plan.Hole.Number
	row := PlannedRow{Number: fmt.Sprint(n), At: in.Whose.HolePlan(in.Course, n, ""), Played: c.Club}
	club, where := aimed(m, c.Plan)
	row.Club, row.Aim = capital(club), where
	var said []string
	switch c.Stands() {
	case analysis.ClubUnknown:
		row.Unknown, said = true, append(said, "no club entered")
		if in.Whose.Own {
			row.Enter = components.Link{Name: "Enter the club", At: paths.Shots(in.ID, n)}
		}
	case analysis.ClubKept:
		said = append(said, "the plan’s club")
	case analysis.ClubLeft:
		row.Left, row.Cost = true, strokes(costOf(c))
		if !strings.EqualFold(c.With.Club.Name, c.Club) {
			said = append(said, "taken as the "+c.With.Club.Name)
		}
	case analysis.ClubUnpriced:
		said = append(said, "not among the clubs for the tee, so its cost is not known")
		row.Enter = components.Link{Name: "The bag", At: in.Whose.Bag()}
	case analysis.NoClubPlanned:
		if row.Unknown = c.Club == "" && c.Miss == (golf.Miss{}); row.Unknown {
			said = append(said, "nothing entered")
		}
	}
	if c.Miss != (golf.Miss{}) {
		said = append(said, "finished "+strings.ReplaceAll(c.Miss.String(), "-", " and "))
	}
	if len(said) > 0 {
		row.Said = capital(strings.Join(said, "; ")) + "."
	}
	return row
}

// plannedLede is the round against its plan in a sentence.
func plannedLede(rows, compared int, left []string, total float64) string {
	switch {
	case rows == 0:
		return "No hole of this round has a plan that matters: on the drawn ones any aim would do."
	case compared == 0:
		return fmt.Sprintf("The plan matters on %s of this round, but no club that it can be compared with was recorded off the tee.", words.SpelledPlural(rows, "hole", "holes"))
	case len(left) == 0:
		return fmt.Sprintf("The plan’s club was played on %s where the plan matters and the club is known.", allHoles(compared))
	case printedStep(total) == 0:
		return fmt.Sprintf("A different club from the plan’s was played on %s. On average that costs nothing.", words.List(left))
	case total < 0: // a coach's proposal stands there, and costs more than the club that was played
		return fmt.Sprintf("A different club from the plan’s was played on %s. On average that saves %s strokes.", words.List(left), strokes(-total))
	default:
		return fmt.Sprintf("A different club from the plan’s was played on %s. On average that costs %s strokes.", words.List(left), strokes(total))
	}
}

func allHoles(n int) string {
	switch n {
	case 1:
		return "the one hole"
	case 2:
		return "both holes"
	default:
		return "all " + words.Spelled(n) + " holes"
	}
}
