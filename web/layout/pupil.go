package layout

// PupilBar stands on every page of a pupil that a coach sees: whose page it is, the
// other pages, and where to go on.
type PupilBar struct {
	Name  string        // the pupil's
	Facts string        // the target, and from which day the pupil shares
	Pages []Destination // of the pupil
	Turn  []Turn        // the round before, the round after, the next in the queue
}

// Turn is a way on from a page of a pupil.
type Turn struct {
	At, Name string
	Back     bool // it leads to an earlier round
	On       bool // it leads to a later round
}
