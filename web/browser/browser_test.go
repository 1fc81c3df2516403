package browser

import (
	"os"
	"testing"
)

func TestMain(m *testing.M) {
	code := m.Run()
	End()
	os.Exit(code)
}
