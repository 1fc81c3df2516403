// Command browser sees to it that there is a browser for the browser tests and
// prints its path. As root on Debian it installs one where there is none;
// elsewhere it fails with a line that says what to install. With BROWSER=none
// it says that the browser tests will be skipped.
package main

import (
	"fmt"
	"log"

	"pintwelve/tools/chromium"
)

func main() {
	log.SetFlags(0)
	if chromium.Off() {
		fmt.Println("BROWSER=none: the browser tests are skipped")
		return
	}
	path, err := chromium.Find()
	if err != nil && chromium.CanInstall() {
		if err := chromium.Install(); err != nil {
			log.Fatalln("browser: installing chromium:", err)
		}
		path, err = chromium.Find()
	}
	if err != nil {
		log.Fatalln("browser:", err)
	}
	fmt.Println("browser:", path)
}
