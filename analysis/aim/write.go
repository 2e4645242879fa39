package aim

import (
	"encoding/json"
	"math"
)

// written is a picture as its file has it; yards and degrees.
type written struct {
	Version int           `json:"version"`
	Par     int           `json:"par"`
	Length  float64       `json:"length"`
	Bends   [][2]float64  `json:"bends"`           // distance, degrees
	Fairway [][3]float64  `json:"fairway"`         // distance, left, right
	Zones   []writtenZone `json:"zones"`           //
	Green   *writtenGreen `json:"green,omitempty"` // none where it is not drawn
}

type writtenZone struct {
	Kind   string      `json:"kind"`
	From   *float64    `json:"from"` // null where it is open, as are the next
	To     *float64    `json:"to"`
	Across [2]*float64 `json:"across"`
}

type writtenGreen struct {
	Front float64 `json:"front"`
	Width float64 `json:"width"`
	Depth float64 `json:"depth"`
	Turn  float64 `json:"turn"`
}

// Write writes a picture as the file that Read reads. Its numbers must be finite,
// apart from the open ends of zones.
func (p Picture) Write() []byte {
	w := written{version, p.Par, p.Length, [][2]float64{}, [][3]float64{}, []writtenZone{}, nil}
	for _, b := range p.Bends {
		w.Bends = append(w.Bends, [2]float64{b.At, b.Degrees})
	}
	for _, f := range p.Fairway {
		w.Fairway = append(w.Fairway, [3]float64{f.At, f.Left, f.Right})
	}
	for _, z := range p.Zones {
		w.Zones = append(w.Zones, writtenZone{z.Kind.String(), end(z.From), end(z.To), [2]*float64{end(z.Left), end(z.Right)}})
	}
	if g := p.Green; g.Drawn() {
		w.Green = &writtenGreen{g.Front, g.Width, g.Depth, g.Turn}
	}
	data, err := json.Marshal(w)
	if err != nil {
		panic("aim: a picture with a number that is not finite: " + err.Error())
	}
	return data
}

// end is an end of a zone, nil where it is open.
func end(x float64) *float64 {
	if math.IsInf(x, 0) {
		return nil
	}
	return &x
}
