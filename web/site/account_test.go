package site

import (
	"net/url"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
)

// chosen are the names of the chosen ones of a few.
func chosen(r components.Radios) (names []string) {
	for _, c := range r.All {
		if c.Chosen {
			names = append(names, c.Name)
		}
	}
	return names
}

func TestAccountPage(t *testing.T) {
	devices := []Device{{Name: "Safari on iPhone", Seen: "today 06:22", Token: "a1", This: true}}
	page := NewAccountPage(layout.Page{}, AccountInput{Devices: devices, Settings: form.Settings{Name: form.TextOf("Robin"), Target: form.NumberOf(79), Boundary: form.NumberOf(50),
		Far: form.ChoiceOf(golf.Metres), Green: form.ChoiceOf(golf.Feet), Clubs: form.TextOf("d 7i")}})
	want := []components.Field{
		{Name: "name", Label: "Name", Value: "Robin", Complete: "name"},
		{Name: "target", Label: "Target score", Value: "79", Mode: "decimal", Hint: "For 18 holes, 68 to 110. A round keeps the target it was started with."},
		{Name: "clubs", Label: "Clubs in your bag", Value: "d 7i", Hint: "Your names for them, with spaces between: d 3w 5i 6i pw. You can pick from these when you enter a club."},
		{Name: "boundary", Label: "Where the short game ends, in yards", Value: "50", Mode: "decimal", Hint: "30 to 100, usually 50."},
		{Name: "minutes", Label: "Minutes of practice a week", Mode: "numeric", Hint: "60 to 600, in steps of 5. Your practice plan shares them out."},
	}
	if diff := cmp.Diff(want, page.Settings); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{"metres"}, chosen(page.Far)); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{"feet"}, chosen(page.Green)); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(AccountWrong{}, page.Wrong); diff != "" {
		t.Error(diff)
	}
	for _, f := range append(page.Passwords, page.Delete) {
		if f.Type != "password" || f.Value != "" {
			t.Errorf("%+v", f)
		}
	}
}

// Each form of the page sums up its own problems.
func TestAccountPageProblems(t *testing.T) {
	for field, c := range map[string]struct {
		in   AccountInput
		want AccountWrong
	}{
		"target":   {AccountInput{Settings: form.Settings{Target: form.Number{Problem: "Wrong."}}}, AccountWrong{Settings: components.Summary{Heading: "Not saved yet: one thing to fix.", Links: []components.SummaryLink{{At: "#target", Text: "Target score: Wrong."}}}}},
		"far":      {AccountInput{Settings: form.Settings{Far: form.Unit{Problem: "Wrong."}}}, AccountWrong{Settings: components.Summary{Heading: "Not saved yet: one thing to fix.", Links: []components.SummaryLink{{At: "#far", Text: "Distances off the green: Wrong."}}}}},
		"password": {AccountInput{OldWrong: "Wrong."}, AccountWrong{Password: components.Summary{Heading: "The password was not changed.", Links: []components.SummaryLink{{At: "#password", Text: "Current password: Wrong."}}}}},
		"new":      {AccountInput{NewWrong: "Wrong."}, AccountWrong{Password: components.Summary{Heading: "The password was not changed.", Links: []components.SummaryLink{{At: "#new", Text: "New password: Wrong."}}}}},
		"confirm":  {AccountInput{DeleteWrong: "Wrong."}, AccountWrong{Delete: components.Summary{Heading: "The account was not deleted.", Links: []components.SummaryLink{{At: "#confirm", Text: "Password: Wrong."}}}}},
	} {
		page := NewAccountPage(layout.Page{}, c.in)
		if diff := cmp.Diff(c.want, page.Wrong); diff != "" {
			t.Errorf("%s: %s", field, diff)
		}
	}
}

