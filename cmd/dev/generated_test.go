package main

import "testing"

func TestStaleTemplatesAreFound(t *testing.T) {
	before := map[string][]byte{"a_templ.go": []byte("1"), "b_templ.go": []byte("2")}
	after := map[string][]byte{"a_templ.go": []byte("1"), "b_templ.go": []byte("3"), "c_templ.go": []byte("4")}
	if got := differing(before, after); len(got) != 2 {
		t.Errorf("%v", got)
	}
	if got := differing(before, before); len(got) != 0 {
		t.Errorf("%v", got)
	}
}
