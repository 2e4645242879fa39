package components

import "fmt"

// Summary heads a form that was not saved: what is wrong, with a link to each
// field. It takes the focus, so that the page is shown from there.
type Summary struct {
	Heading string        // empty when nothing is wrong
	Links   []SummaryLink // one for each thing that is wrong, in the order of the fields
}

// SummaryLink leads to a field and says what is wrong with it.
type SummaryLink struct {
	At   string // place of the field on the page
	Text string // label of the field and what is wrong with it
}

// Summed sums up what is wrong with fields, in their order.
func Summed(fields ...Field) Summary {
	var s Summary
	for _, f := range fields {
		s.Add(f.Key(), f.Label, f.Problem)
	}
	return s
}

// Add adds what is wrong with the field of an id; nothing when problem is empty.
func (s *Summary) Add(id, label, problem string) {
	if problem == "" {
		return
	}
	text := problem
	if label != "" {
		text = label + ": " + problem
	}
	s.Links = append(s.Links, SummaryLink{"#" + id, text})
	s.Heading = "Not saved yet: one thing to fix."
	if n := len(s.Links); n > 1 {
		s.Heading = fmt.Sprintf("Not saved yet: %d things to fix.", n)
	}
}

// Saying is the summary under another heading, where nothing was to be saved.
func (s Summary) Saying(heading string) Summary {
	if s.Heading != "" {
		s.Heading = heading
	}
	return s
}
