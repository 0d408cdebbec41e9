// The identification core as the page sees it: matcher.js is loaded first and leaves its exports in this global.
declare const CapspanCore: typeof import("../matcher/index");

// What reads a chart in pieces, left by pieces.js on the pages of a large chart.
declare const CapspanPieces: typeof import("../matcher/pieces");

/** Whether the scripts are those of a chart in pieces; static/bundle.go puts true or false in. */
declare const capspanInPieces: boolean;
