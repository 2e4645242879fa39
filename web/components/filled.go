package components

import (
	"slices"

	"strokeledger/web/form"
)

// Filled is a field with what was typed into it and what was wrong with that.
func Filled[T any](f Field, from form.Field[T]) Field {
	f.Value, f.Problem = from.Text, from.Problem
	return f
}

// FilledArea is a large field with what was typed into it and what was wrong with
// that.
func FilledArea(a Area, from form.Text) Area {
	a.Value, a.Problem = from.Text, from.Problem
	return a
}

// Picked is a few choices with the one that was chosen, and what was wrong with
// that.
func Picked[T any](r Radios, from form.Field[T]) Radios {
	r.All, r.Problem = slices.Clone(r.All), from.Problem
	for i := range r.All {
		r.All[i].Chosen = r.All[i].Value == from.Text
	}
	return r
}
