package analysis

import (
	"cmp"
	"slices"
	"strings"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/analysis/runout"
)

// RunOutInput is what a run-out book is made of.
type RunOutInput struct {
	Trials  []golf.Trial
	Chip    *golf.ChipAhead // what is to be played; nil for nothing
	History []golf.Played   // of the player, to know the level; needed for a chip only
	Target  float64         // the player's
}

// RunOut is a run-out book, and which club to take from it.
type RunOut struct {
	Pages []RunOutPage // fairway before rough, slow greens before fast
	Chip  ChipAnswer   // zero without a chip
}

// RunOutPage is what the book says from one lie on one kind of green.
type RunOutPage struct {
	Lie   golf.Lie
	Speed golf.GreenSpeed
	Clubs []RunOutClub // what runs farthest first
}

// RunOutClub is what the book says of a club.
type RunOutClub struct {
	Name   string // as it was first written
	Trials []int  // by their place in the input
	runout.Page
}

// UsualCarry is the carry in yards for which run-outs are told and compared.
const UsualCarry = 12.0

// Land is how far from the ball a club is landed on level ground to run to a hole
// so many yards away. ok is false where no trial comes near that.
func (c RunOutClub) Land(yd float64) (land float64, ok bool) {
	land = runout.Shot{Distance: yd, Slope: golf.LevelGround}.Land(c.Page)
	return land, land > 0 && c.Near(land)
}

// ChipAnswer is what every club of a page would do with a chip.
type ChipAnswer struct {
	Choices            []runout.Choice // the best first; empty when the book has no page for the chip
	ShortGame, Putting float64         // levels of the golfer who plays it
	Known              bool            // they come from rounds; otherwise they are the target
}

// RunOut answers "how far do my chips run, and where do I land the next one?". A
// target outside golf.MinTarget to golf.MaxTarget is an error; trials and chip must
// be ones that nothing is wrong with.
func (e *Engine) RunOut(in RunOutInput) (RunOut, error) {
	book := RunOut{Pages: runOutPages(in.Trials)}
	if in.Chip == nil {
		return book, nil
	}
	at := slices.IndexFunc(book.Pages, func(p RunOutPage) bool { return p.Lie == in.Chip.Lie && p.Speed == in.Chip.Speed })
	if at < 0 {
		return book, nil
	}
	err := e.answer(&book.Chip, in, book.Pages[at])
	return book, err
}

// answer works out what every club of a page would do.
func (e *Engine) answer(a *ChipAnswer, in RunOutInput, page RunOutPage) error {
	game, chosen, err := gameOf(PlanInput{History: in.History, Target: in.Target})
	if err != nil {
		return err
	}
	a.ShortGame, a.Putting, a.Known = in.Target, in.Target, len(chosen) >= practice.MinRounds
	if a.Known {
		a.ShortGame, a.Putting = game.Played[golf.ShortGame], game.Played[golf.Putting]
	}
	by, err := e.golfer.Striker(a.ShortGame)
	if err != nil {
		return err
	}
	off, err := expect.Level(a.ShortGame)
	if err != nil {
		return err
	}
	on, err := expect.Level(a.Putting)
	if err != nil {
		return err
	}
	var clubs []runout.Club
	for _, c := range page.Clubs {
		clubs = append(clubs, runout.Club{Name: c.Name, Page: c.Page})
	}
	shot := runout.Shot{Lie: in.Chip.Lie, Distance: in.Chip.Distance.Yards(), Green: in.Chip.Green.Yards(), Slope: in.Chip.Slope}
	a.Choices = shot.Choose(clubs, by, func(lie golf.Lie, yd float64) float64 {
		if lie == golf.Green {
			return on.Strokes(lie, golf.Distance(yd)*golf.Yard)
		}
		return off.Strokes(lie, golf.Distance(yd)*golf.Yard)
	})
	return nil
}

// runOutPages sorts trials into the pages of a book.
func runOutPages(trials []golf.Trial) []RunOutPage {
	var pages []RunOutPage
	for _, lie := range golf.TrialLies {
		for _, speed := range golf.GreenSpeeds {
			if clubs := runOutClubs(trials, lie, speed); len(clubs) > 0 {
				pages = append(pages, RunOutPage{lie, speed, clubs})
			}
		}
	}
	return pages
}

// RunBook answers "how far do this player's chips run from a lie?" for the rounds
// that are judged by it: a line for every club with runout.Enough trials from a lie,
// on greens of all speeds together, since a round does not say how fast its greens
// were.
func RunBook(trials []golf.Trial) golf.RunBook {
	var book golf.RunBook
	for _, lie := range golf.TrialLies {
		for _, c := range runOutClubs(trials, lie, golf.GreenSpeeds...) {
			if len(c.Trials) >= runout.Enough {
				book = append(book, c.RunLine(c.Name, lie))
			}
		}
	}
	return book
}

// runOutClubs are the clubs of a lie on greens of some speeds. A club is the same in
// any letter case.
func runOutClubs(trials []golf.Trial, lie golf.Lie, speeds ...golf.GreenSpeed) []RunOutClub {
	var clubs []RunOutClub
	for i, t := range trials {
		if t.Lie != lie || !slices.Contains(speeds, t.Speed) {
			continue
		}
		at := slices.IndexFunc(clubs, func(c RunOutClub) bool { return strings.EqualFold(c.Name, t.Club) })
		if at < 0 {
			at, clubs = len(clubs), append(clubs, RunOutClub{Name: t.Club})
		}
		clubs[at].Trials = append(clubs[at].Trials, i)
	}
	for i, c := range clubs {
		balls := make([]runout.Trial, len(c.Trials))
		for k, at := range c.Trials {
			balls[k].Carry, balls[k].Total = trials[at].Yards()
		}
		clubs[i].Page = runout.NewPage(balls)
	}
	slices.SortStableFunc(clubs, func(a, b RunOutClub) int { return cmp.Compare(b.Run(UsualCarry), a.Run(UsualCarry)) })
	return clubs
}
