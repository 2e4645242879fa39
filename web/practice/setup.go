package practice

import (
	"fmt"
	"math"
	"strings"

	"strokeledger/analysis/golfer"
	"strokeledger/analysis/practice"
	"strokeledger/web/components"
	"strokeledger/web/words"
)

// Where a set-up is drawn.
const (
	setUpWidth, setUpHigh = 340.0, 120.0
	setUpMiddle           = 54.0 // down to the line of play
	setUpFrom, setUpTo    = 24.0, 300.0
)

// setUp draws how a drill is set up, from above. nil for a drill without a drawing,
// which is none of the house's.
func setUp(d practice.Drill) *components.Drawing {
	draw := map[string]func(*components.Drawing, practice.Drill){
		"start-line": drawStartLine, "ladder": drawLadder, "lag": drawLag, "round-the-hole": drawRound, "chip-fairway": drawChips, "chip-rough": drawChips,
		"bunker": drawBunker, "up-and-down": drawUpAndDown, "wedge-ladder": drawMarkers, "approach": drawMarkers, "corridor": drawCorridor,
		"short-side": drawShortSide, "back-into-play": drawGate,
	}[d.Key]
	if draw == nil {
		return nil
	}
	p := &components.Drawing{Class: "set-up-drawing", Width: setUpWidth, Height: setUpHigh}
	draw(p, d)
	return p
}

func drawBall(p *components.Drawing, x, y float64) { p.DrawDot("set-up-ball", x, y, 4.5) }

func drawHole(p *components.Drawing, x, y float64) { p.DrawDot("set-up-hole", x, y, 7) }

// drawFlag is a hole far away, seen from the side.
func drawFlag(p *components.Drawing, x, y float64) {
	p.DrawPath("set-up-flag", fmt.Sprintf("M%.1f %.1fv-22l10 4l-10 4", x, y))
}

// drawLength is a dimension below a set-up, with its words.
func drawLength(p *components.Drawing, from, to, y float64, text string) {
	p.DrawPath("set-up-length", fmt.Sprintf("M%.1f %.1fH%.1fM%.1f %.1fv8M%.1f %.1fv8", from, y, to, from, y-4, to, y-4))
	p.DrawWords("set-up-words", (from+to)/2, y+14, "middle", text)
}

// feetAt are the lengths of a drill's stations in feet, yardsAt in yards.
func feetAt(d practice.Drill) (all []float64) {
	for _, s := range d.Stations {
		all = append(all, s.Distance.Feet())
	}
	return all
}

func yardsAt(d practice.Drill) (all []float64) {
	for _, s := range d.Stations {
		all = append(all, s.Distance.Yards())
	}
	return all
}

// listed writes lengths in a sentence.
func listed(all []float64, unit string) string {
	var texts []string
	for _, x := range all {
		texts = append(texts, words.Plain(x))
	}
	last := len(texts) - 1
	if last == 0 {
		return texts[0] + " " + unit
	}
	return strings.Join(texts[:last], ", ") + " and " + texts[last] + " " + unit
}

func drawStartLine(p *components.Drawing, d practice.Drill) {
	feet := feetAt(d)[0]
	window := golfer.StartLineWindow(feet) * 180 / math.Pi
	p.Label = fmt.Sprintf("From above: the ball, %s ft of straight putt along a line, and the hole. The putt may start %.1f° to either side and still go in.", words.Plain(feet), window)
	p.DrawPath("set-up-area", fmt.Sprintf("M%.1f %.1fL%.1f %.1fV%.1fZ", setUpFrom, setUpMiddle, setUpTo, setUpMiddle-6, setUpMiddle+6))
	p.DrawLine("set-up-line", setUpFrom, setUpMiddle, setUpTo, setUpMiddle)
	drawBall(p, setUpFrom, setUpMiddle)
	drawHole(p, setUpTo, setUpMiddle)
	p.DrawWords("", setUpTo, setUpMiddle-16, "end", fmt.Sprintf("%.1f° to either side", window))
	drawLength(p, setUpFrom, setUpTo, setUpMiddle+28, words.Plain(feet)+" ft, straight and level")
}

func drawLadder(p *components.Drawing, d practice.Drill) {
	all := feetAt(d)
	p.Label = "From above: a hole, and a tee at each of " + listed(all, "ft") + " from it on one line."
	p.DrawLine("set-up-line", setUpFrom, setUpMiddle, setUpTo, setUpMiddle)
	for _, x := range all {
		at := setUpTo - (setUpTo-setUpFrom)*x/10
		drawBall(p, at, setUpMiddle)
		p.DrawWords("set-up-words", at, setUpMiddle+22, "middle", words.Plain(x))
	}
	p.DrawWords("", setUpTo, setUpMiddle+22, "middle", "ft")
	drawHole(p, setUpTo, setUpMiddle)
}