// What an account can do decides which parts the page has.
func TestAccountPageParts(t *testing.T) {
	this, other := Device{Name: "Safari on iPhone", Seen: "today 06:22", This: true}, Device{Name: "Firefox on Linux", Seen: "2 Nov", Token: "b2"}
	for name, c := range map[string]struct {
		in     AccountInput
		has    []string
		hasNot []string
	}{
		"a player":             {AccountInput{Devices: []Device{this}}, []string{"<b>this one</b>", "Delete the account permanently"}, []string{"Sign out the others", "You are a steward", "Create an invitation"}},
		"two devices":          {AccountInput{Devices: []Device{this, other}}, []string{"Sign out the others", "Firefox on Linux, 2 Nov"}, nil},
		"a steward":            {AccountInput{Steward: true}, []string{"You are a steward of this server."}, []string{"Create an invitation"}},
		"a steward who adds":   {AccountInput{Steward: true, Invites: true}, []string{"Create an invitation"}, []string{"Send this link"}},
		"an invitation, ready": {AccountInput{Steward: true, Invites: true, Invited: "https://golf.example/join?t"}, []string{"Send this link to the player: <code>https://golf.example/join?t</code>"}, nil},
	} {
		var html strings.Builder
		if err := NewAccountPage(layout.Page{}, c.in).View().Render(t.Context(), &html); err != nil {
			t.Fatal(err)
		}
		for _, want := range c.has {
			if !strings.Contains(html.String(), want) {
				t.Errorf("%s: no %q", name, want)
			}
		}
		for _, not := range c.hasNot {
			if strings.Contains(html.String(), not) {
				t.Errorf("%s: %q", name, not)
			}
		}
	}
}

func TestWelcomePage(t *testing.T) {
	page := NewWelcomePage(layout.Page{}, form.FirstSettings{Target: form.NumberOf(79), Far: form.ChoiceOf(golf.Metres), Green: form.ChoiceOf(golf.Feet)})
	if page.Title != "Welcome" || page.Skip != "Skip: 79, yards and feet" || page.Target.Value != "79" || page.Wrong.Heading != "" {
		t.Errorf("%+v", page)
	}
	if page.Lede != "Every round is compared with a golfer who averages your target. The statement explains the strokes between that score and yours." {
		t.Error(page.Lede)
	}
	if diff := cmp.Diff([][]string{{"metres"}, {"feet"}}, [][]string{chosen(page.Far), chosen(page.Green)}); diff != "" {
		t.Error(diff)
	}
	page = NewWelcomePage(layout.Page{}, form.ParseFirstSettings(url.Values{"target": {"60"}, "far": {"m"}, "green": {"miles"}}))
	want := components.Summary{Heading: "Not saved yet: 2 things to fix.", Links: []components.SummaryLink{
		{At: "#target", Text: "Target score: Allowed: 68 to 110."}, {At: "#green", Text: "Distances on the green: Choose feet or metres."}}}
	if diff := cmp.Diff(want, page.Wrong); diff != "" {
		t.Error(diff)
	}
}

// The first account of a server needs the setup token, others may need an
// invitation, which the link brings along.
func TestJoinPage(t *testing.T) {
	for door, c := range map[Door]struct {
		lede  string
		first bool
	}{
		DoorFirst:   {"The first account on a new server is its steward's.", true},
		DoorOpen:    {"Your rounds are private: the steward of this server sees accounts, never rounds.", false},
		DoorInvited: {"Your rounds are private: the steward of this server sees accounts, never rounds.", false},
	} {
		page := NewJoinPage(layout.Page{}, form.Join{Token: "t1", Name: form.TextOf("Robin")}, door)
		if page.Title != "Create an account" || page.Lede != c.lede || page.First != c.first || (page.AskToken.Label == "Setup token") != c.first || page.Token != "t1" {
			t.Errorf("%d: %+v", door, page)
		}
		var labels []string
		for _, f := range page.Fields {
			labels = append(labels, f.Label)
		}
		if diff := cmp.Diff([]string{"Name", "E-mail", "Password"}, labels); diff != "" {
			t.Errorf("%d: %s", door, diff)
		}
	}
}

func TestJoinPageProblems(t *testing.T) {
	typed := form.Join{TokenWrong: "That is not the token.", Name: form.TextOf("Robin"), Email: form.Text{Problem: "Give an address."}, Password: form.Text{Problem: "Too short."}}
	page := NewJoinPage(layout.Page{}, typed, DoorFirst)
	want := components.Summary{Heading: "The account was not created.", Links: []components.SummaryLink{
		{At: "#token", Text: "Setup token: That is not the token."}, {At: "#email", Text: "E-mail: Give an address."}, {At: "#password", Text: "Password: Too short."}}}
	if diff := cmp.Diff(want, page.Wrong); diff != "" {
		t.Error(diff)
	}
	if page.Fields[0].Value != "Robin" || page.Fields[2].Value != "" {
		t.Errorf("%+v", page.Fields)
	}
}
