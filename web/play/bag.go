package play

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"strokeledger/analysis/aim"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// Bag is the clubs that a player hits from a tee, with what came of balls on the range.
type Bag struct {
	Clubs    []BagClub
	Sessions []Session // the latest first
}

// BagClub is a club with what the player says of it, in yards.
type BagClub struct {
	Name   string
	Length float64 // 0 when it follows from the level
	Bend   float64 // beside the aim; left is negative
}

// Session is balls hit on the range with one club.
type Session struct {
	ID    int64
	Club  string
	Day   golf.Date
	Balls string // as typed
}

// Balls are the balls that count for a club: those of all its sessions, the latest
// first, as many as a session may have.
func (b Bag) Balls(club string) []aim.Ball {
	var all []aim.Ball
	for _, s := range b.Sessions {
		if strings.EqualFold(s.Club, club) {
			balls, _ := aim.ParseBalls(s.Balls) // what is kept was read before
			all = append(all, balls...)
		}
	}
	return all[:min(len(all), aim.MaxBalls)]
}

// Shape is by how many yards a club's ball ends beside its aim, as the player says.
// Where balls were entered they say it, and this is 0.
func (b Bag) Shape(club string) float64 {
	if len(b.Balls(club)) >= aim.MinBalls {
		return 0
	}
	for _, c := range b.Clubs {
		if strings.EqualFold(c.Name, club) {
			return c.Bend
		}
	}
	return 0
}

// TeeClubs are the clubs of a bag, with the lengths of the level where the bag has
// none; those of the level when the bag is empty. A club of unknown length is left out.
func TeeClubs(level []aim.Club, bag Bag) []aim.Club {
	var all []aim.Club
	for _, c := range bag.Clubs {
		club := aim.Club{Name: strings.ToLower(c.Name), Length: c.Length, Own: c.Length > 0}
		if i := slices.IndexFunc(level, func(l aim.Club) bool { return strings.EqualFold(l.Name, c.Name) }); i >= 0 && !club.Own {
			club.Length = level[i].Length
		}
		if club.Length > 0 {
			all = append(all, club)
		}
	}
	if len(all) == 0 {
		all = slices.Clone(level)
	}
	slices.SortStableFunc(all, func(a, b aim.Club) int { return cmp.Compare(b.Length, a.Length) })
	return all
}

// ReadSession reads the balls of a session, or says what is wrong with them.
func ReadSession(text string) (balls int, faults []string) {
	all, said := aim.ParseBalls(text)
	for _, f := range said {
		faults = append(faults, sentence(f.String()))
	}
	if len(faults) == 0 && len(all) < aim.MinBalls {
		faults = []string{fmt.Sprintf("%s: it takes at least %d to show a pattern.", capital(words.SpelledPlural(len(all), "ball", "balls")), aim.MinBalls)}
	}
	return len(all), faults
}

// BagInput is what the page of a bag is made of.
type BagInput struct {
	Whose    paths.Whose
	Player   string // the player's name, for a coach
	Level    []aim.Club
	Clubs    []aim.Club // as they are used, with their patterns
	Sessions []Session
	Form     form.Bag
	Range    form.Range
	BallSaid []string // what is wrong with the balls
	Unit     golf.Unit
}

// BagPage is the clubs of a player.
type BagPage struct {
	layout.Page
	Heading  string
	Lede     string
	Sub      []components.Link
	Own      bool
	Summary  components.Summary
	Save     string
	Unit     string
	Rows     []BagFields
	Used     []UsedClub
	Range    string
	Club     components.Field
	Choices  []components.Choice
	Day      components.Field
	Balls    components.Area
	Sessions []SessionRow
}

// BagFields are the fields of one club.
type BagFields struct {
	Club, Length, Bend components.Field
	Side               components.Field
	Sides              []components.Choice
}

// UsedClub is a club as plans use it.
type UsedClub struct{ Name, Length, From, Pattern string }

// SessionRow is a session that was entered.
type SessionRow struct {
	Text   string
	Remove string
}