func drawLag(p *components.Drawing, d practice.Drill) {
	all := feetAt(d)
	p.Label = "From above: marks at " + listed(all, "ft") + " from a hole, with tees 4 ft from it on every side."
	const foot, hole = 5.0, 284.0
	p.DrawDot("set-up-ring", hole, setUpMiddle, 4*foot)
	p.DrawLine("set-up-line", hole-50*foot, setUpMiddle, hole, setUpMiddle)
	for _, x := range all {
		drawBall(p, hole-foot*x, setUpMiddle)
		p.DrawWords("set-up-words", hole-foot*x, setUpMiddle+22, "middle", words.Plain(x)+" ft")
	}
	drawHole(p, hole, setUpMiddle)
	p.DrawWords("", hole, setUpMiddle+40, "middle", "4 ft round")
}

func drawRound(p *components.Drawing, d practice.Drill) {
	feet, n := feetAt(d)[0], len(d.Stations)
	p.Label = fmt.Sprintf("From above: a hole, and %s tees round it, each %s ft away.", words.Spelled(n), words.Plain(feet))
	const x, y, r = setUpWidth / 2, 60.0, 44.0
	p.DrawDot("set-up-ring", x, y, r)
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		drawBall(p, x+r*cos, y+r*sin)
	}
	drawHole(p, x, y)
	p.DrawWords("set-up-words", x+r+16, y+4, "start", words.Plain(feet)+" ft, all round")
}

// within is how near a chip must end, in feet, by the key of its drill.
var within = map[string]float64{"chip-fairway": 10, "chip-rough": 12, "bunker": 12}

func drawChips(p *components.Drawing, d practice.Drill) {
	all, near := yardsAt(d), within[d.Key]
	lie := "short grass"
	const yard, hole = 12.0, 264.0
	if d.Key == "chip-rough" {
		lie = "rough"
		p.DrawHatch("rough-hatching", 8, setUpMiddle-24, hole-yard*8-8, 48)
	}
	p.Label = fmt.Sprintf("From above: %s, balls at %s from a hole, and tees %s ft from it on every side.", lie, listed(all, "yd"), words.Plain(near))
	p.DrawDot("set-up-ring", hole, setUpMiddle, yard*near/3)
	p.DrawLine("set-up-line", hole-yard*all[len(all)-1], setUpMiddle, hole, setUpMiddle)
	for _, x := range all {
		drawBall(p, hole-yard*x, setUpMiddle)
		p.DrawWords("set-up-words", hole-yard*x, setUpMiddle+38, "middle", words.Plain(x)+" yd")
	}
	drawHole(p, hole, setUpMiddle)
	p.DrawWords("", hole, setUpMiddle+58, "middle", words.Plain(near)+" ft round")
}

func drawBunker(p *components.Drawing, d practice.Drill) {
	yd, near := yardsAt(d)[0], within[d.Key]
	const yard, hole = 16.0, 250.0
	p.Label = fmt.Sprintf("From above: a ball in sand %s yd from a hole, and tees %s ft from it on every side.", words.Plain(yd), words.Plain(near))
	at := hole - yard*yd
	p.DrawPath("set-up-sand", fmt.Sprintf("M%.1f %.1fc-14-20 16-34 40-28c22-6 44 4 38 26c4 20-20 30-40 24c-24 4-44-4-38-22Z", at-24, setUpMiddle))
	p.DrawDot("set-up-ring", hole, setUpMiddle, yard*near/3/1.5)
	p.DrawLine("set-up-line", at, setUpMiddle, hole, setUpMiddle)
	drawBall(p, at, setUpMiddle)
	drawHole(p, hole, setUpMiddle)
	p.DrawWords("", hole, setUpMiddle-46, "middle", words.Plain(near)+" ft round")
	drawLength(p, at, hole, setUpMiddle+48, words.Plain(yd)+" yd")
}

func drawUpAndDown(p *components.Drawing, _ practice.Drill) {
	p.Label = "From above: one green and nine balls round it, three each from short grass, rough and sand, 8, 14 and 20 yd from the hole."
	const yard, x, y = 6.0, 170.0, 96.0
	p.DrawPath("set-up-area", fmt.Sprintf("M%.1f %.1fc0-24 64-24 64 0c0 20-64 20-64 0Z", x-32, y))
	for i, lie := range []string{"short grass", "rough", "sand"} {
		sin, cos := math.Sincos([]float64{math.Pi, 1.32 * math.Pi, 2 * math.Pi}[i])
		for _, yd := range []float64{8, 14, 20} {
			drawBall(p, x+yard*yd*cos, y+yard*yd*sin*.62)
		}
		p.DrawWords("set-up-words", []float64{12, 92, 328}[i], []float64{y - 14, 14, y - 14}[i], []string{"start", "end", "end"}[i], lie)
	}
	drawHole(p, x, y)
	p.DrawWords("", x+48, y+20, "start", "8, 14 and 20 yd")
}

