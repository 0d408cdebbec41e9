// The part of the core that looks for slips, as a script of its own behind matcher.js.
import type * as core from "./index";
import { findSlips, otherByFaces } from "./slips";
import { head } from "./speech-slips";

declare const CapspanCore: typeof core; // left by matcher.js

CapspanCore.learn({ findSlips, otherByFaces, head });
