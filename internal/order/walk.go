package order

// walker goes through the layers from the start to the end.
type walker struct {
	*states
	layers map[cost]*layer
	left   cost // what the rest costs
	side   int
	at     int
	choice int
	pieces int
	order  Order
}

// walk follows one order of those that cost the least.
func (s *states) walk(layers map[cost]*layer, first cost) Order {
	w := walker{states: s, layers: layers, left: first, at: s.Start, order: Order{HandOvers: first.hand, Flights: first.fly}}
	if !w.costs(first, onDeck, s.Start, 0, 0) {
		w.side = onBridge
	}
	for w.choice < s.choices-1 || w.pieces < s.Pieces || w.left != (cost{}) {
		if !w.step() {
			break // cannot be: every state of a layer has a next one
		}
	}
	return w.order
}

// costs tells whether the rest of the way from a state costs just so much.
func (w *walker) costs(c cost, side, at, choice, pieces int) bool {
	l := w.layers[c]
	return l != nil && has(w.row(l.rows[side], at, choice), pieces)
}

func (w *walker) step() bool {
	stay, change := w.left, cost{w.left.hand - 1, w.left.fly}
	if w.side == onDeck {
		return w.hang(stay) || w.add(change) || w.fly()
	}
	if w.carried[w.at*w.choices+w.choice] > w.Even[w.at][w.pieces] {
		return w.add(stay) || w.hang(change) || w.fly()
	}
	return w.hang(change) || w.fly() || w.add(stay)
}

// hang hangs the first item after which the rest costs what is given.
func (w *walker) hang(left cost) bool {
	if !w.Positions[w.at].Deck {
		return false
	}
	for i := range w.Items {
		if w.more(w.choice, i) && w.costs(left, onDeck, w.at, w.choice+w.stride[i], w.pieces) {
			w.left, w.side = left, onDeck
			w.choice += w.stride[i]
			w.order.Moves = append(w.order.Moves, Move{Hang, i, w.at})
			return true
		}
	}
	return false
}

func (w *walker) add(left cost) bool {
	if !has(w.reached(w.at), w.pieces) || !w.costs(left, onBridge, w.at, w.choice, w.pieces+1) {
		return false
	}
	w.left, w.side = left, onBridge
	w.pieces++
	w.order.Moves = append(w.order.Moves, Move{Kind: Add, Position: w.at})
	return true
}

// fly flies to the nearest halt from which the rest costs a flight less, out before in.
func (w *walker) fly() bool {
	left := cost{w.left.hand, w.left.fly - 1}
	open := [2]bool{true, true}
	for far := 1; far < len(w.Positions); far++ {
		for k, to := range [2]int{w.at + far, w.at - far} {
			if to < 0 || to >= len(w.Positions) || !open[k] {
				continue
			}
			if !w.allowed(to, w.choice, w.pieces) {
				open[k] = false
				continue
			}
			if w.Positions[to].Halt && w.costs(left, w.side, to, w.choice, w.pieces) {
				w.left, w.at = left, to
				w.order.Moves = append(w.order.Moves, Move{Kind: Fly, Position: to})
				return true
			}
		}
	}
	return false
}
