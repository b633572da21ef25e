package rendertest

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"path/filepath"
)

// WellFormed reads a file of the kind its name says to its end, as other programs
// must to open it.
func WellFormed(name string, data []byte) error {
	switch filepath.Ext(name) {
	case ".pdf":
		if !bytes.HasPrefix(data, []byte("%PDF-1.")) || !bytes.HasSuffix(bytes.TrimSpace(data), []byte("%%EOF")) {
			return errors.New("does not begin and end as a PDF")
		}
		return nil
	case ".dxf":
		_, err := ReadDXF(data)
		return err
	case ".json":
		if !json.Valid(data) {
			return errors.New("is no JSON")
		}
		return nil
	case ".svg":
		d, tags := xml.NewDecoder(bytes.NewReader(data)), 0
		for {
			token, err := d.Token()
			if err == io.EOF && tags > 0 {
				return nil
			}
			if err != nil {
				return err
			}
			if _, ok := token.(xml.StartElement); ok {
				tags++
			}
		}
	}
	return fmt.Errorf("no check for %q", filepath.Ext(name))
}
