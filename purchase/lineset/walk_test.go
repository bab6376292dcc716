package lineset_test

import (
	"regexp"
	"strings"
	"testing"

	"example.com/steelyard/purchase"
	"example.com/steelyard/purchase/lineset"
	"example.com/steelyard/units"
)

// form is a formula with # for every figure but the counts of parts and ropes. Whether the figures are right is asked elsewhere.
func form(formula string) string {
	return strings.ReplaceAll(regexp.MustCompile(`\d+\.\d+`).ReplaceAllString(formula, "#"), " lbf", "")
}

// How the walk along a rope is written: in the order of a calculator, with brackets where a factor follows a sum and nowhere else, every
// part of the rope on the arbor with its own factor, and nothing that is times or over 1. Flying out, the rope runs from the batten to the arbor
// and from the idler's outer side up to the arbor's top; flying in, the other way, so that what was times K is over K.
func TestHowAWalkIsWritten(t *testing.T) {
	rows := func(kind purchase.Kind, drag purchase.Drag) map[string]string {
		s := electric()
		s.Rigging = rigging(purchase.Double)
		if kind == purchase.Single {
			s.Rigging = rigging(purchase.Single)
		}
		s.Rigging.Purchase, s.Rigging.Drag = kind, drag
		if kind == purchase.Triple {
			s.Rigging.Run.LowerStop = 35 * units.Foot // little enough travel for three parts
		}
		h, err := mustRig(t, s).Hand(5 * units.Foot)
		if err != nil {
			t.Fatal(err)
		}
		out := map[string]string{}
		for _, step := range h.Working(units.US) {
			out[step.Name] = form(step.Formula)
			for _, one := range []string{"1.0000", " / 1 ", "1 × ", "()", "+ -", "--"} {
				if strings.Contains(strings.ReplaceAll(" "+step.Formula+" ", " 1 × (", ""), " "+one) {
					t.Errorf("%v with drag %v: %q in %+v", kind, drag, one, step)
				}
			}
		}
		return out
	}
	const line, top, foot = "lift line 1 at the arbor", "hand line at the arbor's top", "hand line at the arbor's foot"
	const lines, holds, pulls, up, stays = "lift lines on the arbor", "hand line holds the arbor up", "hand line pulls it down", "ropes hold the arbor up", "stays, until it runs"
	const drag = purchase.AntiFrictionBearings
	for _, c := range []struct {
		kind purchase.Kind
		drag purchase.Drag
		want map[string]string
	}{
		{purchase.Single, 0, map[string]string{
			line: "# at the batten + # + # − #", lines: "# + # + # + # + #", top: "# outer rope + # − #", foot: "# inner rope + #", up: "# + # − #",
			holds: "", pulls: "", "pull on the inner rope, out": "# at the arbor", "asked of the rope lock": "# out of balance", "out of balance, no drag": "# carried + # ropes − # arbor",
			"inner rope at the lock": "# idler / 2 + #", "idler's parts": "# idler / 2",
		}},
		{purchase.Double, 0, map[string]string{
			line: "# at the batten + # + # − #", lines: "(# + # + # + # + #) × 2", top: "# outer rope + # − #", foot: "# inner rope + #", up: "# + # − #",
			holds: "# × 2", pulls: "# × 2", "pull on the inner rope, out": "# at the arbor / 2", "asked of the rope lock": "2 × # out of balance / 2",
			"out of balance, no drag": "# carried + # ropes − # arbor / 2",
		}},
		{purchase.Triple, 0, map[string]string{
			line: "# at the batten + # + # − #", lines: "(# + # + # + # + #) × 3", holds: "# × 3", pulls: "# × 3", "pull on the inner rope, out": "# at the arbor / 3",
		}},
		{purchase.Single, drag, map[string]string{
			line + ", out": "((# at the batten + #) × # + #) × # − #", line + ", in": "((# at the batten + #) / # + #) / # − #",
			top + ", out": "(# outer rope + #) × # − #", top + ", in": "(# outer rope + #) / # − #", foot + ", out": "# inner rope + #", foot + ", in": "# inner rope + #",
			holds + ", out": "", "pull on the inner rope, out": "# at the arbor", "pull on the outer rope, in": "# at the arbor × #",
			stays + " out": "# carried + # ropes − #", "idler's parts, out": "# idler / (1 + #); outer × # of that", "idler's parts, in": "# idler / (1 + #); inner × # of that",
			"drag factors K, lift line 3": "drag #; loft block 3 88°, head block 92°",
		}},
		{purchase.Double, drag, map[string]string{
			line + ", out": "((# at the batten + #) × # + #) × # − #", lines + ", out": "(# + # + # + # + #) × (1 + #)", lines + ", in": "(# + # + # + # + #) × (1 + 1 / #)",
			holds + ", out": "# × (1 + #)", holds + ", in": "# × (1 + 1 / #)", pulls + ", out": "# × (1 + 1 / #)", pulls + ", in": "# × (1 + #)",
			"pull on the inner rope, out": "# at the arbor / (1 + 1 / #)", "pull on the outer rope, in": "# at the arbor × # / (1 + 1 / #)", stays + " out": "# carried + # ropes − # / 2",
		}},
		{purchase.Triple, drag, map[string]string{
			lines + ", out": "(# + # + # + # + #) × (1 + # + # × #) + 5 × (# × # − #)", lines + ", in": "(# + # + # + # + #) × (1 + 1 / # + 1 / # / #) + 5 × (# / # − #)",
			holds + ", out": "# × (1 + # + # × #) + (# × # − #)", holds + ", in": "# × (1 + 1 / # + 1 / # / #) + (# / # − #)",
			"pull on the inner rope, out": "# at the arbor / (1 + 1 / # + 1 / # / #)", "pull on the outer rope, in": "# at the arbor × # / (1 + 1 / # + 1 / # / #)",
		}},
	} {
		got := rows(c.kind, c.drag)
		for name, want := range c.want {
			if got[name] != want {
				t.Errorf("%v with drag %v: %s is %q, want %q", c.kind, c.drag, name, got[name], want)
			}
		}
	}
}

// Ropes that weigh nothing add nothing, and are not written.
func TestWeightlessWalk(t *testing.T) {
	s := electric()
	s.Rigging.LiftLine, s.Rigging.HandLine = 0, 0
	for _, drag := range []purchase.Drag{0, purchase.AntiFrictionBearings} {
		s.Rigging.Drag = drag
		h, err := mustRig(t, s).Hand(5 * units.Foot)
		if err != nil {
			t.Fatal(err)
		}
		want := map[string]string{"lift line 1 at the arbor": "# at the batten", "hand line at the arbor's top": "# outer rope", "hand line at the arbor's foot": "# inner rope"}
		if drag > 0 {
			want = map[string]string{
				"lift line 1 at the arbor, out": "# at the batten × # × #", "hand line at the arbor's top, out": "# outer rope × #", "hand line at the arbor's foot, in": "# inner rope",
				"lift line 1 at the arbor, in": "# at the batten / # / #",
			}
		}
		steps := h.Working(units.US)
		for name, want := range want {
			found := lineset.Step{}
			for _, step := range steps {
				if step.Name == name {
					found = step
				}
			}
			if got := form(found.Formula); got != want {
				t.Errorf("%s is %q, want %q", name, got, want)
			}
		}
	}
}
