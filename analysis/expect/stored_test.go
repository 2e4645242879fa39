package expect

import (
	"bytes"
	"math"
	"testing"
)

func TestLevelFileRoundTrip(t *testing.T) {
	stored, err := Committed()
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(Encode(stored), levelsFile) {
		t.Error("the level file is not what its levels are written as")
	}
}

func TestDecodeRefuses(t *testing.T) {
	good := Encode([]Stored{{T: 0}, {T: 1}})
	if _, err := Decode(good); err != nil {
		t.Fatal(err)
	}
	for name, data := range map[string][]byte{
		"nothing":             nil,
		"a cut file":          good[:len(good)-1],
		"levels out of order": Encode([]Stored{{T: 1}, {T: 0}}),
		"a number not finite": Encode([]Stored{{T: math.NaN()}}),
	} {
		if _, err := Decode(data); err == nil {
			t.Errorf("%s was read", name)
		}
	}
}
