package rope

import "math"

// DragRatio is the ratio K ≥ 1 of the tensions on the two sides of a sheave, tight
// over slack, while the rope runs over it or is about to. The tight side is the
// one the rope runs to, as seen from the sheave.
//
// The drag comes from the bearing: it is the share c, from 0 to below 1, of the
// resultant R on the pin, T₂ − T₁ = c·|R|. (ux, uz) is the direction of the part
// that comes to the sheave and (vx, vz) of the part that leaves it, both along
// the path as [Path.Part] gives them: equal where the rope runs straight past,
// opposite where it comes back beside itself. The order does not matter, nor does
// the sense in which the path is laid. With θ the angle by which the path turns,
// cos θ = u·v and |R|² = T₁² + T₂² − 2T₁T₂·cos θ, so that K solves bK² − 2aK + b = 0 with
//
//	a = 1 − c² cos θ    b = 1 − c²    K = (a + √(a² − b²))/b
//
// With p = c·sin(θ/2) and q = √(b + p²), a − b = 2p² and this is (q+p)/(q−p) or
// 1 + 2p(q+p)/b; and sin²(θ/2) is |v − u|²/4. So no angle is wanted, nothing cancels at
// small turns, where a and b are nearly equal, and K is 1 exactly for a straight
// run or no drag. For half a turn it is (1+c)/(1−c).
//
// Source: equilibrium of the sheave, journal friction at the pin.
func DragRatio(c, ux, uz, vx, vz float64) float64 {
	dx, dz := vx-ux, vz-uz
	return dragRatio(c, min(math.Sqrt(float64(dx*dx)+float64(dz*dz))/2, 1))
}

// DragRatioTurning is DragRatio for a path that turns by an angle of 0 to π.
func DragRatioTurning(c, angle float64) float64 { return dragRatio(c, sin(angle/2)) }

// dragRatio takes the sine of half the turn.
func dragRatio(c, half float64) float64 {
	p := float64(c * half)
	b := (1 - c) * (1 + c)
	q := math.Sqrt(b + float64(p*p))
	return 1 + float64(2*p*(q+p))/b
}

// DragGain is how much more than itself a force that is wanted to speed a sheave up adds to the tension of the tight side:
// that tension presses on the pin too. It is exact for a small force, dT₂/df where T₂ − T₁ − f = c·|R|:
//
//	R/(R − c(K − cos θ)), R² = 1 + K² − 2K cos θ
//
// with the directions of [DragRatio]. It is 1 without drag and for a straight run, 1/(1−c) for half a turn.
func DragGain(c, ux, uz, vx, vz float64) float64 {
	dx, dz := vx-ux, vz-uz
	squared := min((float64(dx*dx)+float64(dz*dz))/4, 1) // of the sine of half the turn
	k := dragRatio(c, math.Sqrt(squared))
	r := math.Sqrt(float64((k-1)*(k-1)) + float64(float64(4*k)*squared))
	if r == 0 {
		return 1
	}
	return r / (r - float64(c*(k-1+float64(2*squared))))
}

// LeadLine is the pull on the lead line of a tackle over its load, while it
// hoists: the parts at the moving block, the sheaves that the rope passes (each
// of ratio k ≥ 1) with any lead sheaves beyond. With T the tension of the part
// nearest the lead line among those that carry, the load is
// T·(1 + 1/k + … + 1/k^(parts−1)), and past the sheaves that are left the lead line
// pulls T·k^(sheaves−parts+1). With as many sheaves as parts it is the usual
// k^N(k−1)/(k^N−1).
//
// Source: Wire Rope Users Manual, 4th ed., p. 88.
func LeadLine(k float64, parts, sheaves int) float64 {
	pull, carried := 1.0, 0.0
	for range parts {
		carried += pull
		pull /= k
	}
	pull = 1
	for range sheaves - parts + 1 {
		pull *= k
	}
	return pull / carried
}
