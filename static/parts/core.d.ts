// The identification core as the page sees it: matcher.js is loaded first and leaves its exports in this global.
declare const CapspanCore: typeof import("../matcher/index");
