package wording

import "strings"

// List joins what is said of each by commas: "oak, ash, spruce".
func List[T any](all []T, say func(T) string) string { return Joined(all, ", ", say) }

// Joined joins what is said of each by what stands between two.
func Joined[T any](all []T, between string, say func(T) string) string {
	out := make([]string, len(all))
	for i, v := range all {
		out[i] = say(v)
	}
	return strings.Join(out, between)
}

// And joins words as they are spoken: "oak, ash and spruce".
func And(all []string) string {
	if len(all) < 2 {
		return strings.Join(all, "")
	}
	last := len(all) - 1
	return strings.Join(all[:last], ", ") + " and " + all[last]
}
