package analysis

import (
	"regexp"
	"slices"
	"strings"

	"strokeledger/analysis/aim"
	"strokeledger/analysis/golf"
)

// TeeChoice is what a player did off the tee of a hole, beside the plan of it. Which
// aim was taken is not known, so only the club is compared.
type TeeChoice struct {
	Plan HolePlan
	Club string       // as it was entered; empty where none was
	Miss golf.Miss    // where the ball finished against the target, as far as it was entered
	With *aim.TeeShot // what the plan knows of that club; nil where the club is none of those that were thought of
}

// Standing is how a tee shot stands to the plan.
type Standing uint8

// The ways to stand to a plan. The zero value is a hole of which no club is known.
const (
	ClubUnknown   Standing = iota
	ClubKept               // the plan's club
	ClubLeft               // another, whose cost is known
	ClubUnpriced           // another, of unknown length
	NoClubPlanned          // a par 3: the plan is an aim alone
)

// PlannedAndPlayed answers "was the plan of this hole kept off the tee?".
func PlannedAndPlayed(plan HolePlan, played golf.Hole) TeeChoice {
	c := TeeChoice{Plan: plan}
	if shots := played.Played(); len(shots) > 0 {
		c.Club, c.Miss = shots[0].Club, shots[0].Miss
	}
	if i := clubAmong(plan.Advice.Clubs, c.Club); i >= 0 {
		c.With = &plan.Advice.Clubs[i]
	}
	return c
}

// Stands says how the tee shot stands to the plan.
func (c TeeChoice) Stands() Standing {
	switch {
	case len(c.Plan.Advice.Clubs) == 0:
		return NoClubPlanned
	case shortClub(c.Club) == "":
		return ClubUnknown
	case c.With == nil:
		return ClubUnpriced
	case c.With.Club.Name == c.Plan.Stands().Club:
		return ClubKept
	default:
		return ClubLeft
	}
}

// numbered is a club with a number, however it is written: 3w, 3 wood, 5-iron.
var numbered = regexp.MustCompile(`^([1-9])(w|wood|h|hy|hybrid|i|iron)$`)

// shortClub is the name of a club without what people write differently: d for a
// driver, 3w for a 3 wood, 5i for a 5-iron.
func shortClub(name string) string {
	name = strings.NewReplacer(" ", "", "-", "").Replace(strings.ToLower(name))
	if m := numbered.FindStringSubmatch(name); m != nil {
		name = m[1] + m[2][:1]
	}
	switch name {
	case "d", "dr", "1w":
		return "driver"
	case "w", "wood", "fw":
		return "fairwaywood"
	case "h", "hy":
		return "hybrid"
	}
	return name
}

// kindOfClub is the kind to which a numbered club belongs; empty for an iron that is
// not long.
func kindOfClub(short string) string {
	switch {
	case len(short) != 2:
		return ""
	case short[1] == 'w':
		return "fairwaywood"
	case short[1] == 'h':
		return "hybrid"
	case short[1] == 'i' && short[0] <= '4':
		return "longiron"
	}
	return ""
}

// clubAmong finds the club that a player named among those of a plan: by its name, or
// else by its kind; -1 when it is none of them.
func clubAmong(all []aim.TeeShot, name string) int {
	short := shortClub(name)
	if short == "" {
		return -1
	}
	named := func(want string) int {
		return slices.IndexFunc(all, func(t aim.TeeShot) bool { return shortClub(t.Club.Name) == want })
	}
	if i := named(short); i >= 0 {
		return i
	}
	if kind := kindOfClub(short); kind != "" {
		return named(kind)
	}
	return -1
}
