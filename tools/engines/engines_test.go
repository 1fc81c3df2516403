package engines

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// machine has the given commands and no others.
func machine(t *testing.T, commands ...string) (dir string) {
	dir = t.TempDir()
	for _, command := range commands {
		put(t, dir, command, "exit 0")
	}
	t.Setenv("PATH", dir)
	t.Setenv("BROWSER", "")
	return dir
}

func put(t *testing.T, dir, command, script string) {
	require.NoError(t, os.WriteFile(filepath.Join(dir, command), []byte("#!/bin/sh\n"+script+"\n"), 0o755))
}

func TestChromium(t *testing.T) {
	for _, test := range []struct {
		machine []string
		browser string // as the environment names it
		found   string
	}{
		{[]string{"google-chrome", "chromium"}, "", "chromium"},
		{[]string{"google-chrome-stable"}, "", "google-chrome-stable"},
		{[]string{"google-chrome", "chromium"}, "google-chrome", "google-chrome"},
		{[]string{"firefox", "chromium"}, "firefox", "chromium"},
		{[]string{"firefox"}, "", ""},
		{[]string{"chromium"}, "chromium-of-another-name", ""},
	} {
		dir := machine(t, test.machine...)
		t.Setenv("BROWSER", test.browser)
		found, err := Chromium()
		if test.found == "" {
			assert.Equal(t, ErrNoChromium, err, "%v", test)
			continue
		}
		require.NoError(t, err, "%v", test)
		assert.Equal(t, filepath.Join(dir, test.found), found, "%v", test)
	}
}

func TestInstallAsksAptForItsListAndThenForChromium(t *testing.T) {
	dir := machine(t)
	put(t, dir, "apt-get", `echo "$@" >> "`+dir+`/asked"`)
	require.NoError(t, Install())
	asked, err := os.ReadFile(filepath.Join(dir, "asked"))
	require.NoError(t, err)
	lines := strings.Split(strings.TrimSpace(string(asked)), "\n")
	require.Len(t, lines, 2)
	assert.Equal(t, "update", lines[0])
	assert.Regexp(t, "^install -y .*chromium$", lines[1])
}

func TestInstallTellsOfAFailure(t *testing.T) {
	put(t, machine(t), "apt-get", "exit 100")
	assert.Error(t, Install())
}

func TestOff(t *testing.T) {
	for value, off := range map[string]bool{"none": true, "": false, "chromium": false} {
		t.Setenv("BROWSER", value)
		assert.Equal(t, off, Off(), value)
	}
}

func TestOtherEngines(t *testing.T) {
	for _, test := range []struct {
		find    func() (string, error)
		machine []string
		found   string // "" for none
	}{
		{WebKit, []string{"WebKitWebDriver", "Xvfb"}, "WebKitWebDriver"},
		{WebKit, []string{"WebKitWebDriver"}, ""},
		{WebKit, []string{"Xvfb"}, ""},
		{Firefox, []string{"firefox", "firefox-esr"}, "firefox-esr"},
		{Firefox, []string{"firefox"}, "firefox"},
		{Firefox, []string{"chromium"}, ""},
	} {
		dir := machine(t, test.machine...)
		found, err := test.find()
		if test.found == "" {
			assert.ErrorContains(t, err, "apt-get install", "%v", test.machine)
			continue
		}
		require.NoError(t, err, "%v", test.machine)
		assert.Equal(t, filepath.Join(dir, test.found), found)
	}
}
