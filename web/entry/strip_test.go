package entry

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
)

// aStrip is a par 4 of 400 yd that costs 1.285 strokes.
func aStrip() analysis.Strip {
	yards := func(all ...float64) (d []golf.Distance) {
		for _, x := range all {
			d = append(d, golf.Yards.Of(x))
		}
		return d
	}
	return analysis.Strip{Hole: golf.CardHole{Number: 6, Par: 4, Length: 400 * golf.Yard},
		Holes: []analysis.HoleCost{{Number: 5, Rounds: 3, Lost: -.3}, {Number: 6, Rounds: 2, Lost: 1.285}},
		Steps: []analysis.StripStep{
			{Stroke: 1, From: yards(400, 400), Lost: .335, Target: 400 * golf.Yard},
			{Stroke: 2, From: yards(200, 150), Lost: .7333, Target: 160 * golf.Yard},
			{Stroke: analysis.LaterStrokes, From: yards(20), Lost: .0667},
			{Stroke: 0, From: []golf.Distance{30 * golf.Foot, 4 * golf.Foot, 3 * golf.Foot}, Lost: .15},
		}}
}

func TestHoleStrip(t *testing.T) {
	h := newHoleStrip(CourseInput{ID: 3, Target: 79, Strip: aStrip()}, form.StandardUnits)
	if h.Heading != "Hole 6 over two rounds" || h.Target != "A 79 from" || h.Total != "+1.29" && h.Total != "+1.28" {
		t.Errorf("%+v", h)
	}
	if want := "Par 4, 400 yd. It costs you 1.2"; !strings.HasPrefix(h.Lede, want) || !strings.HasSuffix(h.Lede, " each time against a 79, most of it with the second shot.") {
		t.Error(h.Lede)
	}
	if want := []components.Link{{Name: "5: −0.3", At: "/courses/3?hole=5#strip"}, {Name: "6: +1.3", At: "/courses/3?hole=6#strip", Here: true}}; !slices.Equal(h.Holes, want) {
		t.Errorf("%+v", h.Holes)
	}
	second, green := h.Rows[1], h.Rows[3]
	if !slices.Equal(second.Marks, []StripMark{{"50%"}, {"62.5%"}}) || second.Spot != "60%" || second.Target != "160 yd" || second.From != "200 yd (200 to 150 yd)" || second.Shots != "2" {
		t.Errorf("%+v", second)
	}
	if green.Name != "On the green" || len(green.Marks) != 0 || green.Spot != "" || green.From != "4 ft (30 to 3 ft)" || h.Rows[2].Name != "Later shots" {
		t.Errorf("%+v", green)
	}
	if want := []StripTick{{"0%", "400"}, {"25%", "300"}, {"50%", "200"}, {"75%", "100"}, {"100%", "0"}}; !slices.Equal(h.Ticks, want) {
		t.Errorf("%+v", h.Ticks)
	}
}

// The costs of the strokes add up, as printed, to that of the hole.
func TestHoleStripAddsUp(t *testing.T) {
	h := newHoleStrip(CourseInput{ID: 3, Target: 79, Strip: aStrip()}, form.StandardUnits)
	read := func(text string) float64 {
		x, err := strconv.ParseFloat(strings.NewReplacer("−", "-", "+", "").Replace(text), 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	sum := 0.0
	for _, r := range h.Rows {
		sum += read(r.Cost)
	}
	if math.Abs(sum-read(h.Total)) > 1e-9 {
		t.Errorf("%v, total %s", sum, h.Total)
	}
}

func TestHoleStripWithoutLoss(t *testing.T) {
	won := aStrip()
	won.Holes[1].Lost = -.2
	if h := newHoleStrip(CourseInput{Target: 84, Strip: won}, form.Units{Far: golf.Metres, Green: golf.Metres}); !strings.HasSuffix(h.Lede, "You lose nothing on it against an 84.") || h.Rows[3].From != "1 m (9 to 1 m)" {
		t.Errorf("%q, %q", h.Lede, h.Rows[3].From)
	}
	if h := newHoleStrip(CourseInput{}, form.StandardUnits); h.Heading != "" {
		t.Errorf("%+v", h)
	}
}
