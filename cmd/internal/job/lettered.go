package job

import (
	"strings"

	"ribwright/layout/lettering"
	"ribwright/layout/report"
)

// unlettered says which letters of a design's names the sheets cannot show, and what stands
// there instead; nothing where they show all.
func (k *facts) unlettered() []report.Block {
	var out []report.Block
	for _, name := range []string{k.design.Title, k.design.For, k.design.Edition} {
		missing := lettering.Missing(name)
		if missing == "" {
			continue
		}
		out = append(out, report.Say("The sheets are lettered in Latin, Greek and Cyrillic and have no %s. In place of %q they read %q; write the name so that you know it again. Files carry it as it is.",
			strings.Join(strings.Split(missing, ""), " "), name, lettering.Safe(name)))
	}
	return out
}
