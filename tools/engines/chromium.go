package engines

import (
	"os"
	"os/exec"
	"regexp"
	"strings"
)

// Names that Chromium and Chrome go by, as commands or, on a Mac, as files.
var names = []string{
	"chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome",
	"/Applications/Chromium.app/Contents/MacOS/Chromium",
	"/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
}

// Chromium returns the path of a Chromium or Chrome: the one that BROWSER names,
// or the first one found. Many desktops set BROWSER to a browser of another
// make, which is passed over.
func Chromium() (string, error) {
	if own := os.Getenv("BROWSER"); strings.Contains(strings.ToLower(own), "chrom") {
		return first(ErrNoChromium, own)
	}
	return first(ErrNoChromium, names...)
}

// CanInstall tells whether Install may be tried: as root on Debian.
func CanInstall() bool {
	release, err := os.ReadFile("/etc/os-release")
	return err == nil && os.Geteuid() == 0 && regexp.MustCompile(`(?m)^ID="?debian"?$`).Match(release)
}

// Install installs Debian's chromium.
func Install() error {
	for _, args := range [][]string{{"update"}, {"install", "-y", "--no-install-recommends", "chromium"}} {
		cmd := exec.Command("apt-get", args...)
		cmd.Env = append(os.Environ(), "DEBIAN_FRONTEND=noninteractive")
		cmd.Stdout, cmd.Stderr = os.Stderr, os.Stderr
		if err := cmd.Run(); err != nil {
			return err
		}
	}
	return nil
}
