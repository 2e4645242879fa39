package form

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// How far from where it is asked about ground reaches along the hole and across it, in
// yards. Ours; the rows are there to be refined.
const (
	fairwayBefore = 65 // of driving length, where the fairway begins
	fairwayShort  = 8  // of the green, where it ends
	bunkerAlong   = 14 // before and beyond driving length
	bunkerAcross  = 14
	pondAlong     = 45
	treesFrom     = 100 // from the tee
	outBeyond     = 30  // of the green
)

// pictureRows collects the rows of a picture.
type pictureRows struct{ rows []string }

func (p *pictureRows) add(format string, values ...float64) {
	whole := make([]any, len(values))
	for i, v := range values {
		whole[i] = math.Round(v) + 0 // + 0 takes the sign off a negative zero
	}
	p.rows = append(p.rows, fmt.Sprintf(format, whole...))
}

// zone is a row of ground from and to along the hole, between two places across it.
func (p *pictureRows) zone(kind string, from, to, left, right float64) {
	if math.IsInf(left, -1) && math.IsInf(right, 1) {
		p.add(kind+" %.0f to %.0f", from, to)
		return
	}
	p.add(kind+" %.0f to %.0f, across "+end(left)+" to "+end(right), from, to)
}

// end is a place across the hole, which may be open.
func end(x float64) string {
	if math.IsInf(x, 0) {
		return "open"
	}
	return strconv.Itoa(int(math.Round(x)))
}

// side is such a row on one side of the middle: from near to far, which may be
// infinite.
func (p *pictureRows) side(kind string, from, to, sign, near, far float64) {
	if sign < 0 {
		near, far = -far, -near
	}
	p.zone(kind, max(from, 0), to, near, far)
}

// Sketch makes rows of the answers. Ground beside the tee shot comes before the
// green's, since later rows lie over earlier ones.
func (f PictureForm) Sketch() string {
	var p pictureRows
	deep, wide := f.Depth.Value.Yards(), f.Width.Value.Yards()
	front := math.Round(f.length - deep/2)
	if f.HasTeeShot() {
		f.teeShot(&p, front, deep)
	}
	p.add("green %.0f: %.0f wide, %.0f deep", front, wide, deep)
	f.short(&p, front, wide)
	f.beside(&p, f.GreenLeft.Value, -1, front, wide, deep)
	f.beside(&p, f.GreenRight.Value, 1, front, wide, deep)
	return strings.Join(p.rows, "\n")
}

func (f PictureForm) teeShot(p *pictureRows, front, deep float64) {
	for _, b := range Bends {
		if b.Value == f.Bend.Value && b.Degrees != 0 {
			p.add("bend %.0f: %.0f "+turned(b.Degrees), f.driving, math.Abs(float64(b.Degrees)))
		}
	}
	whole := math.Round(f.Fairway.Value.Yards())
	left := math.Floor(whole / 2)
	for _, at := range []float64{f.driving - fairwayBefore, f.driving, front - fairwayShort} {
		p.add("fairway %.0f: %.0f left, %.0f right", at, left, whole-left)
	}
	f.along(p, f.LeftIs.Value, -1, f.Left.Value.Yards(), front, deep)
	f.along(p, f.RightIs.Value, 1, f.Right.Value.Yards(), front, deep)
}

func turned(degrees int) string {
	if degrees < 0 {
		return "left"
	}
	return "right"
}

// along is ground beside the tee shot.
func (f PictureForm) along(p *pictureRows, kind string, sign, near, front, deep float64) {
	open := math.Inf(1)
	switch kind {
	case "out":
		p.side(kind, 0, front+deep+outBeyond, sign, near, open)
	case "trees":
		p.side(kind, min(treesFrom, f.driving/2), front, sign, near, open)
	case "rough":
		p.side(kind, f.driving-fairwayBefore, front, sign, near, open)
	case "water":
		p.side(kind, f.driving-pondAlong, f.driving+pondAlong, sign, near, open)
	case "bunker":
		p.side(kind, f.driving-bunkerAlong, f.driving+bunkerAlong, sign, near, near+bunkerAcross)
	}
}

// short is ground short of the green.
func (f PictureForm) short(p *pictureRows, front, wide float64) {
	open := math.Inf(1)
	switch kind := f.ShortIs.Value; kind {
	case "out", "trees":
		p.zone(kind, front-40, front-15, -open, open)
	case "water":
		p.zone(kind, front-20, front-4, -open, open)
	case "rough":
		p.zone(kind, front-20, front-1, -wide, wide)
	case "bunker":
		p.zone(kind, front-12, front-2, -wide/3, wide/3)
	}
}

// beside is ground beside the green.
func (f PictureForm) beside(p *pictureRows, kind string, sign, front, wide, deep float64) {
	open, half := math.Inf(1), wide/2
	switch kind {
	case "out":
		p.side(kind, front-40, front+deep+outBeyond, sign, half+12, open)
	case "trees":
		p.side(kind, front-30, front+deep+20, sign, half+8, open)
	case "water":
		p.side(kind, front-15, front+deep+10, sign, half+4, open)
	case "rough":
		p.side(kind, front-10, front+deep+10, sign, half+1, open)
	case "bunker":
		p.side(kind, front+deep*.15, front+deep*.75, sign, half+1, half+11)
	}
}
