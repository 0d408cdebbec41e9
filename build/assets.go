package build

import (
	"crypto/sha256"
	"encoding/hex"
	"path"
	"slices"

	"capspan/build/diag"
	"capspan/static"
)

// assetNames are the plain names pages may ask for.
var assetNames = []string{"matcher.js", "identify.js", "parts.js", "part.js", "table.js", "send.js", "card.js", "measured.js", "correct.js", correctRowsScript,
	"lifesize.js", "order.js", "shaft.js", static.FrameName, static.LiveName, "icon.svg", "matcher-late.js", "driveline.js",
	"calculation.js", "embed-frame.js", largeSheet, groupsScript, static.PiecesScript}

// bundle adds the scripts, the styles and the core's chart, each named by its content
// so that a page and the assets it asks for always belong together.
func (s *site) bundle() diag.List {
	for _, f := range s.assets.Files {
		switch f.Path {
		case s.assets.Path(static.LiveName):
			if s.live == "" {
				continue
			}
		case s.assets.Path(ownSheet): // part of the sheet that addOwn writes
			continue
		case s.assets.Path(ownScript):
			if s.own == nil || s.own.overlay == nil {
				continue
			}
		case s.assets.Path(static.WorkerName), s.assets.Path(static.RetireName):
			continue // written by addWorker
		case s.assets.Path(static.EmbedName), s.assets.Path(static.EmbedFormName), s.assets.Path(static.EmbedSheetName):
			continue // written by addEmbed
		}
		s.addRoot(f.Path, f.Bytes, Assets)
	}
	if s.cut != nil {
		go s.cut() // while the slips are made
	}
	s.addSlips()
	problems := s.addChart()
	s.addDrawings()
	s.addOwn()
	s.parts = map[string]string{}
	for _, t := range partTables(s.set) {
		s.parts[partData(t)] = s.addAsset("assets/part-"+t.ID, ".json", s.partJSON(t))
	}
	return problems
}

// addChart adds what the core reads: the chart, or a large one in pieces.
func (s *site) addChart() diag.List {
	if s.cut != nil {
		return s.addPieces()
	}
	s.chart = s.addAsset("assets/chart", ".json", s.chartJSON())
	return nil
}

// addAsset adds a file named by its content and returns its path. Assets lie at the root, so
// that what two languages have alike is one file.
func (s *site) addAsset(stem, ending string, content []byte) string {
	sum := sha256.Sum256(content)
	path := stem + "." + hex.EncodeToString(sum[:4]) + ending
	s.addRoot(path, content, Assets)
	return path
}

// integrity says, by the address of each script and style, what a browser must find its
// bytes to hash to before it runs them (Subresource Integrity, W3C).
func (s *site) integrity() map[string]string {
	sums := map[string]string{}
	for _, f := range s.assets.Files {
		if ext := path.Ext(f.Path); ext == ".js" || ext == ".css" {
			sums[s.atRoot(f.Path)] = f.Integrity()
		}
	}
	if s.embed.path != "" {
		sums[s.atRoot(s.embed.path)] = s.embed.integrity
	}
	if s.own != nil {
		for _, f := range s.files {
			if f.Path == s.own.style {
				sums[s.atRoot(f.Path)] = static.File{Path: f.Path, Bytes: f.mustRead()}.Integrity()
			}
		}
	}
	return sums
}

// scripts maps the plain names of scripts, icon, chart and drawings to the addresses pages use.
func (s *site) scripts() map[string]string {
	addresses := map[string]string{"chart.json": s.atRoot(s.chart), "drawings.svg": s.atRoot(s.drawings), "slips.json": s.atRoot(s.slips),
		"search-index.json": s.atRoot(s.index)}
	if s.embed.path != "" {
		addresses[static.EmbedName] = s.atRoot(s.embed.path)
	}
	for name, path := range s.parts {
		addresses[name] = s.atRoot(path)
	}
	names := slices.Clone(assetNames)
	if s.own != nil && s.own.data != "" {
		addresses[ownData] = s.atRoot(s.own.data)
		names = append(names, ownScript)
	}
	for _, name := range static.Calculations {
		names = append(names, static.CalculationScript(name))
	}
	for _, name := range names {
		if path := s.assets.Path(name); path != "" {
			addresses[name] = s.atRoot(path)
		}
	}
	return addresses
}
