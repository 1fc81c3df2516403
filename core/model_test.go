package core

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What comments, package docs and MODEL.md point to is there: sections of
// MODEL.md, and tests.
func TestWhatTheModelPointsToIsThere(t *testing.T) {
	model, err := os.ReadFile("MODEL.md")
	require.NoError(t, err)
	sections, tests := map[string]bool{}, map[string]bool{}
	for _, m := range regexp.MustCompile(`(?m)^## (\d+)\. `).FindAllSubmatch(model, -1) {
		sections[string(m[1])] = true
	}
	require.NotEmpty(t, sections)
	sources := map[string]string{"MODEL.md": string(model)}
	require.NoError(t, filepath.WalkDir(".", func(path string, _ fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") {
			return err
		}
		text, err := os.ReadFile(path)
		for _, m := range regexp.MustCompile(`(?m)^func (Test\w+)\(`).FindAllSubmatch(text, -1) {
			tests[string(m[1])] = true
		}
		sources[path] = string(text)
		return err
	}))
	cited := regexp.MustCompile(`MODEL(?:\.md)? §(\d+)(?:(?:,| and| to) §(\d+))*`)
	named := regexp.MustCompile(`(?m)(?:^//.*|^\|.*)\bTest[A-Z].*$`)
	dangling := regexp.MustCompile(`model'?s?,? sections? \d`)
	for path, text := range sources {
		assert.NotRegexp(t, dangling, text, "%s cites a section of no named text", path)
		for _, m := range cited.FindAllStringSubmatch(text, -1) {
			for _, section := range m[1:] {
				assert.True(t, section == "" || sections[section], "%s cites section %s", path, section)
			}
		}
		for _, line := range named.FindAllString(text, -1) {
			for _, name := range regexp.MustCompile(`\bTest[A-Z]\w+`).FindAllString(line, -1) {
				assert.True(t, tests[name], "%s names %s", path, name)
			}
		}
	}
}
