// What stands round every page comes as one script: each of its own would cost a first visit its name and its sum.
import "../offline/offline";
import "../search/open";
import "./languages";
import { findLost } from "./lost";

if (capspanInPieces) findLost();
