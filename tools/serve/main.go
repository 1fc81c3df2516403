// Command serve serves a built site, to this machine alone unless told
// otherwise, and prints where.
package main

import (
	"flag"
	"fmt"
	"log"
	"net"
	"net/http"
	"strings"
	"time"

	"pintwelve/tools/host"
	"pintwelve/tools/site"
)

func main() {
	log.SetFlags(0)
	dir := flag.String("dir", "dist", "`folder` that tools/build wrote")
	addr := flag.String("addr", "127.0.0.1:8012", "`address` to listen on")
	base := flag.String("base", "/", "`path` to serve the site under")
	flag.Parse()
	if err := serve(*dir, *addr, folderOf(*base)); err != nil {
		log.Fatalln("serve:", err)
	}
}

func serve(dir, addr, base string) error {
	files, err := site.Read(dir)
	if err != nil {
		return err
	}
	if files["index.html"] == nil {
		return fmt.Errorf("%s holds no index.html: run make build first", dir)
	}
	listener, err := net.Listen("tcp", addr)
	if err != nil {
		return err
	}
	fmt.Printf("http://%s%s\n", listener.Addr(), base)
	server := http.Server{Handler: host.Handler(files, base), ReadHeaderTimeout: 10 * time.Second}
	return server.Serve(listener)
}

// folderOf returns the path with a slash at each end.
func folderOf(path string) string {
	path = strings.Trim(path, "/")
	if path == "" {
		return "/"
	}
	return "/" + path + "/"
}
