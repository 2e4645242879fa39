package aim

import (
	"encoding/json"
	"io"
	"math"
)

// picture reads the whole file.
func (d reader) picture(p *Picture) error {
	seen := map[string]bool{}
	err := d.object("", 0, "version, par, length, bends, fairway, zones, green", func(name string) error {
		seen[name] = true
		return d.field(p, name)
	})
	if err != nil {
		return err
	}
	for _, name := range []string{"version", "par", "length"} {
		if !seen[name] {
			return faultAt(name, 0, "missing")
		}
	}
	if _, err := d.Token(); err != io.EOF {
		return faultAt("", 0, "something comes after the picture")
	}
	return nil
}

// field reads one field of a picture.
func (d reader) field(p *Picture, name string) error {
	switch name {
	case "version":
		var v int
		if err := d.whole(name, &v); err != nil || v == version {
			return err
		}
		return faultAt(name, 0, "allowed: %d", version)
	case "par":
		return d.whole(name, &p.Par)
	case "length":
		return d.number(name, 0, "yards", &p.Length, 0)
	case "bends":
		return d.list(name, MaxBends, func(row int) error {
			var b Bend
			err := d.numbers(name, row, []*float64{&b.At, &b.Degrees}, nil)
			p.Bends = append(p.Bends, b)
			return err
		})
	case "fairway":
		return d.list(name, MaxWidths, func(row int) error {
			var w Width
			err := d.numbers(name, row, []*float64{&w.At, &w.Left, &w.Right}, nil)
			p.Fairway = append(p.Fairway, w)
			return err
		})
	case "zones":
		return d.list(name, MaxZones, func(row int) error {
			z, err := d.zone(row)
			p.Zones = append(p.Zones, z)
			return err
		})
	case "green":
		return d.green(&p.Green)
	}
	return faultAt("", 0, "unknown field %q; allowed: version, par, length, bends, fairway, zones, green", shortened(name))
}

// whole reads a whole number.
func (d reader) whole(part string, to *int) error {
	var x float64
	if err := d.number(part, 0, "a whole number", &x, 0); err != nil {
		return err
	}
	if x != math.Trunc(x) || math.Abs(x) > 1e6 {
		return faultAt(part, 0, "%s; allowed: a whole number", plain(x))
	}
	*to = int(x)
	return nil
}

const (
	zoneFields  = "kind, from, to, across"
	greenFields = "front, width, depth, turn"
)

// zone reads a zone. Ends that are missing are open.
func (d reader) zone(row int) (Zone, error) {
	z := Zone{From: math.Inf(-1), To: math.Inf(1), Left: math.Inf(-1), Right: math.Inf(1)}
	err := d.object("zones", row, zoneFields, func(name string) error {
		switch name {
		case "kind":
			return d.kind(row, &z.Kind)
		case "from":
			return d.number("zones", row, name, &z.From, math.Inf(-1))
		case "to":
			return d.number("zones", row, name, &z.To, math.Inf(1))
		case "across":
			return d.numbers("zones", row, []*float64{&z.Left, &z.Right}, []float64{math.Inf(-1), math.Inf(1)})
		}
		return faultAt("zones", row, "unknown field %q; allowed: %s", shortened(name), zoneFields)
	})
	return z, err
}

// kind reads the kind of a zone.
func (d reader) kind(row int, to *Kind) error {
	t, err := d.next()
	if err != nil {
		return err
	}
	text, is := t.(string)
	if !is {
		return faultAt("zones", row, "kind: %s; allowed: out, water, trees, bunker, rough", described(t))
	}
	if *to, err = ParseKind(text); err != nil {
		return faultAt("zones", row, "%v", err)
	}
	return nil
}

// green reads the green; null is one that is not drawn.
func (d reader) green(g *Green) error {
	t, err := d.next()
	if err != nil || t == nil {
		return err
	}
	if t != json.Delim('{') {
		return faultAt("green", 0, "%s; allowed: an object with %s, or null", described(t), greenFields)
	}
	missing := map[string]bool{"front": true, "width": true, "depth": true}
	err = d.fields("green", 0, func(name string) error {
		to, known := map[string]*float64{"front": &g.Front, "width": &g.Width, "depth": &g.Depth, "turn": &g.Turn}[name]
		if !known {
			return faultAt("green", 0, "unknown field %q; allowed: %s", shortened(name), greenFields)
		}
		delete(missing, name)
		return d.number("green", 0, name, to, 0)
	})
	switch {
	case err != nil:
		return err
	case len(missing) > 0:
		return faultAt("green", 0, "front, width or depth is missing")
	case !g.Drawn():
		return faultAt("green", 0, "the width is 0; allowed: %d to %d", minGreen, maxGreen)
	}
	return nil
}
