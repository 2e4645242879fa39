package main

import (
	"context"
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
)

// drawDemo draws the holes of Harrow Fen.
func drawDemo(ctx context.Context, store *db.Store, who golf.PlayerID, course golf.CourseID) error {
	pictures, err := demoPictures()
	if err != nil {
		return err
	}
	for _, hole := range slices.Sorted(maps.Keys(pictures)) {
		if _, err := store.SavePicture(ctx, who, course, hole, string(pictures[hole].Write())); err != nil {
			return err
		}
	}
	return nil
}

// demoBag gives a player a bag, and two dozen drives from the range that end a little
// to the right.
func demoBag(ctx context.Context, store *db.Store, who golf.PlayerID, until time.Time) error {
	if err := store.SaveBag(ctx, who, []db.BagClub{{Club: "driver", LengthYd: 232}, {Club: "fairway wood"}, {Club: "hybrid"}, {Club: "5-iron", LengthYd: 178}}); err != nil {
		return err
	}
	r := rand.New(rand.NewPCG(24, 10))
	var balls strings.Builder
	for range 24 {
		fmt.Fprintf(&balls, "%.0f %.0f\n", 4+19*r.NormFloat64(), 15*r.NormFloat64())
	}
	_, err := store.RecordRange(ctx, who, db.RangeSession{Club: "driver", Day: golf.DateOf(until.AddDate(0, 0, -40)).Time(), Balls: strings.TrimSpace(balls.String())})
	return err
}
