package rope

import "math"

// WrapRatio is the ratio of the tensions at the two ends of a rope with turns
// round a rail, when it is about to slip: e^(mu·2π·turns), with mu the coefficient of
// friction. Neither is negative; their product is at most 100.
//
// Source: belt friction formula, as in any text on engineering mechanics.
func WrapRatio(mu, turns float64) float64 { return exp(float64(mu * (2 * math.Pi * turns))) }

// WrapTurns is the reverse: the turns with which the tensions stand in a ratio of
// 1 or more. A mu of zero gives an infinity, or NaN for a ratio of 1.
func WrapTurns(mu, ratio float64) float64 { return log(ratio) / (2 * math.Pi * mu) }
