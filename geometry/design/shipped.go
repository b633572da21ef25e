package design

import (
	"bytes"
	"embed"
	"fmt"
	"slices"
	"strings"
)

//go:embed shipped/*.toml
var shippedFiles embed.FS

// ShippedNames returns the names of the designs that come with the program.
func ShippedNames() []string { return []string{"brook", "lake", "river"} }

// Shipped returns a design that comes with the program: brook (pack), lake
// (solo) or river (tandem). Errors: an unknown name, listing the known ones.
func Shipped(name string) (*Design, error) {
	if !slices.Contains(ShippedNames(), name) {
		return nil, fmt.Errorf("no shipped design %q; there are %s", name, strings.Join(ShippedNames(), ", "))
	}
	data, err := shippedFiles.ReadFile("shipped/" + name + ".toml")
	if err != nil {
		return nil, err
	}
	return Decode(bytes.NewReader(data), name)
}
