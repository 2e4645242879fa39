package handlers

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// tag is an opening tag of a page.
type tag struct {
	name  string
	attrs map[string]string
	at    int // in the page
}

var (
	tagPattern  = regexp.MustCompile(`<([a-z][a-z0-9]*)((?:\s+[a-z][a-z0-9-]*(?:="[^"]*")?)*)\s*/?>`)
	attrPattern = regexp.MustCompile(`([a-z][a-z0-9-]*)(?:="([^"]*)")?`)
)

// tags are the opening tags of a page that templ wrote.
func tags(body string) []tag {
	var all []tag
	for _, m := range tagPattern.FindAllStringSubmatchIndex(body, -1) {
		t := tag{name: body[m[2]:m[3]], attrs: map[string]string{}, at: m[0]}
		for _, a := range attrPattern.FindAllStringSubmatch(body[m[4]:m[5]], -1) {
			t.attrs[a[1]] = a[2]
		}
		all = append(all, t)
	}
	return all
}

func withID(all []tag, id string) (tag, bool) {
	i := slices.IndexFunc(all, func(t tag) bool { return t.attrs["id"] == id })
	if i < 0 {
		return tag{}, false
	}
	return all[i], true
}

// unnamed lists what keeps a page from being read by ear: ids that come twice,
// and controls without a name.
func unnamed(body string) []string {
	var found []string
	all, seen, labelled := tags(body), map[string]bool{}, map[string]bool{}
	for _, t := range all {
		if id, has := t.attrs["id"]; has {
			if seen[id] {
				found = append(found, "twice the id "+id)
			}
			seen[id] = true
		}
		if t.name == "label" {
			labelled[t.attrs["for"]] = true
		}
	}
	for _, t := range all {
		for _, list := range []string{"aria-describedby", "aria-labelledby", "for"} {
			for id := range strings.FieldsSeq(t.attrs[list]) {
				if !seen[id] {
					found = append(found, fmt.Sprintf("%s names %s, which is not there", list, id))
				}
			}
		}
		if !slices.Contains([]string{"input", "select", "textarea"}, t.name) || t.attrs["type"] == "hidden" {
			continue
		}
		before := body[:t.at]
		inside := strings.LastIndex(before, "<label") > strings.LastIndex(before, "</label>")
		if !inside && t.attrs["aria-label"] == "" && t.attrs["aria-labelledby"] == "" && !labelled[t.attrs["id"]] {
			found = append(found, fmt.Sprintf("no label for %s %s", t.name, t.attrs["name"]))
		}
	}
	return found
}
