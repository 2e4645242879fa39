package handlers

import (
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"slices"
	"strings"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/accountfile"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/play"
)

// madeBy collects what a player made for the account file: bag, sessions on the range,
// drawings, and plans of practice that were taken.
func madeBy(ctx context.Context, store *db.Store, who golf.PlayerID) (o accountfile.Own, err error) {
	bag, err := store.Bag(ctx, who, who)
	if err != nil {
		return o, err
	}
	for _, c := range bag {
		o.Bag = append(o.Bag, accountfile.BagClub{Club: c.Club, Length: c.LengthYd, Shape: c.ShapeYd})
	}
	sessions, err := store.RangeSessions(ctx, who, who, 0)
	if err != nil {
		return o, err
	}
	for _, s := range sessions {
		o.Ranges = append(o.Ranges, fileOfRange(s))
	}
	plans, err := store.TakenPlans(ctx, who, who)
	if err != nil {
		return o, err
	}
	for _, p := range plans {
		o.Plans = append(o.Plans, fileOfPlan(p))
	}
	o.Drawn, err = ownDrawings(ctx, store, who)
	return o, err
}

// fileOfRange writes a session a ball a line, without what cannot be seen.
func fileOfRange(s db.RangeSession) accountfile.Range {
	f := accountfile.Range{Club: golf.Cleaned(s.Club, golf.MaxClub), Day: golf.DateOf(s.Day).String()}
	for line := range strings.SplitSeq(s.Balls, "\n") {
		if line = golf.Cleaned(line, golf.MaxText); line != "" {
			f.Balls = append(f.Balls, line)
		}
	}
	return f
}

// ownDrawings are the drawings of a player, by the name of the course and its tees.
func ownDrawings(ctx context.Context, store *db.Store, who golf.PlayerID) (all []accountfile.Drawn, err error) {
	pictures, err := store.OwnPictures(ctx, who)
	for len(pictures) > 0 && err == nil {
		n := slices.IndexFunc(pictures, func(p db.OwnPicture) bool { return p.CourseID != pictures[0].CourseID })
		if n < 0 {
			n = len(pictures)
		}
		var c db.Course
		if c, err = store.Course(ctx, pictures[0].CourseID); err != nil {
			return nil, err
		}
		all = append(all, fileOfDrawn(c, pictures[:n]))
		pictures = pictures[n:]
	}
	slices.SortStableFunc(all, func(a, b accountfile.Drawn) int {
		return cmp.Or(cmp.Compare(a.Course, b.Course), cmp.Compare(a.Tee, b.Tee))
	})
	return all, err
}

// fileOfDrawn writes the drawings of a course. Those of a hole that is no longer on its
// card are left out, and so is taking away what another drew.
func fileOfDrawn(c db.Course, pictures []db.OwnPicture) accountfile.Drawn {
	d := accountfile.Drawn{Course: golf.Cleaned(c.Name, golf.MaxName), Tee: golf.Cleaned(c.Tee, golf.MaxName)}
	begun := map[int]bool{}
	for _, h := range c.Holes {
		d.Holes = append(d.Holes, accountfile.CardHole{Number: h.Number, Par: h.Par, LengthIn: float64(h.Length), Index: h.Index})
	}
	for _, p := range pictures {
		on := slices.ContainsFunc(c.Holes, func(h golf.CardHole) bool { return h.Number == p.Hole })
		text, sound := play.FileOf(p.Text)
		if !on || !sound || text == "" && !begun[p.Hole] {
			continue
		}
		begun[p.Hole] = true
		if text == "" {
			text = "null"
		}
		d.Drawings = append(d.Drawings, accountfile.Drawing{Hole: p.Hole, At: p.DrawnAt.UTC(), Picture: json.RawMessage(text)})
	}
	d.Drawings = latestDrawings(d.Drawings)
	return d
}

// latestDrawings leaves out the earliest of more drawings than a file may have, and a
// drawing taken away that then comes first of its hole.
func latestDrawings(all []accountfile.Drawing) []accountfile.Drawing {
	over := len(all) - accountfile.MaxDrawings
	if over <= 0 {
		return all
	}
	at := make([]time.Time, len(all))
	for i, d := range all {
		at[i] = d.At
	}
	slices.SortFunc(at, time.Time.Compare)
	begun := map[int]bool{}
	return slices.DeleteFunc(all, func(d accountfile.Drawing) bool {
		if !d.At.After(at[over-1]) || d.Taken() && !begun[d.Hole] {
			return true
		}
		begun[d.Hole] = true
		return false
	})
}

// soundOwn reads what a file holds of pictures, balls and figures, and says which of
// them cannot be used.
func soundOwn(o accountfile.Own) error {
	for i, s := range o.Ranges {
		if _, said := play.ReadSession(strings.Join(s.Balls, "\n")); len(said) > 0 {
			return &accountfile.Fault{Place: fmt.Sprintf("range session %d", i+1), What: said[0]}
		}
	}
	for i, d := range o.Drawn {
		for k, p := range d.Drawings {
			if _, said := play.RowsOf(string(p.Picture)); !p.Taken() && len(said) > 0 {
				return &accountfile.Fault{Place: fmt.Sprintf("drawn course %d %q, drawing %d of hole %d", i+1, d.Course, k+1, p.Hole), What: said[0]}
			}
		}
	}
	for i, p := range o.Plans {
		if _, err := analysis.CleanKept(p.Figures); err != nil {
			return &accountfile.Fault{Place: fmt.Sprintf("practice plan %d", i+1), What: err.Error()}
		}
	}
	return nil
}

