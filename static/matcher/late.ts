// The late part of the core, a script of its own behind matcher.js: see learn.ts.
import type * as core from "./index";
import { findSlips, otherByFaces } from "./slips";
import { head } from "./speech-slips";
import { wayOut } from "./speech-ways";
import { tellApart } from "./tell-apart";
import { ways } from "./ways";

declare const CapspanCore: typeof core; // left by matcher.js

CapspanCore.learn({ findSlips, otherByFaces, head, tellApart, ways, wayOut });
