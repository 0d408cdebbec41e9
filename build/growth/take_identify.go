package main

import (
	"os"
	"path/filepath"
)

// takeIdentify asks the command for one joint: at first with nothing remembered of the chart,
// then again.
func takeIdentify(c *catalogueFolder, figures map[string]figure) error {
	cache := filepath.Join(filepath.Dir(c.root), "cache")
	if err := os.RemoveAll(cache); err != nil {
		return err
	}
	if err := os.Setenv("XDG_CACHE_HOME", cache); err != nil {
		return err
	}
	args := []string{"identify", "--root", c.root, "--quiet", "--hold", "outside-clip", "--cap", "27.01 mm", "--across", "81.75 mm"}
	cold, err := run(c.program, args...)
	if err != nil {
		return err
	}
	warm, err := best(c.program, args...)
	figures["capspan identify, the first time"] = seconds(cold.took)
	figures["capspan identify, again"] = seconds(warm.took)
	return err
}
