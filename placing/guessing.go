package placing

// Guessing is how hard an official placing is for one who guesses: how many of all
// placings score well. What a guesser scores on average is [Official.Mean], and the
// lowest score [Official.Worst].
type Guessing struct {
	Placings int `json:"placings"` // all placings of so many exhibits
	Above40  int `json:"above_40"` // of these, placings that score more than 40
	Above45  int `json:"above_45"` // and more than 45
}

// Guessing counts over all placings, exactly, also those of a class of twelve with its
// 479,001,600. The zero Official gives the zero Guessing.
func (o Official) Guessing() Guessing {
	n := o.order.Len()
	if n == 0 {
		return Guessing{}
	}
	// By the set of exhibits placed so far, from the top of the card: how many
	// ways there are to have lost so many points, more than 9 counted together. An
	// exhibit is known by its place in the official order, from 0.
	const many = 10
	ways := make([][many + 1]int, 1<<n)
	ways[0][0] = 1
	for set := range ways {
		for i := range n {
			if set&(1<<i) != 0 {
				continue
			}
			lost := 0 // to the exhibits below that are placed over it
			for j := i + 1; j < n; j++ {
				if set&(1<<j) != 0 {
					lost += int(o.depth[o.order.At(j+1)] - o.depth[o.order.At(i+1)])
				}
			}
			for l, w := range ways[set] {
				ways[set|1<<i][min(l+lost, many)] += w
			}
		}
	}
	var g Guessing
	for l, w := range ways[len(ways)-1] {
		g.Placings += w
		if l < FullScore-40 {
			g.Above40 += w
		}
		if l < FullScore-45 {
			g.Above45 += w
		}
	}
	return g
}
