package build

import (
	"crypto/sha256"
	"encoding/hex"

	"capspan/static"
)

// assetNames are the plain names pages may ask for.
var assetNames = []string{"matcher.js", "identify.js", "table.js", "send.js", "card.js", "lifesize.js", static.LiveName, "icon.svg"}

// bundle adds the scripts, the styles and the core's chart, each named by its content
// so that a page and the assets it asks for always belong together.
func (s *site) bundle() {
	for _, f := range s.assets.Files {
		if s.live == "" && f.Path == s.assets.Path(static.LiveName) {
			continue
		}
		s.add(f.Path, f.Bytes, Assets)
	}
	chart := s.chartJSON()
	sum := sha256.Sum256(chart)
	s.chart = "assets/chart." + hex.EncodeToString(sum[:4]) + ".json"
	s.add(s.chart, chart, Assets)
}

// scripts maps the plain names of scripts, icon and chart to the addresses pages use.
func (s *site) scripts() map[string]string {
	addresses := map[string]string{"chart.json": s.at(s.chart)}
	for _, name := range assetNames {
		if path := s.assets.Path(name); path != "" {
			addresses[name] = s.at(path)
		}
	}
	return addresses
}
