package handlers

import (
	"errors"
	"net/http"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/play"
)

// sessionsMost is how many sessions on the range count and are listed, the latest.
const sessionsMost = 60

// bagOf reads the bag of a player.
func (s *server) bagOf(r *http.Request, who golf.PlayerID) (bag play.Bag, err error) {
	clubs, err := s.store.Bag(r.Context(), me(r).ID, who)
	if err != nil {
		return bag, err
	}
	for _, c := range clubs {
		bag.Clubs = append(bag.Clubs, play.BagClub{Name: c.Club, Length: c.LengthYd, Bend: c.ShapeYd})
	}
	sessions, err := s.store.RangeSessions(r.Context(), me(r).ID, who, sessionsMost)
	for _, x := range sessions {
		bag.Sessions = append(bag.Sessions, play.Session{ID: x.ID, Club: x.Club, Day: golf.DateOf(x.Day), Balls: x.Balls})
	}
	return bag, err
}

// bagInput is what the page of a bag is made of.
func (s *server) bagInput(r *http.Request) (about subject, in play.BagInput, err error) {
	if about, err = s.subject(r); err != nil {
		return about, in, err
	}
	p := playing{about: about}
	if p.history, err = s.store.History(r.Context(), me(r).ID, about.player.ID); err != nil {
		return about, in, err
	}
	if p.as, err = s.engine.PlaysAs(p.history, about.player.Target); err != nil {
		return about, in, err
	}
	if p.clubs, err = s.teeClubs(r, p); err != nil {
		return about, in, err
	}
	level, err := s.engine.ClubsOf(p.as)
	if err != nil {
		return about, in, err
	}
	bag, err := s.bagOf(r, about.player.ID)
	unit := unitsOf(me(r)).Far
	in = play.BagInput{Whose: about.pages, Player: about.player.Name, Level: level, Clubs: p.clubs, Sessions: bag.Sessions,
		Form: play.FormOf(bag, level, unit), Range: form.Range{Day: form.DayOf(s.today(r))}, Unit: unit}
	return about, in, err
}

// bag shows the clubs of a player.
func (s *server) bag(w http.ResponseWriter, r *http.Request) error {
	about, in, err := s.bagInput(r)
	if err != nil {
		return err
	}
	page := s.shellOf(r, about)
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookPlay, 0); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, play.NewBagPage(page, in).View())
}

// ownBag is the bag of the player who is signed in, to be changed.
func (s *server) ownBag(r *http.Request) (subject, play.BagInput, error) {
	about, in, err := s.bagInput(r)
	if err == nil && !about.pages.Own {
		err = golf.ErrNotFound
	}
	return about, in, err
}

// saveBag saves the clubs of a bag.
func (s *server) saveBag(w http.ResponseWriter, r *http.Request) error {
	about, in, err := s.ownBag(r)
	if err != nil {
		return err
	}
	f := form.ParseBag(r.Form, in.Unit)
	if !f.Sound() {
		in.Form = f
		return show(w, r, http.StatusUnprocessableEntity, play.NewBagPage(s.shellOf(r, about), in).View())
	}
	var clubs []db.BagClub
	for _, row := range f.Rows {
		if row.Club.Value != "" {
			clubs = append(clubs, db.BagClub{Club: row.Club.Value, LengthYd: row.Length.Value.Yards(), ShapeYd: row.BendYards()})
		}
	}
	if err := s.store.SaveBag(r.Context(), me(r).ID, clubs); err != nil {
		return err
	}
	return saved(w, r, about.pages.Bag(), "bag")
}

// saveRange saves balls from the range.
func (s *server) saveRange(w http.ResponseWriter, r *http.Request) error {
	about, in, err := s.ownBag(r)
	if err != nil {
		return err
	}
	in.Range = form.ParseRange(r.Form, clubNames(in.Clubs))
	if _, in.BallSaid = play.ReadSession(in.Range.Balls.Value); len(in.BallSaid) == 0 && in.Range.Sound() {
		_, err = s.store.RecordRange(r.Context(), me(r).ID, db.RangeSession{Club: in.Range.Club.Value, Day: in.Range.Day.Value.Time(), Balls: in.Range.Balls.Value})
		if errors.Is(err, db.ErrRangeSessionsInAll) {
			in.BallSaid = []string{"You have as many sessions as are kept. Remove one first."}
		} else if err != nil {
			return err
		} else {
			return saved(w, r, about.pages.Bag(), "range")
		}
	}
	return show(w, r, http.StatusUnprocessableEntity, play.NewBagPage(s.shellOf(r, about), in).View())
}

func clubNames(all []analysis.Club) []string {
	var names []string
	for _, c := range all {
		names = append(names, c.Name)
	}
	return names
}

// removeRange removes balls from the range.
func (s *server) removeRange(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err == nil && !about.pages.Own {
		err = golf.ErrNotFound
	}
	if err != nil {
		return err
	}
	n, err := id(r, "session")
	if err != nil {
		return err
	}
	if err := s.store.RemoveRange(r.Context(), me(r).ID, n); err != nil {
		return err
	}
	return redirectAfterRemoval(w, r, about.pages.Bag(), removal{db.RemovedRange, me(r).ID, n})
}
