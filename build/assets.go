package build

import (
	"crypto/sha256"
	"encoding/hex"
	"path"
	"slices"

	"capspan/static"
)

// assetNames are the plain names pages may ask for.
var assetNames = []string{"matcher.js", "identify.js", "parts.js", "part.js", "table.js", "send.js", "card.js", "measured.js", "correct.js",
	"lifesize.js", "order.js", "shaft.js", "offline.js", static.OpenName, static.LiveName, "icon.svg", "matcher-late.js", "driveline.js",
	"calculation.js"}

// bundle adds the scripts, the styles and the core's chart, each named by its content
// so that a page and the assets it asks for always belong together.
func (s *site) bundle() {
	for _, f := range s.assets.Files {
		switch f.Path {
		case s.assets.Path(static.LiveName):
			if s.live == "" {
				continue
			}
		case s.assets.Path(static.WorkerName), s.assets.Path(static.RetireName):
			continue // written by addWorker
		}
		s.add(f.Path, f.Bytes, Assets)
	}
	s.parts = map[string]string{}
	if s.only != nil { // what follows is written of the tables, and shows no problem of theirs
		return
	}
	s.chart = s.addAsset("assets/chart", ".json", s.chartJSON())
	s.slips = s.addAsset("assets/slips", ".json", s.slipJSON())
	s.addDrawings()
	for _, t := range partTables(s.set) {
		s.parts[partData(t)] = s.addAsset("assets/part-"+t.ID, ".json", s.partJSON(t))
	}
}

// addAsset adds a file named by its content and returns its path.
func (s *site) addAsset(stem, ending string, content []byte) string {
	sum := sha256.Sum256(content)
	path := stem + "." + hex.EncodeToString(sum[:4]) + ending
	s.add(path, content, Assets)
	return path
}

// integrity says, by the address of each script and style, what a browser must find its
// bytes to hash to before it runs them (Subresource Integrity, W3C).
func (s *site) integrity() map[string]string {
	sums := map[string]string{}
	for _, f := range s.assets.Files {
		if ext := path.Ext(f.Path); ext == ".js" || ext == ".css" {
			sums[s.at(f.Path)] = f.Integrity()
		}
	}
	return sums
}

// scripts maps the plain names of scripts, icon, chart and drawings to the addresses pages use.
func (s *site) scripts() map[string]string {
	addresses := map[string]string{"chart.json": s.at(s.chart), "drawings.svg": s.at(s.drawings), "slips.json": s.at(s.slips), "search-index.json": s.at(s.index)}
	for name, path := range s.parts {
		addresses[name] = s.at(path)
	}
	names := slices.Clone(assetNames)
	for _, name := range static.Calculations {
		names = append(names, static.CalculationScript(name))
	}
	for _, name := range names {
		if path := s.assets.Path(name); path != "" {
			addresses[name] = s.at(path)
		}
	}
	return addresses
}
