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

// demoPupil is a made-up pupil of the coach.
type demoPupil struct {
	name      string
	target    float64
	then, now golfer.Levels // the first half of the rounds, and the second
	rounds    int
	restDays  int // since the latest round
}

// demoPupils are the coach's pupils besides the player, with how each played at
// first and how they play now.
var demoPupils = []demoPupil{
	{"Bea Lindqvist", 79, golfer.Levels{Tee: 84, Approach: 85, ShortGame: 84, Putting: 82}, golfer.Levels{Tee: 82, Approach: 85, ShortGame: 80, Putting: 81}, 24, 2},
	{"Tam Okafor", 85, golfer.Levels{Tee: 94, Approach: 92, ShortGame: 99, Putting: 90}, golfer.Levels{Tee: 93, Approach: 90, ShortGame: 86, Putting: 89}, 23, 4},
	{"Wil Abara", 89, golfer.Levels{Tee: 93, Approach: 94, ShortGame: 92, Putting: 92}, golfer.Levels{Tee: 99, Approach: 93, ShortGame: 91, Putting: 90}, 22, 9},
	{"Hanne Roos", 84, golfer.Even(87), golfer.Levels{Tee: 86, Approach: 87, ShortGame: 85, Putting: 90}, 20, 12},
	{"Dev Prasad", 78, golfer.Even(82), golfer.Levels{Tee: 79, Approach: 82, ShortGame: 80, Putting: 80}, 16, 15},
	{"Ruth Keane", 92, golfer.Even(96), golfer.Even(94), 3, 30},
}

// demoCoaching creates a coach and pupils, gives the coach access to all of them, and
// gives the player something to read and to practise.
func demoCoaching(ctx context.Context, store *db.Store, player golf.PlayerID, hash string, today time.Time) error {
	coach, err := store.NewPlayer(ctx, demoCoach, "Ines Halloran", hash)
	if err != nil {
		return err
	}
	if err := store.Greet(ctx, coach.ID, coach.Target, coach.Units(), coach.Zone); err != nil {
		return err
	}
	if err := letIn(ctx, store, player, coach.ID); err != nil {
		return err
	}
	day := golf.DateOf(today)
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
		if err := p.play(ctx, store, pupil.ID, p.seasons(day, uint64(i))); err != nil {
			return err
		}
	}
	return demoLessons(ctx, store, player, coach.ID, day)
}

// seasons are the rounds of a pupil until a day: half of them as the pupil used to
// play, and half as now. The number gives each pupil different luck.
func (p demoPupil) seasons(until golf.Date, number uint64) [2]golfer.Season {
	const every = 6 // days
	first := until.AddDays(-p.restDays - every*(p.rounds-1))
	half := p.rounds / 2
	return [2]golfer.Season{
		{Course: "Harrow Fen", Card: harrowFen, Tee: "white", Days: every, Levels: p.then, First: first, Rounds: half, Seed: 10 + number},
		{Course: "Harrow Fen", Card: harrowFen, Tee: "white", Days: every, Levels: p.now, First: first.AddDays(every * half), Rounds: p.rounds - half, Seed: 30 + number},
	}
}

// play plays seasons and saves their rounds as a pupil's.
func (p demoPupil) play(ctx context.Context, store *db.Store, pupil golf.PlayerID, seasons [2]golfer.Season) error {
	parameters := golfer.Committed()
	for _, season := range seasons {
		rounds, err := season.Play(&parameters)
		if err != nil {
			return err
		}
		for n, r := range rounds {
			kept := demoRound(r, season.Card, int(season.Seed)*100+n)
			kept.Target = p.target
			if _, err := store.NewRound(ctx, pupil, kept); err != nil {
				return err
			}
		}
	}
	return nil
}

// letIn gives a coach access to everything of a pupil's.
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
	if err := demoNotes(ctx, store, player, coach, today); err != nil {
		return err
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

// demoNotes is a lesson, notes and a question on the player's last two rounds.
func demoNotes(ctx context.Context, store *db.Store, player, coach golf.PlayerID, today golf.Date) error {
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
	return nil
}
