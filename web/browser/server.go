package browser

import (
	"net"
	"net/http"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"pintwelve/tools/host"
	"pintwelve/tools/site"
)

// Server is a static host on the loopback address with one or more folders.
type Server struct {
	t      testing.TB
	addr   string
	server *http.Server

	mu     sync.Mutex
	mux    *http.ServeMux
	sites  map[string]site.Files
	faults map[string]http.HandlerFunc
	asked  []string
}

// Serve starts a host with files in a folder, which starts and ends with a
// slash. It ends with the test.
func Serve(t testing.TB, folder string, files site.Files) *Server {
	s := &Server{t: t, addr: "127.0.0.1:0", sites: map[string]site.Files{}, faults: map[string]http.HandlerFunc{}}
	s.Put(folder, files)
	s.Start()
	t.Cleanup(s.Stop)
	return s
}

// URL returns the address of a path.
func (s *Server) URL(path string) string {
	return "http://" + s.addr + path
}

// Put serves files in a folder from now on, as an upload of them does.
func (s *Server) Put(folder string, files site.Files) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.sites[folder] = files
	s.mux = http.NewServeMux()
	for folder, files := range s.sites {
		s.mux.Handle(folder, host.Handler(files, folder))
	}
}

// Break answers a path by a fault from now on; nil mends it.
func (s *Server) Break(path string, fault http.HandlerFunc) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.faults[path] = fault
}

// Asked returns the paths that were asked for since it was last called.
func (s *Server) Asked() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	asked := s.asked
	s.asked = nil
	return asked
}

// Stop ends the host at once, with every connection to it.
func (s *Server) Stop() {
	s.server.Close()
}

// Start starts the host, after a Stop at the address that it had.
func (s *Server) Start() {
	listener, err := net.Listen("tcp", s.addr)
	require.NoError(s.t, err)
	s.addr = listener.Addr().String()
	s.server = &http.Server{
		Handler:           s,
		ReadHeaderTimeout: 10 * time.Second,
	}
	go s.server.Serve(listener)
}

func (s *Server) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	s.mu.Lock()
	s.asked = append(s.asked, r.URL.Path)
	handler := http.Handler(s.mux)
	if fault := s.faults[r.URL.Path]; fault != nil {
		handler = fault
	}
	s.mu.Unlock()
	handler.ServeHTTP(w, r)
}
