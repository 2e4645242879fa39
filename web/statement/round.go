package statement

import (
	"fmt"
	"math"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// RoundPage is the statement of a round. While no hole is entered, only its head
// and its links are filled in. Amounts are strokes, signed, with one decimal.
type RoundPage struct {
	layout.Page
	Heading    string // the day
	At         string // whose it is, for a coach; course, tees, par and length
	Lede       string // the round in a sentence
	Conditions string // weather and greens, for a coach; empty for none and for the player
	Left       string // how many holes are still to be entered; empty for none and for a coach
	Empty      bool   // no hole is entered

	Opening   string            // names the first line, the target
	Target    string            // strokes expected of the golfer compared with, unsigned
	Axis      components.Axis   // over the bars of every line
	Lines     []Line            // from the target to the score
	LineNotes []string          // what the lines of the parts do not say
	Practise  []components.Link // to the plan, from every part that lost strokes
	Strokes   []StrokeCount     // that the score is made of
	Lost      string            // sum of the lines
	Score     string            // a whole number, in brackets after a hole was picked up

	Nines     []Nine                // the card, nine by nine
	Counts    string                // fairways, greens, putts, up and downs; empty when no shot is known
	Doubles   []figures.DoubleStory // one a double
	Trouble   Trouble               // links to the doubles
	Verdict   string                // what errors that followed errors cost; empty for nothing
	Without   string                // the score without that cost; empty for nothing
	Missed    []MissedPutt          // in a table; none when there are few
	MissedFew []MissedPutt          // in a sentence; none when there are more
	Holes     []HoleLine
	Workings  []figures.Voucher // on paper, of the lines and of the shots that made doubles

	Checks          []NineCheck        // the nines whose score the card can check; none for a coach
	Agrees          string             // says that the card agrees with the holes; empty when it does not, or is not known
	CardFirst       bool               // the nines are asked for at the top of the page
	ConditionsField components.Field   // weather and greens, to edit
	NinesWrong      components.Summary // what is wrong with the nines of a form that came back
	ConditionsWrong components.Summary // what is wrong with its conditions
	CardOpen        bool               // the nines are shown open: one does not agree, or the form came back
	ConditionsOpen  bool               // the conditions are shown open: the form came back

	Notes      []notes.Card // notes on the round, open questions first
	NotesFirst bool         // they stand at the top: one is new or waits for an answer, or one is being written
	Write      NoteForm
	CanWrite   bool                  // the player has a coach, or a coach reads
	Practice   *figures.PracticeForm // where a coach sets something to practise; nil to the player

	Enter    string // address of the next hole to enter
	Details  string // address that edits day, course and target; empty for a coach
	Remove   string // address that removes the round; empty for a coach
	Card     string // address of the round as a card to fold; empty for a coach
	Plan     string // address that compares the round with the plan of its course; empty when no hole of that is drawn
	SaveCard string // address that saves nines and conditions

	printed map[string]float64 // the amounts of the lines, by name
}

// RoundInput is what a statement is made of.
type RoundInput struct {
	ID          golf.RoundID
	Whose       paths.Whose
	Of          string          // the player's name, for a coach; empty for the player
	Round       golf.Round      // the holes entered
	Card        []golf.CardHole // every hole of the round, entered or not
	First       int             // number of the hole at which the round began; 0 for the first of the card
	Account     account.Account // of the holes entered; zero when there are none
	Target      float64         // strokes over 18 holes
	Level       float64         // of the golfer who averages the target on this course
	Bounds      golf.Distance   // within which a shot belongs to the short game
	Units       form.Units      // of who reads the page
	Today       golf.Date       // where the reader is
	Conditions  string          // weather and greens, in the player's words
	Nines       [2]int          // scores of the nines on the paper card, 0 when not given
	EnteredBy   string          // name of the coach who entered it; empty for the player
	Plan        string          // where it is compared with the plan of its course; empty when no hole of that is drawn
	JustEntered bool            // the last hole was saved a moment ago
	Notes       []notes.Note    // on the round, that the reader may see
	Phrases     []notes.Phrase  // of the coach who reads; none to the player
	Coached     bool            // a coach has access, or reads
	On          string          // hole, or hole and shot, that a note is to be about
	Returned    form.Returned   // a form of the page that came back
}

// NewRoundPage makes the statement of a round, for its player or for a coach.
func NewRoundPage(page layout.Page, in RoundInput) RoundPage {
	page.Title = "Statement of " + words.LongDay(in.Round.Date)
	page.BodyClass = "statement-page"
	page.Here, page.Explained = layout.Here(in.Whose, paths.Rounds), "strokes"
	s := RoundPage{Page: page, Heading: "Statement, " + words.LongDay(in.Round.Date), At: place(in), Enter: paths.Hole(in.ID, nextHole(in)), Remove: paths.RemoveRound(in.ID), Card: paths.Card(in.ID), Details: paths.Details(in.ID)}
	if in.Of != "" {
		s.At, s.Remove, s.Details, s.Card, s.Conditions = in.Of+". "+s.At, "", "", "", in.Conditions
	}
	if left := len(in.Card) - len(in.Round.Holes); left > 0 && in.Of == "" {
		s.Left = words.Plural(left, "hole", "holes") + " still to enter."
	}
	if len(in.Round.Holes) == 0 {
		s.Empty, s.Card = true, ""
		s.Lede = "No hole of this round has been entered yet."
		return s
	}
	s.Foot = fmt.Sprintf("Target here: the golfer compared with averages exactly %s on the holes played, so the lines add up to the score; on the reference course that is %s golfer. Tenths are shared out so that what is printed adds up. Doubles are judged by a fixed %s golfer. Expected strokes depend on distance and lie, not on slope, wind or the height of the rough.",
		words.Plain(in.Account.Expected-in.Account.Lost.Course), words.A(in.Level), words.Plain(in.Target))
	if len(in.Account.PickedUp()) > 0 {
		s.Foot += " A score in brackets has a hole that was picked up: it counts what was still to come, rounded."
	}
	if len(in.Card) > len(in.Round.Holes) {
		s.Foot += " While holes are missing, the pages of the holes compare with the target of the whole card, so the same shot may read a little differently there."
	}
	s.notes(in)
	if !in.Whose.Own {
		f := figures.NewPracticeForm(figures.PracticeFormInput{Whose: in.Whose, Boundary: in.Bounds, Units: in.Units, Today: in.Today, Round: in.ID})
		s.Practice = &f
	}
	s.Plan = in.Plan
	printed := s.lines(in)
	s.printed, s.LineNotes = printed, lineNotes(in)
	s.Practise = practise(in, printed)
	s.Lede = lede(in, printed)
	amounts := newHoleAmounts(in.Account.Holes, holesTotal(printed))
	s.Nines = nines(in, amounts, printed)
	s.doubles(in)
	s.Holes = holeLines(in, amounts)
	s.Workings = s.workings()
	s.checks(in)
	s.Counts = countsLine(in.Account.Counts, len(in.Round.Holes))
	s.Trouble = trouble(in)
	if len(s.Trouble.Doubles) > 0 {
		s.Script = "walk.js"
	}
	return s
}

// workings are those of the lines and of the shots that made a double.
func (s *RoundPage) workings() []figures.Voucher {
	var all []figures.Voucher
	for _, l := range s.Lines {
		if l.Working != "" {
			all = append(all, figures.Voucher{Name: l.Name, Working: l.Working})
		}
	}
	for _, h := range s.Holes {
		for _, shot := range h.Shots {
			if shot.Tag != "" {
				all = append(all, figures.Voucher{Name: fmt.Sprintf("Hole %s, shot %s", h.Number, shot.Number), Working: shot.Working})
			}
		}
	}
	return all
}

// place says where the round was played.
func place(in RoundInput) string {
	yards, par := 0.0, 0
	for _, h := range in.Card {
		yards += math.Round(in.Units.Far.In(h.Length)) // as the card prints it
		par += h.Par
	}
	at := in.Round.Course
	if in.Round.Tee != "" {
		at += ", " + in.Round.Tee + " tees"
	}
	at = fmt.Sprintf("%s, par %d, %s", at, par, words.TotalLength(in.Units.Far.Of(yards), in.Units))
	if in.EnteredBy != "" {
		at += ". Entered by " + in.EnteredBy
	}
	return at
}
