package eyes

import (
	"errors"
	"fmt"

	"ribwright/render/rendertest"
)

// Laid is the tiles of a pattern, laid in their places, of which any part can be
// drawn: a sail is too large for one picture.
type Laid struct{ tiles []laidTile }

type laidTile struct {
	view rendertest.View
	page *Page
	to   Motion // from the sheet to the pattern
}

// Lay opens the tiles. Close them after use.
func (s *Sheets) Lay(views []rendertest.View, l Layer, lay func(rendertest.View) Motion) (*Laid, error) {
	out := &Laid{}
	for _, v := range views {
		p, err := s.File.Page(v.Page)
		if err != nil {
			return nil, errors.Join(err, out.Close())
		}
		out.tiles = append(out.tiles, laidTile{v, p, lay(v)})
		if l == (Layer{}) {
			continue
		}
		if err := p.choose(l, s.Drawn[v.Page-1], v.OnSheet()); err != nil {
			return nil, errors.Join(fmt.Errorf("%v: %w", v, err), out.Close())
		}
	}
	return out, nil
}

// Close lets the tiles go.
func (l *Laid) Close() error {
	var err error
	for _, t := range l.tiles {
		err = errors.Join(err, t.page.Close())
	}
	return err
}

// Show draws a part of the pattern: of every tile the dots wholly in its frame.
// Where two show the same place the darker counts, as when one transparent sheet
// lies on another, so a line that the two do not agree on is there twice.
func (l *Laid) Show(part rendertest.Box) (*Raster, error) {
	whole := NewRaster(part)
	for _, t := range l.tiles {
		if err := t.page.drawIn(t.to, whole, t.view.Frame()); err != nil {
			return nil, fmt.Errorf("%v: %w", t.view, err)
		}
	}
	return whole, nil
}
