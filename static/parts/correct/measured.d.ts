// What measurements come to, as the page sees it: measured.js is loaded first and leaves its exports in this global.
declare const CapspanMeasured: typeof import("../../matcher/measured");
