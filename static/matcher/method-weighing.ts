// What the constants of comparing rest on.
import type * as given from "./given-weighing";
import type { Prose } from "./method";

export const weighing: Record<keyof typeof given, Prose> = {
  commonPractice: {
    id: "chart-common-practice",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  memoryCap: {
    id: "chart-memory-cap",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  memoryAcross: {
    id: "chart-memory-across",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  madeCap: {
    id: "made-cap",
    unit: "mm",
    basis: "common-practice",
    source: "iso286",
  },
  madeAcross: {
    id: "made-across",
    unit: "mm",
    basis: "judgement",
    source: "mazda-81",
  },
  agreeLevel: {
    id: "agree-level",
    unit: "",
    basis: "judgement",
    source: "",
  },
  rivalReach: {
    id: "rival-reach",
    unit: "",
    basis: "judgement",
    source: "",
  },
  tailDof: {
    id: "tail-dof",
    unit: "",
    basis: "judgement",
    source: "",
  },
  priorCommon: {
    id: "prior-common-practice",
    unit: "",
    basis: "judgement",
    source: "",
  },
  priorMemory: {
    id: "prior-memory",
    unit: "",
    basis: "judgement",
    source: "",
  },
  priorOpen: {
    id: "prior-open",
    unit: "",
    basis: "judgement",
    source: "",
  },
  priorOther: {
    id: "prior-other-figure",
    unit: "",
    basis: "judgement",
    source: "",
  },
  wholeDigits: {
    id: "whole-digits",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  priorAbsent: {
    id: "prior-absent",
    unit: "",
    basis: "judgement",
    source: "",
  },
  sharedCap: {
    id: "absent-shared-cap",
    unit: "",
    basis: "judgement",
    source: "",
  },
  spreadCap: {
    id: "absent-spread-cap",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  spreadAcross: {
    id: "absent-spread-across",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  otherLeftAt: {
    id: "other-left-at",
    unit: "",
    basis: "judgement",
    source: "",
  },
  claimAt: {
    id: "claim-at",
    unit: "",
    basis: "judgement",
    source: "",
  },
  coarseCap: {
    id: "coarse-cap",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
  coarseAcross: {
    id: "coarse-across",
    unit: "mm",
    basis: "judgement",
    source: "",
  },
};
