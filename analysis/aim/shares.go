package aim

// packed and unpacked turn shares into numbers in a row and back.
func (s *Shares) packed() [9]float32 {
	return [9]float32{float32(s.Green), float32(s.Fairway), float32(s.Rough), float32(s.Bunker), float32(s.Trees),
		float32(s.Water), float32(s.Out), float32(s.Penalty), float32(s.ShortSided)}
}

func unpacked(x [9]float64) Shares {
	return Shares{x[0], x[1], x[2], x[3], x[4], x[5], x[6], x[7], x[8]}
}

// plus adds other shares, times w.
func (s Shares) plus(o Shares, w float64) Shares {
	return Shares{s.Green + w*o.Green, s.Fairway + w*o.Fairway, s.Rough + w*o.Rough, s.Bunker + w*o.Bunker, s.Trees + w*o.Trees,
		s.Water + w*o.Water, s.Out + w*o.Out, s.Penalty + w*o.Penalty, s.ShortSided + w*o.ShortSided}
}
