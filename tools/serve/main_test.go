package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestFolder(t *testing.T) {
	for given, folder := range map[string]string{
		"": "/", "/": "/", "shop": "/shop/", "/shop/crank": "/shop/crank/", "/shop/crank/": "/shop/crank/",
	} {
		assert.Equal(t, folder, folderOf(given), given)
	}
}

func TestAFolderThatWasNotBuiltSaysWhatToDo(t *testing.T) {
	assert.ErrorContains(t, serve(t.TempDir(), "127.0.0.1:0", "/"), "make build")
}
