// What the constants of slips rest on. How often people slip has no source: every chance
// here is a judgement, and only their order of size matters.
import type * as given from "./given-slips";
import type { Prose } from "./method";

export const slips: Record<keyof typeof given, Prose> = {
  slipUnits: {
    id: "slip-units",
    unit: "",
    basis: "judgement",
    source: "",
  },
  slipExchanged: {
    id: "slip-exchanged",
    unit: "",
    basis: "judgement",
    source: "",
  },
  slipPoint: {
    id: "slip-point",
    unit: "",
    basis: "judgement",
    source: "",
  },
  slipDigits: {
    id: "slip-digits",
    unit: "",
    basis: "judgement",
    source: "",
  },
  slipFraction: {
    id: "slip-fraction",
    unit: "",
    basis: "judgement",
    source: "",
  },
  slipOuterFaces: {
    id: "slip-outer-faces",
    unit: "",
    basis: "judgement",
    source: "",
  },
  slipOverClips: {
    id: "slip-over-clips",
    unit: "",
    basis: "judgement",
    source: "",
  },
  slipOverCaps: {
    id: "slip-over-caps",
    unit: "",
    basis: "judgement",
    source: "",
  },
  slipOverPlates: {
    id: "slip-over-plates",
    unit: "",
    basis: "judgement",
    source: "",
  },
  slipOverEars: {
    id: "slip-over-ears",
    unit: "",
    basis: "judgement",
    source: "",
  },
  slipCentre: {
    id: "slip-centre",
    unit: "",
    basis: "judgement",
    source: "",
  },
  slipRadius: {
    id: "slip-radius",
    unit: "",
    basis: "judgement",
    source: "",
  },
  slipHold: {
    id: "slip-hold",
    unit: "",
    basis: "judgement",
    source: "",
  },
  slipOfPart: {
    id: "slip-of-part",
    unit: "",
    basis: "judgement",
    source: "",
  },
  clipsLeast: {
    id: "slip-clips-least",
    unit: "mm",
    basis: "published",
    source: "mazda-81",
  },
  clipsMost: {
    id: "slip-clips-most",
    unit: "mm",
    basis: "published",
    source: "datsun-521",
  },
  capsLeast: {
    id: "slip-caps-least",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  capsMost: {
    id: "slip-caps-most",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  platesLeast: {
    id: "slip-plates-least",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  platesMost: {
    id: "slip-plates-most",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  earsLeast: {
    id: "slip-ears-least",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  earsMost: {
    id: "slip-ears-most",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  centreSpread: {
    id: "slip-centre-spread",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  slipReach: {
    id: "slip-reach",
    unit: "",
    basis: "judgement",
    source: "",
  },
  slipAt: {
    id: "slip-at",
    unit: "",
    basis: "judgement",
    source: "",
  },
  slipStrongAt: {
    id: "slip-strong-at",
    unit: "",
    basis: "judgement",
    source: "",
  },
};
