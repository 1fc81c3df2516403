// Command icons draws the site's icons into web/icons: a clock face with the
// crankpin, a filled circle, at 12. Run it in the repository's top folder.
package main

import (
	"log"
	"os"
	"path/filepath"
)

// maskable leaves a launcher free to cut off all but the middle 80 % (W3C Web
// Application Manifest, "Icon masks and safe zone").
const maskable = 0.8

func main() {
	log.SetFlags(0)
	for name, content := range icons() {
		if err := os.WriteFile(filepath.Join("web", "icons", name), content, 0o644); err != nil {
			log.Fatalln("icons:", err)
		}
	}
}

func icons() map[string][]byte {
	return map[string][]byte{
		"icon.svg":          face(1).svg(),
		"icon-192.png":      face(1).png(192, smooth),
		"icon-512.png":      face(1).png(512, plain),
		"icon-maskable.png": face(maskable).png(192, smooth),
	}
}