// NewBagPage makes the page.
func NewBagPage(page layout.Page, in BagInput) BagPage {
	page.Title, page.Here = "Bag", layout.Here(in.Whose, in.Whose.Play())
	page.Explained = "aims"
	page.Foot = "A club uses the level’s usual pattern until balls from the range are entered. Ten give a rough idea, thirty a good one. Lengths from the level: a fairway wood is 0.92 of the driver, a hybrid 0.86, a long iron 0.8 (common practice)."
	p := BagPage{Page: page, Heading: "Bag", Own: in.Whose.Own, Save: in.Whose.Bag(), Range: in.Whose.Range(), Unit: in.Unit.String(),
		Lede: "Clubs for the tee, and where their balls end.", Sub: []components.Link{{Name: "Courses to play", At: in.Whose.Play()}}}
	if !in.Whose.Own {
		p.Heading = "Bag of " + in.Player
	}
	m := measure{in.Unit}
	for _, c := range in.Clubs {
		p.Used = append(p.Used, usedClub(m, c))
	}
	p.rows(m, in)
	p.session(in)
	return p
}

func usedClub(m measure, c aim.Club) UsedClub {
	u := UsedClub{Name: capital(c.Name), Length: m.distance(c.Length), From: "from the level", Pattern: "As the level’s"}
	if c.Own {
		u.From = "own"
	}
	if p := c.Pattern; p.Known() {
		u.Pattern = fmt.Sprintf("%s of the aim, %s; %.1f times as wide as the level", biasWords(m, p.Side), biasSure(p), p.Wide)
		if p.Balls > 0 {
			u.Pattern = fmt.Sprintf("%s: %s", balls(p.Balls), u.Pattern)
		}
	} else if c.Pattern.Side != 0 {
		u.Pattern = "As the level’s, " + m.side(c.Pattern.Side) + " of the aim"
	}
	return u
}

func (p *BagPage) rows(m measure, in BagInput) {
	for i, r := range in.Form.Rows {
		n := i + 1
		of := func(name, label string) components.Field {
			return components.Field{Name: form.BagField(name, n), Label: fmt.Sprintf("%s, row %d", label, n)}
		}
		f := BagFields{Club: components.Filled(of("club", "Club"), r.Club), Length: components.Filled(of("length", "Length, "+p.Unit), r.Length),
			Bend: components.Filled(of("bend", "Ends beside the aim, "+p.Unit), r.Bend), Side: components.Filled(of("side", "Which side"), r.Side)}
		f.Club.List, f.Length.Mode, f.Bend.Mode = "tee-clubs", "decimal", "decimal"
		for _, side := range []string{"", "left", "right"} {
			f.Sides = append(f.Sides, components.Choice{Value: side, Name: side, Chosen: side == r.Side.Value})
		}
		f.Sides[0].Name = "straight"
		for _, field := range []components.Field{f.Club, f.Length, f.Bend, f.Side} {
			p.Summary.Add(field.Key(), field.Label, field.Problem)
		}
		p.Rows = append(p.Rows, f)
	}
}

func (p *BagPage) session(in BagInput) {
	p.Club = components.Filled(components.Field{Name: "range_club", Label: "Club"}, in.Range.Club)
	for _, c := range in.Clubs {
		p.Choices = append(p.Choices, components.Choice{Value: c.Name, Name: capital(c.Name), Chosen: c.Name == in.Range.Club.Value})
	}
	p.Day = components.Filled(components.Field{Name: "day", Label: "Day", Type: "date"}, in.Range.Day)
	p.Balls = components.FilledArea(components.Area{Name: "balls", ID: "balls", Label: "Balls, one a line",
		Hint: "Yards left or right of the aim, then short or long, such as “8 left, 3 long” or “−8 3”. All at one aim, ten or more, bad ones too."}, in.Range.Balls)
	if len(in.BallSaid) > 0 {
		p.Balls.Problem = strings.Join(in.BallSaid, " ")
	}
	for _, f := range []components.Field{p.Club, p.Day, p.Balls.Field()} {
		p.Summary.Add(f.Key(), f.Label, f.Problem)
	}
	for _, s := range in.Sessions {
		n, _ := ReadSession(s.Balls)
		p.Sessions = append(p.Sessions, SessionRow{fmt.Sprintf("%s, %s, %s", words.ShortDay(s.Day), s.Club, balls(n)), in.Whose.RemoveRange(s.ID)})
	}
}

// FormOf is the form of a bag as it is kept: its clubs, or those of the level without
// lengths.
func FormOf(bag Bag, level []aim.Club, unit golf.Unit) form.Bag {
	clubs := bag.Clubs
	if len(clubs) == 0 {
		for _, c := range level {
			clubs = append(clubs, BagClub{Name: c.Name})
		}
	}
	var f form.Bag
	for i, c := range clubs[:min(len(clubs), form.BagRows)] {
		f.Rows[i] = form.BagRowOf(c.Name, c.Length, c.Bend, unit)
	}
	return f
}
