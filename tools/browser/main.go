// Command browser sees to it that there is a browser for the browser tests, and
// prints of each engine where it is or what to install. As root on Debian it
// installs a Chromium where there is none; elsewhere it fails without one. With
// BROWSER=none it says that the browser tests will be skipped.
package main

import (
	"fmt"
	"log"

	"pintwelve/tools/engines"
)

func main() {
	log.SetFlags(0)
	if engines.Off() {
		fmt.Println("BROWSER=none: the browser tests are skipped")
		return
	}
	_, err := engines.Chromium()
	if err != nil && engines.CanInstall() {
		if err := engines.Install(); err != nil {
			log.Fatalln("browser: installing chromium:", err)
		}
		_, err = engines.Chromium()
	}
	if err != nil {
		log.Fatalln("browser:", err)
	}
	for _, engine := range engines.All {
		path, err := engine.Find()
		if err != nil {
			path = "skipped: " + err.Error()
		}
		fmt.Printf("browser: %s: %s\n", engine.Name, path)
	}
}
