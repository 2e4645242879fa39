package form

import (
	"fmt"
	"net/mail"
	"net/url"
	"strings"

	"strokeledger/analysis/golf"
)

// Settings are the settings of an account.
type Settings struct {
	Name       Text   // that others see
	Target     Number // score of 18 holes
	Boundary   Number // yards from the hole at which the short game begins
	Far, Green Unit   // of distances off the green and on it
	Clubs      Text   // of the bag, with a space between them
	Zone       Text   // name of a time zone; empty for the server's
	Minutes    Whole  // of practice a week; 0 to leave them as they are
}

// ParseSettings reads the settings of an account.
func ParseSettings(v url.Values) Settings {
	return Settings{
		Name:     personName(v.Get("name")),
		Target:   ParseTarget(v.Get("target")),
		Boundary: ParseNumber(v.Get("boundary"), golf.MinBoundary.Yards(), golf.MaxBoundary.Yards()),
		Far:      farUnit(v.Get("far")),
		Green:    greenUnit(v.Get("green")),
		Clubs:    clubs(v.Get("clubs")),
		Zone:     ParseZone(v.Get("zone")),
		Minutes:  optional(v.Get("minutes"), practiceMinutes),
	}
}

// practiceMinutes reads how many minutes a week a player practises.
func practiceMinutes(text string) Whole {
	f := ParseWhole(text, golf.MinWeek, golf.MaxMinutes)
	if f.Value%golf.WeekStep != 0 {
		f.Problem = "not in fives"
	}
	return f.saying(fmt.Sprintf("Allowed: %d to %d, in steps of %d.", golf.MinWeek, golf.MaxMinutes, golf.WeekStep))
}

// Sound reports whether nothing is wrong with the form.
func (s Settings) Sound() bool {
	return sound(s.Name, s.Target, s.Boundary, s.Far, s.Green, s.Clubs, s.Zone, s.Minutes)
}

// FirstSettings are what a new player is asked for.
type FirstSettings struct {
	Target     Number // score of 18 holes
	Far, Green Unit   // of distances off the green and on it
	Zone       Text   // name of a time zone; empty for the server's
}

// ParseFirstSettings reads what a new player is asked for.
func ParseFirstSettings(v url.Values) FirstSettings {
	return FirstSettings{ParseTarget(v.Get("target")), farUnit(v.Get("far")), greenUnit(v.Get("green")), ParseZone(v.Get("zone"))}
}

// Sound reports whether nothing is wrong with the form.
func (s FirstSettings) Sound() bool { return sound(s.Target, s.Far, s.Green, s.Zone) }

// Join is the form that makes an account. Its password is not shown again, so
// the text of that field is empty.
type Join struct {
	Token       string // of the invitation, or of the setup
	TokenWrong  string // what is wrong with it
	Name, Email Text   // of the new account; the name is what others see
	Password    Text   // only what is wrong with it
}

// ParseJoin reads the form that makes an account, but for its password.
func ParseJoin(v url.Values) Join {
	return Join{Token: v.Get("token"), Name: personName(v.Get("name")), Email: email(v.Get("email"))}
}

// Sound reports whether nothing is wrong with the form.
func (j Join) Sound() bool { return j.TokenWrong == "" && sound(j.Name, j.Email, j.Password) }

// personName reads the name of an account.
func personName(text string) Text {
	return ParseName(text, golf.MaxName).saying("Allowed: 1 to 80 characters, each of which can be seen.")
}

// clubs reads the clubs of a bag and puts one space between them.
func clubs(text string) Text {
	f := ParseText(strings.Join(strings.Fields(text), " "), golf.MaxClubs)
	if strings.Contains(f.Text, clubSign) || !f.Sound() {
		return refused[string](f.Text, "Allowed: at most 200 characters, each of which can be seen, without a slash.")
	}
	return f
}

// email reads the address of a person.
func email(text string) Text {
	text = strings.TrimSpace(text)
	at, err := mail.ParseAddress(text)
	if err != nil || at.Address != text || len(text) > golf.MaxAddress {
		return refused[string](text, "Not an address. Allowed: one as in name@example.org.")
	}
	return TextOf(text)
}
