package coach

import (
	"strings"
	"testing"

	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

func TestCodesPart(t *testing.T) {
	typed := form.ParseAskCoach("kxt", "")
	p := newCodesPart(CodesInput{Code: "KXT-WRM-GHB", Typed: &typed, Asks: []RequestInput{{ID: 4, Name: "Bea", Email: "bea@harrowfen.example", From: today, Asked: today}}, Asked: []RequestInput{{ID: 2, Name: "Ines", Asked: today}}})
	if p.Asks[0].Says != "asks you to coach them, since 31 Aug 2026; you would see rounds played from 31 Aug 2026 on." || p.Asks[0].ID != "4" {
		t.Errorf("%+v", p.Asks)
	}
	if p.Asked[0].Says != "was asked on 31 Aug 2026 and has not answered yet; would see everything." {
		t.Errorf("%+v", p.Asked)
	}
	if !p.Refused || p.Typed.Value != "kxt" || p.Wrong.Heading != "Nobody was asked." || p.Wrong.Links[0].At != "#coach_code" {
		t.Errorf("%+v", p)
	}
}

// Before the coach is asked the page says by name and address whom, and where there is
// nothing to ask it says why.
func TestAskPage(t *testing.T) {
	ines := CodeOwner{Name: "Ines", Email: "ines@harrowfen.example", Code: "KXT-WRM-GHB"}
	for name, c := range map[string]struct {
		change func(*CodeOwner)
		lede   string
		asks   bool
	}{
		"new":           {func(*CodeOwner) {}, "This is the code of Ines, ines@harrowfen.example.", true},
		"asked already": {func(o *CodeOwner) { o.Asked, o.From = true, today }, "You have asked already; asking again changes the day.", true},
		"own":           {func(o *CodeOwner) { o.Own = true }, "your own code", false},
		"has access":    {func(o *CodeOwner) { o.Coaches = true }, "Ines has access to your pages already.", false},
		"waits":         {func(o *CodeOwner) { o.Waits = true }, "Ines has accepted your link.", false},
	} {
		in := ines
		c.change(&in)
		if p := NewAskPage(layout.Page{}, in); !strings.Contains(p.Lede, c.lede) || (len(p.Facts) > 0) != c.asks || (p.Code != "") != c.asks || p.Here != paths.Coaching {
			t.Errorf("%s: %+v", name, p)
		}
	}
}