func drawMarkers(p *components.Drawing, d practice.Drill) {
	all := yardsAt(d)
	farthest := all[len(all)-1]
	unit := (setUpTo - 30 - setUpFrom) / farthest
	near := func(float64) float64 { return 15 }
	if d.Key == "wedge-ladder" {
		near = func(yd float64) float64 { return yd / 10 }
	}
	var rings []float64
	p.DrawLine("set-up-line", setUpFrom, setUpMiddle, setUpFrom+unit*farthest, setUpMiddle)
	for _, yd := range all {
		x := setUpFrom + unit*yd
		p.DrawDot("set-up-ring", x, setUpMiddle, unit*near(yd))
		drawFlag(p, x, setUpMiddle)
		p.DrawWords("set-up-words", x, setUpMiddle+48, "middle", words.Plain(yd)+" yd")
		rings = append(rings, near(yd))
	}
	drawBall(p, setUpFrom, setUpMiddle)
	p.Label = fmt.Sprintf("From above: flags at %s from the ball. A ball counts within the ring: %s.", listed(all, "yd"), listed(rings, "yd"))
	if len(rings) > 1 && rings[0] == rings[1] {
		p.Label = fmt.Sprintf("From above: flags at %s from the ball. A ball counts within the ring of %s yd.", listed(all, "yd"), words.Plain(rings[0]))
	}
}

func drawCorridor(p *components.Drawing, _ practice.Drill) {
	p.Label = "From above: a ball on the tee and a corridor 40 yd wide about its line. A drive counts inside it, past 85 in 100 of the usual drive."
	const half, least = 30.0, setUpFrom + (setUpTo-setUpFrom)*.85
	p.DrawRect("set-up-area", least, setUpMiddle-half, setUpWidth-least, 2*half)
	for _, y := range []float64{setUpMiddle - half, setUpMiddle + half} {
		p.DrawLine("set-up-stake", setUpFrom+40, y, setUpWidth, y)
	}
	p.DrawLine("set-up-line", setUpFrom, setUpMiddle, setUpTo, setUpMiddle)
	p.DrawLine("set-up-stake", least, setUpMiddle-half, least, setUpMiddle+half)
	drawBall(p, setUpFrom, setUpMiddle)
	p.DrawWords("set-up-words", 110, setUpMiddle-half-6, "middle", "40 yd wide")
	p.DrawWords("set-up-words", least, setUpMiddle+half+16, "middle", "85 in 100 of the usual drive")
}

func drawShortSide(p *components.Drawing, _ practice.Drill) {
	p.Label = "From above: a ball in the rough 12 yd from the hole, which is cut 3 yd from the near edge of the green."
	const yard, hole = 16.0, 230.0
	edge := hole - 3*yard
	p.DrawHatch("rough-hatching", 8, setUpMiddle-24, edge-8, 48)
	p.DrawRect("set-up-area", edge, setUpMiddle-34, setUpWidth-edge-6, 68)
	p.DrawLine("set-up-line", hole-12*yard, setUpMiddle, hole, setUpMiddle)
	drawBall(p, hole-12*yard, setUpMiddle)
	drawHole(p, hole, setUpMiddle)
	p.DrawWords("set-up-words", (edge+hole)/2, setUpMiddle-40, "middle", "3 yd")
	drawLength(p, hole-12*yard, hole, setUpMiddle+48, "12 yd")
}

func drawGate(p *components.Drawing, _ practice.Drill) {
	p.Label = "From above: a ball under branches and, 40 yd away, two stakes 8 yd apart to punch it through."
	const gate, half = 280.0, 24.0
	for _, y := range []float64{setUpMiddle - 26, setUpMiddle + 26} {
		p.DrawDot("set-up-tree", 60, y, 16)
	}
	p.DrawLine("set-up-line", setUpFrom, setUpMiddle, gate+30, setUpMiddle)
	for _, y := range []float64{setUpMiddle - half, setUpMiddle + half} {
		p.DrawDot("set-up-post", gate, y, 4)
	}
	drawBall(p, setUpFrom, setUpMiddle)
	p.DrawWords("set-up-words", gate+10, setUpMiddle-half-6, "middle", "8 yd apart")
	drawLength(p, setUpFrom, gate, setUpMiddle+46, "40 yd")
}
