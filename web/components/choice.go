package components

import (
	"fmt"
)

// Choice is one of a few.
type Choice struct {
	Value  string // what the form sends
	Name   string // what the reader sees
	Chosen bool   // it is the one chosen now
}

// Radios are a few, of which one is chosen.
type Radios struct {
	Name    string   // of the inputs in their form
	ID      string   // of the first on the page; its name when empty
	Label   string   // what is asked, over the choices
	All     []Choice // in the order shown
	Problem string   // what was wrong, empty when nothing
}

// id tells the first of them from other inputs of the page.
func (c Radios) id() string {
	if c.ID == "" {
		return c.Name
	}
	return c.ID
}

// inputID is the id of one of them.
func (c Radios) inputID(i int) string {
	if i == 0 {
		return c.id()
	}
	return fmt.Sprintf("%s-%d", c.id(), i+1)
}

// AddTo adds what is wrong with the choice.
func (c Radios) AddTo(s *Summary) { s.Add(c.id(), c.Label, c.Problem) }
