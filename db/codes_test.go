package db_test

import (
	"errors"
	"testing"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/db/dbtest"
)

// A code leads to its coach while it is on; the coach gets access once both have said
// yes, from the day that the pupil gave, and nobody else can answer.
func TestCodes(t *testing.T) {
	p := newPair(t)
	const code = "KXT-WRM-GHB"
	_, none := p.OwnerOfCode(p.ctx, p.pupil, code)
	p.refused(map[string]error{"nobody's code": none, "asked without a code": p.AskCoach(p.ctx, p.pupil, code, golf.Date{})})
	p.must(p.SetCoachCode(p.ctx, p.stranger, code))
	if err := p.SetCoachCode(p.ctx, p.other, code); !errors.Is(err, db.ErrTaken) {
		t.Errorf("two have one code: %v", err)
	}
	if got, err := p.Codes(p.ctx, p.stranger); err != nil || got.Code != code {
		t.Errorf("%q, %v", got.Code, err)
	}
	owner := func(asker golf.PlayerID) db.CodeOwner {
		t.Helper()
		o, err := p.OwnerOfCode(p.ctx, asker, code)
		p.must(err)
		return o
	}
	if o := owner(p.pupil); o.ID != p.stranger || o.Email != "d@example.org" || o.Own || o.Waits || o.Coaches || o.Asked {
		t.Errorf("%+v", o)
	}
	if o := owner(p.stranger); !o.Own {
		t.Errorf("%+v", o)
	}
	from := golf.Date{Year: 2026, Month: 5, Day: 1}
	p.refused(map[string]error{"one's own code": p.AskCoach(p.ctx, p.stranger, code, from), "nothing was asked": p.TakeRequest(p.ctx, p.stranger, p.pupil)})
	p.must(p.AskCoach(p.ctx, p.pupil, code, golf.Date{}))
	p.must(p.AskCoach(p.ctx, p.pupil, code, from)) // the later day holds
	if !owner(p.pupil).Asked {
		t.Error("not asked")
	}
	_, unseen := p.Seen(p.ctx, p.stranger, p.pupil)
	p.refused(map[string]error{"the coach sees the pupil before saying yes": unseen, "another coach takes it": p.TakeRequest(p.ctx, p.other, p.pupil), "another drops it": p.DropRequest(p.ctx, p.other, p.pupil, p.stranger)})
	asks, _, err := requests(p, p.stranger)
	if p.must(err); len(asks) != 1 || asks[0].ID != p.pupil || golf.DateOf(*asks[0].SharedFrom) != from {
		t.Errorf("%+v", asks)
	}
	_, asked, err := requests(p, p.pupil)
	if p.must(err); len(asked) != 1 || asked[0].ID != p.stranger {
		t.Errorf("%+v", asked)
	}
	p.must(p.TakeRequest(p.ctx, p.stranger, p.pupil))
	if seen, err := p.Seen(p.ctx, p.stranger, p.pupil); err != nil || golf.DateOf(*seen.SharedFrom) != from {
		t.Errorf("%+v, %v", seen, err)
	}
	if coach, err := p.PlayerByEmail(p.ctx, "d@example.org"); err != nil || !coach.Teaches {
		t.Errorf("%+v, %v", coach, err)
	}
	p.refused(map[string]error{"taken twice": p.TakeRequest(p.ctx, p.stranger, p.pupil), "asked although there is access": p.AskCoach(p.ctx, p.pupil, code, golf.Date{})})
	if o := owner(p.pupil); !o.Coaches || o.Asked {
		t.Errorf("%+v", o)
	}
	p.must(p.SetCoachCode(p.ctx, p.stranger, ""))
	_, off := p.OwnerOfCode(p.ctx, p.pupil, code)
	_, empty := p.OwnerOfCode(p.ctx, p.pupil, "")
	p.refused(map[string]error{"turned off": off, "no code at all": empty})
}

