package main

import (
	"context"
	"crypto/sha256"
	"fmt"
	"strings"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/db"
)

// demoPupils are the coach's pupils besides the player: how each played at
// first and of late.
var demoPupils = []struct {
	name      string
	target    float64
	then, now golfer.Levels
	rounds    int
	restDays  int // since the latest round
}{
	{"Bea Lindqvist", 79, golfer.Levels{Tee: 84, Approach: 85, ShortGame: 84, Putting: 82}, golfer.Levels{Tee: 82, Approach: 85, ShortGame: 80, Putting: 81}, 24, 2},
	{"Tam Okafor", 85, golfer.Levels{Tee: 94, Approach: 92, ShortGame: 99, Putting: 90}, golfer.Levels{Tee: 93, Approach: 90, ShortGame: 86, Putting: 89}, 23, 4},
	{"Wil Abara", 89, golfer.Levels{Tee: 93, Approach: 94, ShortGame: 92, Putting: 92}, golfer.Levels{Tee: 99, Approach: 93, ShortGame: 91, Putting: 90}, 22, 9},
	{"Hanne Roos", 84, golfer.Even(87), golfer.Levels{Tee: 86, Approach: 87, ShortGame: 85, Putting: 90}, 20, 12},
	{"Dev Prasad", 78, golfer.Even(82), golfer.Levels{Tee: 79, Approach: 82, ShortGame: 80, Putting: 80}, 16, 15},
	{"Ruth Keane", 92, golfer.Even(96), golfer.Even(94), 3, 30},
}

// demoCoaching makes a coach, lets the coach in everywhere, and gives the
// player something to read and to practise.
func demoCoaching(ctx context.Context, store *db.Store, player golf.PlayerID, hash string, today time.Time) error {
	coach, err := store.NewPlayer(ctx, demoCoach, "Ines Halloran", hash)
	if err != nil {
		return err
	}
	if err := store.Greet(ctx, coach.ID, coach.Target, coach.Units()); err != nil {
		return err
	}
	if err := letIn(ctx, store, player, coach.ID); err != nil {
		return err
	}
	parameters := golfer.Committed()
	for i, p := range demoPupils {
		name, _, _ := strings.Cut(strings.ToLower(p.name), " ")
		pupil, err := store.NewPlayer(ctx, name+"@harrowfen.example", p.name, hash)
		if err != nil {
			return err
		}
		if err := store.SaveSettings(ctx, pupil.ID, db.Settings{Name: p.name, Target: p.target, BoundaryYd: 50}); err != nil {
			return err
		}
		if err := letIn(ctx, store, pupil.ID, coach.ID); err != nil {
			return err
		}
		const every = 6 // days
		first := golf.DateOf(today).AddDays(-p.restDays - every*(p.rounds-1))
		for _, season := range []golfer.Season{
			{Levels: p.then, First: first, Rounds: p.rounds / 2, Seed: uint64(10 + i)},
			{Levels: p.now, First: first.AddDays(every * (p.rounds / 2)), Rounds: p.rounds - p.rounds/2, Seed: uint64(30 + i)},
		} {
			season.Course, season.Card, season.Tee, season.Days = "Harrow Fen", harrowFen, "white", every
			rounds, err := season.Play(&parameters)
			if err != nil {
				return err
			}
			for n, r := range rounds {
				kept := demoRound(r, harrowFen, int(season.Seed)*100+n)
				kept.Target = p.target
				if _, err := store.NewRound(ctx, pupil.ID, kept); err != nil {
					return err
				}
			}
		}
	}
	return demoLessons(ctx, store, player, coach.ID, golf.DateOf(today))
}

// letIn lets a coach see everything of a pupil's.
func letIn(ctx context.Context, store *db.Store, pupil, coach golf.PlayerID) error {
	token := sha256.Sum256([]byte(fmt.Sprint(pupil, coach)))
	if err := store.NewCoachInvitation(ctx, pupil, token[:], golf.Date{}, 1); err != nil {
		return err
	}
	if err := store.AcceptCoaching(ctx, coach, pupil, token[:]); err != nil {
		return err
	}
	return store.ConfirmCoach(ctx, pupil, coach)
}

// demoLessons is what the coach and the player wrote to each other.
func demoLessons(ctx context.Context, store *db.Store, player, coach golf.PlayerID, today golf.Date) error {
	rounds, err := store.Rounds(ctx, player, player, db.Chosen{Most: 2})
	if err != nil {
		return err
	}
	hole, shot := 4, 2
	for _, n := range []struct {
		by   golf.PlayerID
		note db.Note
	}{
		{coach, db.Note{Kind: db.KindLesson, Day: today.AddDays(-8).Time(), Body: "Half an hour on the long approach.\n- one club more, to the middle of the green\n- finish the swing with the weight forward"}},
		{coach, db.Note{Kind: db.KindNote, RoundID: &rounds[1].ID, Body: "A steady round. Look at where the doubles begin, not at where they end."}},
		{coach, db.Note{Kind: db.KindNote, RoundID: &rounds[1].ID, Private: true, Body: "Stands too close when tired."}},
		{player, db.Note{Kind: db.KindQuestion, RoundID: &rounds[0].ID, Hole: &hole, Shot: &shot, Body: "Was that the moment to lay up?"}},
	} {
		if _, err := store.WriteNote(ctx, n.by, player, n.note); err != nil {
			return err
		}
	}
	for _, a := range []db.Assignment{
		{What: "Run-outs with three clubs", Amount: "12 chips each, once a week", PassMark: "8 of 12 within 6 ft", DueOn: today.AddDays(-3).Time()},
		{What: "Start line from 5 ft", Amount: "40 putts", PassMark: "32 of 40 through the gate", DueOn: today.AddDays(4).Time()},
	} {
		if err := store.Assign(ctx, coach, player, a); err != nil {
			return err
		}
	}
	given, err := store.Assignments(ctx, player, player, 1)
	if err != nil {
		return err
	}
	if err := store.RecordResult(ctx, player, given[0].ID, db.Result{Day: today.AddDays(-5).Time(), Result: "6 of 12 with the 9 iron"}); err != nil {
		return err
	}
	return store.ProposeTarget(ctx, coach, player, 78)
}
