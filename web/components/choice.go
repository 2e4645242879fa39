package components

import (
	"fmt"
)

// Choice is one of several that the reader can choose from.
type Choice struct {
	Value  string // what the form sends
	Name   string // what the reader sees
	Chosen bool   // it is the one chosen now
}

// Radios are radio buttons: a few choices, of which one is chosen.
type Radios struct {
	Name    string   // of the inputs in their form
	ID      string   // of the first button on the page; Name when empty
	Label   string   // what is asked, over the choices
	All     []Choice // in the order shown
	Problem string   // what was wrong, empty when nothing
}

// id is the id of the first button on the page.
func (c Radios) id() string {
	if c.ID == "" {
		return c.Name
	}
	return c.ID
}

// inputID is the id of button i, counted from 0.
func (c Radios) inputID(i int) string {
	if i == 0 {
		return c.id()
	}
	return fmt.Sprintf("%s-%d", c.id(), i+1)
}

// AddTo adds what is wrong with the choice.
func (c Radios) AddTo(s *Summary) { s.Add(c.id(), c.Label, c.Problem) }
