package figures

import (
	"testing"

	"strokeledger/analysis/account"
	"strokeledger/web/chart"
)

// Whoever adds up a working as it is printed comes to the loss that it ends with.
func TestWorking(t *testing.T) {
	off, in := account.Shot{Expected: 4.136, After: 3.654, Lost: .518}, account.Shot{Expected: 3.654, After: 0, Lost: -2.654}
	for _, c := range []struct {
		name  string
		shots []account.Shot
		want  string
	}{
		{"lost", []account.Shot{off}, "4.14 to play, 1 played, 3.65 left: 0.51 lost"},
		{"holed", []account.Shot{in}, "3.65 to play, 1 played, holed: 2.65 won back"},
		{"a penalty", []account.Shot{{Expected: 4, After: 3.8, Lost: 1.8}}, "4.00 to play, 1 played, 1 penalty stroke, 3.80 left: 1.80 lost"},
		{"nothing lost", []account.Shot{{Expected: 3, After: 2, Lost: 0}}, "3.00 to play, 1 played, 2.00 left: nothing lost"},
		{"two together", []account.Shot{off, in}, "7.79 to play, 2 played, 3.65 left: 2.14 won back"},
	} {
		if got := WorkingOf(c.shots...).String(); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	if got, want := OfHole([]account.Shot{off, in}), "4.14 to play, 2 played, holed: 2.14 won back"; got != want {
		t.Errorf("a hole: %q, want %q", got, want)
	}
}

// A stroke is as long on every statement, and a bar that leaves its picture is cut.
func TestCostBar(t *testing.T) {
	for _, c := range []struct {
		name string
		got  CostBar
		want CostBar
	}{
		{"one lost", ShotCost(1), CostBar{Size: "100.0", Zero: "24.0", Bar: chart.Bar{X: "24.0", Width: "34.0"}}},
		{"half won", ShotCost(-.5), CostBar{Size: "100.0", Zero: "24.0", Bar: chart.Bar{X: "7.0", Width: "17.0", Won: true}}},
		{"nothing", ShotCost(0), CostBar{Size: "100.0", Zero: "24.0", Bar: chart.Bar{X: "24.0", Width: "0.0", Empty: true}}},
		{"beyond", ShotCost(4), CostBar{Size: "100.0", Zero: "24.0", Bar: chart.Bar{X: "24.0", Width: "76.0", Cut: "100.0"}}},
		{"a hole", HoleCost(-2), CostBar{Size: "100.0", Zero: "30.0", Bar: chart.Bar{X: "0.0", Width: "30.0", Won: true, Cut: "0.0"}}},
	} {
		if c.got != c.want {
			t.Errorf("%s: %+v, want %+v", c.name, c.got, c.want)
		}
	}
}
