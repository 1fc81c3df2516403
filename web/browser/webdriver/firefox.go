package webdriver

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// prefs let Firefox choose a free port to be driven by, and keep it from any
// host but this one.
const prefs = `user_pref("marionette.port", 0);
user_pref("network.proxy.type", 1);
user_pref("network.proxy.http", "127.0.0.1");
user_pref("network.proxy.http_port", 1);
user_pref("network.proxy.ssl", "127.0.0.1");
user_pref("network.proxy.ssl_port", 1);
`

// LaunchFirefox starts a fresh Firefox without a screen. It ends with the test.
func LaunchFirefox(t testing.TB, path string) *Page {
	// Not the test's own folder: a Firefox that still writes there would fail it.
	profile, err := os.MkdirTemp("", "profile")
	require.NoError(t, err)
	t.Cleanup(func() { os.RemoveAll(profile) })
	require.NoError(t, os.WriteFile(filepath.Join(profile, "user.js"), []byte(prefs), 0o600))
	run(t, exec.Command(path, "--headless", "--marionette", "--no-remote", "--profile", profile, "about:blank"))
	m := dial(t, activePort(t, profile))
	_, err = m.send(command{name: "WebDriver:NewSession"}, map[string]any{})
	require.NoError(t, err, "a new session")
	return &Page{t, m}
}

// activePort waits until Firefox says which port it listens at.
func activePort(t testing.TB, profile string) string {
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(50 * time.Millisecond) {
		if port, err := os.ReadFile(filepath.Join(profile, "MarionetteActivePort")); err == nil && len(port) > 0 {
			return strings.TrimSpace(string(port))
		}
	}
	require.FailNow(t, "Firefox never listened to Marionette")
	return ""
}

// marionette is the wire of Firefox: each message is its length, a colon and a
// JSON list, [0, number, command, params] there and [1, number, error, result] back.
type marionette struct {
	conn   net.Conn
	reader *bufio.Reader
	number int
}

func dial(t testing.TB, port string) *marionette {
	conn, err := net.Dial("tcp", "127.0.0.1:"+port)
	require.NoError(t, err)
	t.Cleanup(func() { conn.Close() })
	m := &marionette{conn: conn, reader: bufio.NewReader(conn)}
	_, err = m.receive() // who it is
	require.NoError(t, err)
	return m
}

func (m *marionette) send(c command, params map[string]any) (json.RawMessage, error) {
	m.number++
	text, err := json.Marshal([]any{0, m.number, c.name, params})
	if err != nil {
		return nil, err
	}
	m.conn.SetDeadline(time.Now().Add(2 * patience))
	if _, err := fmt.Fprintf(m.conn, "%d:%s", len(text), text); err != nil {
		return nil, err
	}
	text, err = m.receive()
	if err != nil {
		return nil, err
	}
	var answer [4]json.RawMessage
	if err := json.Unmarshal(text, &answer); err != nil {
		return nil, err
	}
	if string(answer[2]) != "null" {
		return nil, fmt.Errorf("%s: %s", c.name, answer[2])
	}
	var result struct{ Value json.RawMessage }
	err = json.Unmarshal(answer[3], &result)
	return result.Value, err
}

func (m *marionette) receive() ([]byte, error) {
	length, err := m.reader.ReadString(':')
	if err != nil {
		return nil, err
	}
	n, err := strconv.Atoi(strings.TrimSuffix(length, ":"))
	if err != nil {
		return nil, err
	}
	text := make([]byte, n)
	_, err = io.ReadFull(m.reader, text)
	return text, err
}