// A request ends when either drops it, when either account goes, and after a month.
func TestRequestsEnd(t *testing.T) {
	p := newPair(t)
	const code = "KXT-WRM-GHB"
	p.must(p.SetCoachCode(p.ctx, p.stranger, code))
	for _, who := range []golf.PlayerID{p.pupil, p.stranger} {
		p.must(p.AskCoach(p.ctx, p.pupil, code, golf.Date{}))
		p.must(p.DropRequest(p.ctx, who, p.pupil, p.stranger))
		p.refused(map[string]error{"dropped": p.TakeRequest(p.ctx, p.stranger, p.pupil)})
	}
	p.must(p.AskCoach(p.ctx, p.pupil, code, golf.Date{}))
	if _, asked, err := requests(p, p.pupil); err != nil || len(asked) != 1 || asked[0].SharedFrom != nil || time.Since(asked[0].AskedAt) > time.Hour {
		t.Errorf("%+v, %v", asked, err)
	}
	dbtest.Exec(t, p.url, "update coach_requests set asked_at = now() - interval '31 days'")
	swept, err := p.Sweep(p.ctx)
	if p.must(err); swept["requests to coaches"] != 1 {
		t.Errorf("%+v", swept)
	}
	p.must(p.AskCoach(p.ctx, p.pupil, code, golf.Date{}))
	p.must(p.AskCoach(p.ctx, p.other, code, golf.Date{}))
	p.must(p.DeletePlayer(p.ctx, p.pupil))
	if asks, _, err := requests(p, p.stranger); err != nil || len(asks) != 1 || asks[0].ID != p.other {
		t.Errorf("%+v, %v", asks, err)
	}
	p.must(p.DeletePlayer(p.ctx, p.stranger))
	if _, asked, err := requests(p, p.other); err != nil || len(asked) != 0 {
		t.Errorf("%+v, %v", asked, err)
	}
}

// What a pupil asked by a code does not outlive what the pupil decides later: another
// first day, or the end of the access, whoever ends it.
func TestRequestsGiveWayToWhatThePupilDecidesLater(t *testing.T) {
	p := newPair(t)
	const code = "KXT-WRM-GHB"
	june := golf.Date{Year: 2026, Month: 6, Day: 1}
	p.must(p.SetCoachCode(p.ctx, p.stranger, code))
	settled := func(when string) {
		t.Helper()
		if asks, _, err := requests(p, p.stranger); err != nil || len(asks) != 0 {
			t.Errorf("%s: the coach still lists %+v, %v", when, asks, err)
		}
		p.refused(map[string]error{when: p.TakeRequest(p.ctx, p.stranger, p.pupil)})
	}
	again := func() { // as if it had been asked while the link was accepted
		t.Helper()
		dbtest.Exec(t, p.url, "insert into coach_requests (player_id, coach_id, asked_at) select a.id, d.id, now() from players a, players d where a.email = 'a@example.org' and d.email = 'd@example.org'")
	}
	from := func(when string, want golf.Date) {
		t.Helper()
		if c, err := p.Coaching(p.ctx, p.pupil, p.pupil, p.stranger); err != nil || c.SharedFrom == nil || golf.DateOf(*c.SharedFrom) != want {
			t.Errorf("%s: %+v, %v", when, c, err)
		}
	}
	p.must(p.AskCoach(p.ctx, p.pupil, code, golf.Date{}))
	p.refused(map[string]error{"a day for a coach without access": p.ShareFrom(p.ctx, p.pupil, p.stranger, june)})
	if asks, _, err := requests(p, p.stranger); err != nil || len(asks) != 1 {
		t.Errorf("the coach lists %+v, %v", asks, err)
	}
	p.let(p.stranger, june)
	settled("the pupil approved the coach after a link")
	again()
	p.must(p.ShareFrom(p.ctx, p.pupil, p.stranger, june.AddDays(1)))
	settled("the pupil changed the day")
	from("after that", june.AddDays(1))
	again()
	p.must(p.TakeRequest(p.ctx, p.stranger, p.pupil))
	settled("the coach had access already")
	from("the access stays", june.AddDays(1))
	for who, ended := range map[golf.PlayerID]string{p.pupil: "the pupil ended it", p.stranger: "the coach ended it"} {
		again()
		p.must(p.EndCoaching(p.ctx, who, p.pupil, p.stranger))
		settled(ended)
		if n := sees(t, p.Store, p.stranger, p.pupil); n != 0 {
			t.Errorf("%s: the coach sees %d rounds", ended, n)
		}
		p.let(p.stranger, june)
	}
}

// requests are those of an account, from others and to others.
func requests(p pair, who golf.PlayerID) (asks, asked []db.CoachRequest, err error) {
	c, err := p.Codes(p.ctx, who)
	return c.Asks, c.Asked, err
}