// takeBag puts the bag of a file in the place of the player's; an empty one changes
// nothing.
func takeBag(ctx context.Context, tx *db.Store, p db.Player, bag []accountfile.BagClub) error {
	if len(bag) == 0 {
		return nil
	}
	var clubs []db.BagClub
	for _, c := range bag {
		clubs = append(clubs, db.BagClub{Club: c.Club, LengthYd: c.Length, ShapeYd: c.Shape})
	}
	return tx.SaveBag(ctx, p.ID, clubs)
}

// takeOwn takes in what of a file the player does not have yet, apart from the bag.
func takeOwn(ctx context.Context, tx *db.Store, p db.Player, o accountfile.Own, now time.Time) error {
	if !o.Any() {
		return nil
	}
	there, err := madeBy(ctx, tx, p.ID)
	if err != nil {
		return err
	}
	for _, d := range o.Drawn {
		if err := tx.AddPictures(ctx, p.ID, courseOf(d), picturesOf(d, now)); err != nil {
			return err
		}
	}
	if err := tx.AddRanges(ctx, p.ID, newRanges(o, there)); err != nil {
		return err
	}
	plans, err := newPlans(o, there)
	if err != nil {
		return err
	}
	return tx.AddPlans(ctx, p.ID, plans)
}

func courseOf(d accountfile.Drawn) db.Course {
	c := db.Course{Name: strings.TrimSpace(d.Course), Tee: strings.TrimSpace(d.Tee)}
	for _, h := range d.Holes {
		c.Holes = append(c.Holes, golf.CardHole{Number: h.Number, Par: h.Par, Length: golf.Distance(h.LengthIn), Index: h.Index})
	}
	return c
}

// picturesOf are the drawings of a course. None was drawn later than now.
func picturesOf(d accountfile.Drawn, now time.Time) (all []db.OwnPicture) {
	for _, p := range d.Drawings {
		one := db.OwnPicture{Hole: p.Hole, DrawnAt: p.At}
		if p.At.After(now) {
			one.DrawnAt = now
		}
		if !p.Taken() {
			one.Text, _ = play.FileOf(string(p.Picture)) // it was found to be sound
		}
		all = append(all, one)
	}
	return all
}

// newRanges are the sessions of a file that the player does not have, in its order.
func newRanges(o, there accountfile.Own) (all []db.RangeSession) {
	for _, s := range o.Ranges {
		day, err := golf.ParseDate(s.Day)
		if known := func(k accountfile.Range) bool {
			return k.Club == s.Club && k.Day == s.Day && slices.Equal(k.Balls, s.Balls)
		}; err == nil && !slices.ContainsFunc(there.Ranges, known) {
			all = append(all, db.RangeSession{Club: s.Club, Day: day.Time(), Balls: strings.Join(s.Balls, "\n")})
		}
	}
	return all
}

// newPlans are the plans of a file that the player does not have, the earliest first.
func newPlans(o, there accountfile.Own) (all []db.TakenPlan, err error) {
	for _, p := range slices.Backward(o.Plans) {
		known := func(k accountfile.Plan) bool {
			return k.Day == p.Day && k.First == p.First && k.Last == p.Last && k.Rounds == p.Rounds && k.Target == p.Target && k.Minutes == p.Minutes
		}
		if slices.ContainsFunc(there.Plans, known) {
			continue
		}
		figures, failed := analysis.CleanKept(p.Figures)
		day, first, last := dayOf(p.Day), dayOf(p.First), dayOf(p.Last)
		err = errors.Join(err, failed)
		all = append(all, db.TakenPlan{Day: day, FirstDay: first, LastDay: last, Rounds: p.Rounds, Target: p.Target, Minutes: p.Minutes, Engine: p.Engine, Figures: figures})
	}
	return all, err
}

// dayOf is a day that a file was found to hold.
func dayOf(text string) time.Time {
	day, _ := golf.ParseDate(text)
	return day.Time()
}

// refusedOwn says why what is the account's own cannot be taken in; any other error
// stays as it is.
func refusedOwn(err error) error {
	if text := noRoom(err); text != "" {
		return &refusal{http.StatusTooManyRequests, "Daily limit reached", "The drawings in the file are of courses that are not here yet. " + text + " Nothing was imported."}
	}
	tooMany := func(heading, of string) error {
		return &refusal{http.StatusConflict, heading, "With those in the file you would have more than " + of + ", the most that are kept. Nothing was imported."}
	}
	switch {
	case errors.Is(err, db.ErrRangeSessionsInAll):
		return tooMany("Too many sessions", fmt.Sprintf("%d sessions on the range", db.RangeSessionsInAll))
	case errors.Is(err, db.ErrPlansInAll):
		return tooMany("Too many plans", fmt.Sprintf("%d plans", db.PlansInAll))
	case errors.Is(err, db.ErrPictureBytes):
		return tooMany("Too many drawings", fmt.Sprintf("%d MiB of drawings", db.PictureBytes>>20))
	case errors.Is(err, db.ErrPicturesOfADay):
		return &refusal{http.StatusTooManyRequests, "Daily limit reached", fmt.Sprintf("You may draw %d times a day on courses that others added, and the file has more. Nothing was imported.", db.PicturesOfADay)}
	}
	return err
}
