package analysis

import (
	"strings"
	"testing"
)

const keptPlan = `{"version":1,"level":84,"items":[{"kind":0,"part":"approach","band":{"par":0,"lie":"","low_in":0,"high_in":3600},"win_back":1.2,"low":0.5,"high":2,"sure":1,` +
	`"drill":"lag","drill_name":"x","tries":10,"pass":5,"sessions":1,"chance_target":0.6,"chance_today":0.3,"level":86,"minutes":20,"measure_again_after_rounds":8}]}`

// A plan from a file has figures that a plan can have: what is beyond would be printed,
// and drawn.
func TestFiguresOfAPlanFromAFile(t *testing.T) {
	if _, err := CleanKept([]byte(keptPlan)); err != nil {
		t.Fatal(err)
	}
	for old, news := range map[string][]string{
		`"level":84`: {"1e308", "-1", "1e309"}, `"win_back":1.2`: {"1e308", "-201"}, `"low":0.5`: {"-1e308", "1e17"}, `"high":2`: {"1e308", "201"},
		`"chance_target":0.6`: {"1.1", "-0.1", "1e308"}, `"chance_today":0.3`: {"2"}, `"level":86`: {"1e17"}, `"tries":10`: {"2147483647", "-1", "4"}, `"pass":5`: {"-5", "11"},
		`"sessions":1`: {"2147483647", "-1"}, `"minutes":20`: {"601", "-1"}, `"measure_again_after_rounds":8`: {"-1", "10001"}, `"par":0`: {"9", "-1"},
		`"low_in":0`: {"-1", "1e308"}, `"high_in":3600`: {"1e308"}, `"kind":0`: {"-1", "99"}, `"sure":1`: {"99"}, `"version":1`: {"2"}, `"part":"approach"`: {`"moon"`, "7"},
	} {
		name, _, _ := strings.Cut(old, ":")
		for _, value := range news {
			if out, err := CleanKept([]byte(strings.Replace(keptPlan, old, name+":"+value, 1))); err == nil {
				t.Errorf("%s: %s was taken: %s", name, value, out)
			}
		}
	}
}
