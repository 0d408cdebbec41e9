// The core as the page of a part sees it: parts.js is loaded first and leaves its exports in this global.
declare const CapspanParts: typeof import("../../matcher/parts");
