package main

import (
	"context"
	"fmt"
	"math/rand/v2"
	"net/url"
	"strings"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/play"
)

// harrowFenAnswers are the answers of which the holes of Harrow Fen are drawn, in the
// order of the card; the sixth is drawn as rows.
var harrowFenAnswers = [18]string{
	"fairway=36&left=trees&left_far=34&right=rough&right_far=28&width=27&depth=30&green_left=bunker",
	"fairway=32&left=bunker&left_far=18&right=trees&right_far=30&width=26&depth=28&green_right=bunker",
	"width=25&depth=27&short=bunker&green_left=rough&green_right=bunker",
	"fairway=34&left=water&left_far=24&right=rough&right_far=30&width=28&depth=30&green_left=water",
	"fairway=40&right=trees&right_far=38&width=30&depth=30",
	"",
	"width=26&depth=30&green_right=water&green_left=bunker",
	"fairway=30&bend=little-left&left=trees&left_far=28&right=trees&right_far=30&width=24&depth=26&short=bunker",
	"fairway=33&bend=right&right=trees&right_far=22&left=rough&left_far=30&width=28&depth=32&green_right=bunker",
	"fairway=38&left=rough&left_far=30&width=28&depth=30&green_left=bunker&green_right=bunker",
	"fairway=30&bend=little-right&left=bunker&left_far=16&right=trees&right_far=26&width=25&depth=27",
	"width=27&depth=26&green_left=bunker&green_right=rough",
	"fairway=34&bend=left&right=water&right_far=20&left=trees&left_far=34&width=27&depth=29&short=water",
	"fairway=33&left=trees&left_far=32&right=bunker&right_far=18&width=26&depth=29&green_right=bunker",
	"fairway=36&width=28&depth=30&green_left=rough",
	"width=24&depth=25&short=bunker&green_left=bunker&green_right=bunker",
	"fairway=35&left=rough&left_far=28&right=trees&right_far=30&width=28&depth=31&green_left=bunker",
	"fairway=32&right=out&right_far=21&left=bunker&left_far=20&width=27&depth=30&green_right=out",
}

// harrowFenSixth is the hardest hole: out of bounds comes near the line where drives
// end, and a stream runs in from the right.
const harrowFenSixth = `bend 260: 10 right
fairway 165: 17 left, 16 right
fairway 230: 15 left, 17 right
fairway 280: 12 left, 14 right
fairway 392: 14 left, 13 right
out 0 to 222, across open to -34
out 222 to 470, across open to -16
trees 120 to 214, across 40 to open
trees 222 to 330, across 31 to open
bunker 222 to 252, across 13 to 27
water 300 to 322, across 20 to open
green 402: 26 wide, 29 deep
bunker 392 to 412, across -24 to -13
bunker 404 to 418, across 13 to 22`

// demoPictures draws the holes of Harrow Fen.
func demoPictures(ctx context.Context, store *db.Store, who golf.PlayerID, course golf.CourseID) error {
	for i, text := range harrowFenAnswers {
		hole := harrowFen[i]
		rows := harrowFenSixth
		if text != "" {
			answers, err := url.ParseQuery("do=" + form.DrawPicture + "&" + text)
			if err != nil {
				return err
			}
			rows = form.ParsePicture(answers, hole, golf.Yards).Sketch()
		}
		drawing := play.ReadRows(hole, rows)
		if !drawing.Sound() {
			return fmt.Errorf("hole %d of the made-up club: %s", hole.Number, rows)
		}
		if _, err := store.SavePicture(ctx, who, course, hole.Number, drawing.File()); err != nil {
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
