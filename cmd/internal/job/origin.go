package job

import (
	"fmt"
	"io"
	"path"
	"strings"

	"ribwright/geometry/design"
)

// derived is the file of a design that was made of something else, under a comment of what.
func derived(name, says string, d *design.Design, from string) Output {
	return Output{name, says, func(to io.Writer) error {
		return design.EncodeFrom(to, d, "Written by ribwright: "+from+". Change what you like and loft it.")
	}}
}

// origin names a design so that it is found again: by its file, its edition and its fingerprint.
func (k *facts) origin() string {
	return fmt.Sprintf("%s, edition %s, fingerprint %s", fileOf(k.name), k.design.EditionName(), k.fingerprint)
}

// fileOf is a file's own name, without the folders that it lies in.
func fileOf(name string) string { return path.Base(strings.ReplaceAll(name, `\`, "/")) }
