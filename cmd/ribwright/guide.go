package main

import (
	"embed"
	"regexp"
	"slices"
	"strings"

	"ribwright/layout/report/trade"
)

// pages are what is told at more length than a verb's flags: Markdown that reads in a
// browser and, made plain, on a terminal.
//
//go:embed guide/*.md
var pages embed.FS

// tradeWords is the page that the book takes its words from too.
const tradeWords = "words"

// topics names the pages, in the order of the alphabet.
func topics() []string {
	files, err := pages.ReadDir("guide")
	if err != nil {
		panic(err) // the pages are part of the program
	}
	var out []string
	for _, f := range files {
		out = append(out, strings.TrimSuffix(f.Name(), ".md"))
	}
	return slices.Sorted(slices.Values(append(out, tradeWords)))
}

// topic returns a page made plain; false where there is none of that name.
func topic(name string) (string, bool) {
	if name == tradeWords {
		return bare(trade.Page()), true
	}
	if !slices.Contains(topics(), name) {
		return "", false
	}
	page, err := pages.ReadFile("guide/" + name + ".md")
	if err != nil {
		return "", false
	}
	return bare(string(page)), true
}

// links are words that lead to another page, and signs are what sets words apart.
var (
	links = regexp.MustCompile(`\[([^\]]+)\]\([^)]+\)`)
	signs = regexp.MustCompile("[*`]+")
)

// bare takes Markdown's signs out of a page: headings stand bare, and what is typed or
// written in a file is set in by four spaces, under the file's name where it has one.
func bare(page string) string {
	var out []string
	typed := false
	for line := range strings.Lines(page) {
		line = strings.TrimRight(line, "\n")
		switch kind, fence := strings.CutPrefix(line, "```"); {
		case fence:
			typed = !typed
			if _, file, named := strings.Cut(kind, " "); named {
				out = append(out, file+":", "")
			}
		case typed:
			out = append(out, "    "+line)
		default:
			if heading := strings.TrimLeft(line, "#"); heading != line {
				line = strings.TrimSpace(heading)
			}
			line = links.ReplaceAllString(line, "$1")
			out = append(out, signs.ReplaceAllString(line, ""))
		}
	}
	return strings.Join(out, "\n") + "\n"
}
