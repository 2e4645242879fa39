package form_test

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/form"
)

// A drive into the rough, a second to the green, two putts.
func ExampleParseLine() {
	card := golf.CardHole{Number: 1, Par: 4, Length: 392 * golf.Yard}
	l := form.ParseLine("r165 g24 3", card, form.StandardUnits)
	for _, s := range l.Hole.Shots {
		fmt.Println(s.Lie, s.WrittenUnit().In(s.Distance), s.WrittenUnit())
	}
	fmt.Println(l.Hole.Strokes())
	// Output:
	// tee 392 yd
	// rough 165 yd
	// green 24 ft
	// green 3 ft
	// 4
}

// What is wrong is said with what is allowed.
func ExampleParseLine_problem() {
	card := golf.CardHole{Number: 1, Par: 4, Length: 392 * golf.Yard}
	l := form.ParseLine("r165w x g24", card, form.StandardUnits)
	fmt.Println(l.Items[l.Problems[0].Item].Text + ": " + l.Problems[0].What)
	// Output: x: the ball was dropped, so it was not played again from the same spot
}

// A line that was typed in yards, for a reader of metres.
func ExampleShown() {
	card := golf.CardHole{Number: 1, Par: 4, Length: 392 * golf.Yard}
	fmt.Println(form.Shown("r165 g24 3 =4", card, form.StandardUnits, form.Units{Far: golf.Metres, Green: golf.Metres}))
	// Output: r165yd g24ft 3ft =4
}

func ExamplePasteCard() {
	p := form.PasteCard("Hole Par Metres\n1. 4 347,5 7\n2. 3 158 15\n", golf.Metres)
	holes, problems := p.Card.Read(golf.Metres, form.KnownCard{Size: 2})
	for _, h := range holes {
		fmt.Printf("hole %d, par %d, %s m, index %d\n", h.Number, h.Par, form.WriteLength(h.Length, golf.Metres), h.Index)
	}
	fmt.Println(len(p.Problems), len(problems))
	// Output:
	// hole 1, par 4, 347.5 m, index 7
	// hole 2, par 3, 158 m, index 15
	// 0 0
}
