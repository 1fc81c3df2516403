package webdriver

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// LaunchWebKit starts a fresh WebKit by the driver at a path, on a screen that
// nobody sees. It ends with the test.
func LaunchWebKit(t testing.TB, path string) *Page {
	display := screen(t)
	port := freePort(t)
	driver := exec.Command(path, "--port="+port)
	driver.Env = append(os.Environ(), "DISPLAY="+display)
	run(t, driver)
	h := &overHTTP{base: "http://127.0.0.1:" + port}
	h.begin(t)
	t.Cleanup(func() { h.send(command{"DELETE", "", ""}, nil) })
	return &Page{t, h}
}

// screen starts an X server on a display that is free, and returns its name.
func screen(t testing.TB) string {
	ours, theirs, err := os.Pipe()
	require.NoError(t, err)
	defer ours.Close()
	server := exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", "1024x900x24", "-nolisten", "tcp")
	server.ExtraFiles = []*os.File{theirs}
	run(t, server)
	theirs.Close()
	ours.SetReadDeadline(time.Now().Add(patience))
	number, err := bufio.NewReader(ours).ReadString('\n')
	require.NoError(t, err, "Xvfb named no display")
	return ":" + strings.TrimSpace(number)
}

// run starts a command, which ends with the test.
func run(t testing.TB, command *exec.Cmd) {
	require.NoError(t, command.Start())
	t.Cleanup(func() {
		command.Process.Kill()
		command.Wait()
	})
}

func freePort(t testing.TB) string {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	defer listener.Close()
	_, port, err := net.SplitHostPort(listener.Addr().String())
	require.NoError(t, err)
	return port
}

// overHTTP is the wire of W3C WebDriver.
type overHTTP struct{ base string }

// begin waits for the driver and begins the one session that it is asked for.
func (h *overHTTP) begin(t testing.TB) {
	_, err := h.send(command{"GET", "/status", ""}, nil)
	for end := time.Now().Add(patience); err != nil && time.Now().Before(end); time.Sleep(50 * time.Millisecond) {
		_, err = h.send(command{"GET", "/status", ""}, nil)
	}
	require.NoError(t, err, "the driver never answered")
	value, err := h.send(command{"POST", "/session", ""}, map[string]any{"capabilities": map[string]any{}})
	require.NoError(t, err, "a new session")
	var session struct{ SessionID string }
	require.NoError(t, json.Unmarshal(value, &session))
	h.base += "/session/" + session.SessionID
}

func (h *overHTTP) send(c command, params map[string]any) (json.RawMessage, error) {
	id, _ := params["id"].(string)
	var body io.Reader
	if c.method == http.MethodPost {
		text, err := json.Marshal(params)
		if err != nil {
			return nil, err
		}
		body = bytes.NewReader(text)
	}
	request, err := http.NewRequest(c.method, h.base+strings.Replace(c.path, "{id}", id, 1), body)
	if err != nil {
		return nil, err
	}
	response, err := (&http.Client{Timeout: 2 * patience}).Do(request)
	if err != nil {
		return nil, err
	}
	defer response.Body.Close()
	var answer struct{ Value json.RawMessage }
	if err := json.NewDecoder(response.Body).Decode(&answer); err != nil {
		return nil, err
	}
	if response.StatusCode != http.StatusOK {
		return nil, fmt.Errorf("%s %s: %s", c.method, c.path, answer.Value)
	}
	return answer.Value, nil
}
