package coach

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// RequestInput is an account that asks, or was asked, by a code.
type RequestInput struct {
	ID    golf.PlayerID // of the other account
	Name  string
	Email string
	From  golf.Date // first day shared; zero for everything
	Asked golf.Date
}

// RequestLine is such an account with the form that answers it, or takes it back.
type RequestLine struct {
	Place string // on the page
	ID    string // as the form sends it
	Name  string
	Email string
	Says  string
}

// CodesPart is what a coaching page has about codes.
type CodesPart struct {
	Code    string           // the reader's own; empty while it is turned off
	Asks    []RequestLine    // pupils who ask the reader
	Asked   []RequestLine    // coaches whom the reader has asked
	Typed   components.Field // the code of a coach
	From    components.Field // the first day shared with that coach
	Wrong   components.Summary
	Refused bool // that form came back, and stands open
}

// CodesInput is what the part is made of.
type CodesInput struct {
	Code  string
	Asks  []RequestInput
	Asked []RequestInput
	Typed *form.AskCoach // as it came back; nil for none
}

// newCodesPart makes the part.
func newCodesPart(in CodesInput) CodesPart {
	p := CodesPart{Code: in.Code}
	for _, a := range in.Asks {
		p.Asks = append(p.Asks, a.requestLine(fmt.Sprintf("asks you to coach them, since %s; you would see %s.", words.ShortDay(a.Asked), a.what())))
	}
	for _, a := range in.Asked {
		p.Asked = append(p.Asked, a.requestLine(fmt.Sprintf("was asked on %s and has not answered yet; would see %s.", words.ShortDay(a.Asked), a.what())))
	}
	var typed form.AskCoach
	if in.Typed != nil {
		p.Refused, typed = true, *in.Typed
	}
	p.Typed = components.Filled(components.Field{Name: "code", ID: "coach_code", Label: "Code of a coach", Hint: "Nine letters, such as KXT-WRM-GHB. You see whose it is before you ask."}, typed.Code)
	p.From = components.Filled(components.Field{Name: "from", ID: "code_from", Label: "Share rounds played from", Type: "date", Hint: "Leave it empty to share everything."}, typed.From)
	p.Wrong = components.Summed(p.Typed, p.From).Saying("Nobody was asked.")
	return p
}

func (in RequestInput) requestLine(says string) RequestLine {
	return RequestLine{requestID(in.ID), fmt.Sprint(in.ID), in.Name, in.Email, says}
}

func (in RequestInput) what() string { return sharedFrom(in.From) }

// sharedFrom says what is shared from a day on, zero for everything.
func sharedFrom(day golf.Date) string {
	if day.IsZero() {
		return "everything"
	}
	return "rounds played from " + words.ShortDay(day) + " on"
}

// CodeOwner is whom a code belongs to, as the pupil who typed it finds it.
type CodeOwner struct {
	Name, Email string
	Code        string    // as the form sends it
	From        golf.Date // the first day that would be shared; zero for everything
	Own         bool      // it is the reader's own code
	Waits       bool      // the coach has accepted a link, and waits for the reader
	Coaches     bool      // the coach has access
	Asked       bool      // the reader has asked already
}

// AskPage names the coach of a code, and asks before the coach is asked.
type AskPage struct {
	layout.Page
	Lede       string
	Facts      []string // what asking means; none where there is nothing to ask
	Code, From string   // as the form sends them
	Ask        string   // on its button
}

// NewAskPage makes the page.
func NewAskPage(page layout.Page, in CodeOwner) AskPage {
	page.Title, page.Here = "A coach", paths.Coaching
	p := AskPage{Page: page}
	switch {
	case in.Own:
		p.Lede = "This is your own code. Give it to your pupils."
		return p
	case in.Coaches:
		p.Lede = in.Name + " has access to your pages already."
		return p
	case in.Waits:
		p.Lede = in.Name + " has accepted your link. Approve them on the page named Coach."
		return p
	}
	p.Lede = fmt.Sprintf("This is the code of %s, %s.", in.Name, in.Email)
	if in.Asked {
		p.Lede += " You have asked already; asking again changes the day."
	}
	p.Code, p.Ask = in.Code, "Ask "+in.Name
	if !in.From.IsZero() {
		p.From = in.From.String()
	}
	p.Facts = []string{fmt.Sprintf("%s will see %s: rounds, months, practice and questions, but changes no round.", in.Name, sharedFrom(in.From)),
		fmt.Sprintf("Nothing is seen before %s accepts; asking shows %s your name and e-mail address.", in.Name, in.Name),
		"You read which pages are opened, and either of you can end the access at any time."}
	return p
}
