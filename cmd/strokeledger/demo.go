package main

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/db"
	"strokeledger/handlers"
	"strokeledger/web/form"
)

// The e-mail addresses with which to sign in to the made-up club.
const (
	demoSteward = "steward@harrowfen.example"
	demoPlayer  = "robin@harrowfen.example"
	demoCoach   = "ines@harrowfen.example"
)

var (
	harrowFen = demoCard([18]int{4, 4, 3, 5, 4, 4, 3, 4, 5, 4, 4, 3, 5, 4, 4, 3, 5, 4},
		[18]float64{384, 402, 158, 498, 361, 417, 182, 338, 521, 396, 352, 171, 489, 408, 375, 149, 507, 402})
	saltmarsh = demoCard([18]int{4, 4, 5, 4, 3, 4, 4, 3, 5, 4, 4, 3, 4, 5, 4, 3, 5, 4},
		[18]float64{378, 401, 512, 421, 164, 362, 392, 187, 538, 372, 405, 155, 405, 530, 358, 178, 502, 396})
)

func demoCard(pars [18]int, yards [18]float64) []golf.CardHole {
	card := make([]golf.CardHole, len(pars))
	for i := range card {
		card[i] = golf.CardHole{Number: i + 1, Par: pars[i], Length: golf.Yards.Of(yards[i])}
	}
	return card
}

// fillDemo puts the club into an empty database, once, and prints how to sign in.
// The passwords are random and stay in the data folder.
func fillDemo(ctx context.Context, store *db.Store, data string, s streams) error {
	name := filepath.Join(data, "demo-password")
	password, err := os.ReadFile(name)
	switch {
	case errors.Is(err, os.ErrNotExist):
		any, err := store.AnyPlayer(ctx)
		if err != nil {
			return err
		}
		if any {
			return nil // do not mix the demo with real accounts
		}
		password = []byte(rand.Text()[:12])
		if err := makeDemo(ctx, store, string(password)); err != nil {
			return err
		}
		if err := os.WriteFile(name, password, 0o600); err != nil {
			return err
		}
	case err != nil:
		return err
	}
	fmt.Fprintf(s.out, "Demo: sign in as %s, %s or %s with the password %s\n", demoPlayer, demoCoach, demoSteward, password)
	return nil
}

func makeDemo(ctx context.Context, store *db.Store, password string) error {
	hash, err := handlers.HashPassword(ctx, password)
	if err != nil {
		return err
	}
	steward, err := store.FirstPlayer(ctx, demoSteward, "Steward of Harrow Fen", hash)
	if err != nil {
		return err
	}
	player, err := store.NewPlayer(ctx, demoPlayer, "Robin Calder", hash)
	if err != nil {
		return err
	}
	for _, p := range []db.Player{steward, player} {
		if err := store.Greet(ctx, p.ID, p.Target, p.Units(), p.Zone); err != nil {
			return err
		}
	}
	for _, c := range []db.Course{
		{Name: "Harrow Fen", Tee: "white", Holes: harrowFen, Rating: of(71.2), Slope: of(126), FrontRating: of(35.7), FrontSlope: of(127), BackRating: of(35.5), BackSlope: of(125)},
		{Name: "Saltmarsh Links", Tee: "white", Holes: saltmarsh, Rating: of(72.4), Slope: of(131)},
	} {
		id, err := store.SaveCourse(ctx, player.ID, c)
		if err != nil {
			return err
		}
		if c.Name == "Harrow Fen" {
			if err := drawDemo(ctx, store, player.ID, id); err != nil {
				return err
			}
		}
	}
	if err := demoBag(ctx, store, player.ID, time.Now()); err != nil {
		return err
	}
	if err := demoSeasons(ctx, store, player.ID, time.Now()); err != nil {
		return err
	}
	if err := demoCoaching(ctx, store, player.ID, hash, time.Now()); err != nil {
		return err
	}
	return demoPractice(ctx, store, player.ID, golf.DateOf(time.Now()))
}

func of(x float64) *float64 { return &x }

// demoSeasons plays two years of rounds that end on a day. In the first year the
// approach cost the most; in the second it got better.
func demoSeasons(ctx context.Context, store *db.Store, who golf.PlayerID, until time.Time) error {
	parameters := golfer.Committed()
	first := golf.DateOf(until.AddDate(-2, 0, 0))
	for i, season := range []golfer.Season{
		{Course: "Harrow Fen", Card: harrowFen, Levels: golfer.Levels{Tee: 84, Approach: 92, ShortGame: 84, Putting: 86}, First: first, Rounds: 40, Days: 9, Seed: 1},
		{Course: "Saltmarsh Links", Card: saltmarsh, Levels: golfer.Levels{Tee: 84, Approach: 90, ShortGame: 84, Putting: 86}, First: first.AddDays(5), Rounds: 18, Days: 17, Seed: 2},
		{Course: "Harrow Fen", Card: harrowFen, Levels: golfer.Levels{Tee: 83, Approach: 85, ShortGame: 83, Putting: 86}, First: first.AddDays(366), Rounds: 60, Days: 6, Seed: 3},
	} {
		season.Tee = "white"
		rounds, err := season.Play(&parameters)
		if err != nil {
			return err
		}
		for _, r := range rounds {
			if _, err := store.NewRound(ctx, who, demoRound(r, season.Card, i)); err != nil {
				return err
			}
		}
	}
	if _, err := store.NewMark(ctx, who, first.AddDays(366), "lessons on the approach"); err != nil {
		return err
	}
	return demoTrials(ctx, store, who, golf.DateOf(until))
}

// demoTrials fills a run-out book: four clubs from the fairway, one from the rough.
func demoTrials(ctx context.Context, store *db.Store, who golf.PlayerID, until golf.Date) error {
	for i, line := range []struct {
		club  string
		lie   golf.Lie
		pairs [][2]float64
	}{
		{"8i", golf.Fairway, [][2]float64{{7, 21}, {8, 25}, {9, 26}, {10, 31}, {12, 34}}},
		{"pw", golf.Fairway, [][2]float64{{10, 19}, {11, 20}, {12, 21}, {13, 23}, {14, 24}, {16, 27}}},
		{"sw", golf.Fairway, [][2]float64{{13, 17}, {14, 20}, {16, 20}, {18, 24}, {20, 25}}},
		{"lw", golf.Fairway, [][2]float64{{15, 19}, {18, 20}, {20, 25}}},
		{"sw", golf.Rough, [][2]float64{{12, 19}, {13, 21}, {12, 18}, {15, 22}}},
	} {
		var trials []golf.Trial
		for _, p := range line.pairs {
			trials = append(trials, golf.Trial{Club: line.club, Lie: line.lie, Speed: golf.MediumGreen, Carry: p[0], Total: p[1], Unit: golf.TrialYards})
		}
		if err := store.NewTrials(ctx, who, until.AddDays(-30+5*i), fmt.Sprintf("demo %d", i), trials, analysis.RunBook); err != nil {
			return err
		}
	}
	return nil
}

func demoRound(r golf.Round, card []golf.CardHole, season int) db.Round {
	kept := db.Round{Name: fmt.Sprintf("%s-%d", r.ID, season), PlayedOn: r.Date.Time(), Course: r.Course, Tee: r.Tee, Target: 79, BoundaryYd: 50, Par18: golf.StandardPar}
	for i, h := range r.Holes {
		kept.Holes = append(kept.Holes, db.Hole{Hole: h, Length: card[i].Length, Line: form.WriteLine(h, card[i], form.StandardUnits), Units: db.Units(form.StandardUnits)})
	}
	return kept
}
