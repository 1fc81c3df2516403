// Package engines finds the browsers that the browser tests drive, one of each
// engine, and where it can, installs the Chromium that they can't do without.
package engines

import (
	"errors"
	"os"
	"os/exec"
)

// Engine is one of the engines that the page must run on.
type Engine struct {
	Name string
	// Find returns the path of the command that the tests start, or an error
	// that says what to install.
	Find func() (path string, err error)
}

// All are the engines: every browser test runs on Chromium, the main path on
// the others too, where they are found.
var All = []Engine{{"Chromium", Chromium}, {"WebKit", WebKit}, {"Firefox", Firefox}}

// What Find says where there is none.
var (
	ErrNoChromium = errors.New("no Chromium or Chrome was found: install one (Debian: apt-get install chromium), or set BROWSER=none to go without the browser tests")
	ErrNoWebKit   = errors.New("no WebKitWebDriver with Xvfb was found (Debian: apt-get install webkit2gtk-driver xvfb); the page isn't tested on it")
	ErrNoFirefox  = errors.New("no Firefox was found (Debian: apt-get install firefox-esr); the page isn't tested on it")
)

// Off tells whether the browser tests are not wanted: BROWSER=none.
func Off() bool {
	return os.Getenv("BROWSER") == "none"
}

// WebKit returns the path of WebKitGTK's driver, which finds a browser of its
// own; it needs a screen, and Xvfb is one that nobody sees.
func WebKit() (string, error) {
	if _, err := exec.LookPath("Xvfb"); err != nil {
		return "", ErrNoWebKit
	}
	return first(ErrNoWebKit, "WebKitWebDriver")
}

// Firefox returns the path of a Firefox.
func Firefox() (string, error) {
	return first(ErrNoFirefox, "firefox-esr", "firefox", "/Applications/Firefox.app/Contents/MacOS/firefox")
}

// first returns the path of the first of some commands that there is.
func first(none error, names ...string) (string, error) {
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path, nil
		}
	}
	return "", none
}
