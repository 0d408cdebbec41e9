// The front door of the shaft record's pure part.
export { readRecord } from "./read";
export { emptyRecord, keptOf, putCalculation, recordDocument } from "./record";
export { rescue } from "./rescue";
export { shelfOf } from "./shelf";
