package main

import (
	"io"
	"os"
)

// mostRead is how much of a file is read, bytes: more than the largest that any
// reader takes, so that each can refuse a wrong file by itself.
const mostRead = 4<<20 + 1

// readFile gives the engine a file by its path.
func readFile(name string) ([]byte, error) {
	file, err := os.Open(name)
	if err != nil {
		return nil, cause(err)
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, mostRead))
	return data, cause(err)
}
