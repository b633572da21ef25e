package design

import (
	"fmt"

	"ribwright/geometry/measure"
)

// Stock is the lumber that the sticks are sawn from, and the saw.
type Stock struct {
	Kerf   measure.Length `toml:"kerf" comment:"What one saw cut takes away, ripping and crosscutting. 0 to 10 mm."`
	Boards []Board        `toml:"board" comment:"One [[stock.board]] for each size of board that you have or can buy; for a wood that none names, sizes to ask the yard for are worked out."`
}

// Board is one size of board, all of one wood.
type Board struct {
	Species   string         `toml:"species" comment:"Wood, by a name that 'ribwright help species' lists."`
	Length    measure.Length `toml:"length" comment:"Usable length, without split ends. 300 to 12000 mm."`
	Width     measure.Length `toml:"width" comment:"Usable width, sapwood and edges off. 20 to 1000 mm."`
	Thickness measure.Length `toml:"thickness" comment:"Thickness as it is planed before ripping. 5 to 200 mm."`
	Count     int            `toml:"count" comment:"How many there are; 0, or left out, for as many as are needed."`
	Price     float64        `toml:"price" comment:"Price of one, in the currency of your price table; 0, or left out, to price it by volume."`
}

// mostBoards is how many sizes of board are read.
const mostBoards = 40

func (d *Design) checkStock(c *checker) {
	s := d.Stock
	c.length("stock.kerf", s.Kerf, 0, 10)
	c.must(len(s.Boards) <= mostBoards, "stock.board", "%d are given; accepted: up to %d", len(s.Boards), mostBoards)
	for i, b := range s.Boards {
		key := fmt.Sprintf("stock.board.%d.", i)
		c.species(d, key+"species", b.Species)
		c.length(key+"length", b.Length, 300, 12000)
		c.length(key+"width", b.Width, 20, 1000)
		c.length(key+"thickness", b.Thickness, 5, 200)
		c.must(b.Count >= 0 && b.Count <= 1000, key+"count", "%d boards are out of range; accepted: 0 (as many as needed) to 1000", b.Count)
		c.must(b.Price >= 0 && b.Price <= 1e6, key+"price", "%s is out of range; accepted: 0 (by volume) to 1000000", short(b.Price))
	}
}
