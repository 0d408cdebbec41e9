// The identification core's front door: pure functions over plain data, no DOM, no
// locale, no clock. The browser finds them as CapspanCore, package matcher runs the
// same bundle inside the Go program.
//
//   goal      name a size only when the readings leave no other and the chart may claim it
//   non-goal  guessing: wrong and confident is the one thing that must not happen
export { decodeAddress, encodeAddress } from "./address";
export { identify } from "./identify";
export { learn, learned } from "./learn";
export { hold } from "./prepared";
export { parseReading } from "./reading";
export { seal, unseal } from "./seal";
export { facesFor } from "./words";
export { yokeOf } from "./speech-yokes";
