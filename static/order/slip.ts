// An enquiry slip: which joints somebody wants, and what was found out about each. A slip holds what a person chose or
// measured and nothing else: what the chart knows of a size is looked up when the slip is shown (facts.ts), so that no
// figure of the chart travels apart from its evidence.
//
// Pure functions over plain data, without DOM, locale or clock: the page and the tests run the same. The core,
// CapspanCore, must be there first.
import type { Query } from "../matcher/types";

/** Most joints on one slip: a shaft in two pieces has three, and a sheet of paper holds no more. */
export const mostJoints = 3;
/** Most of one joint. */
export const mostWanted = 99;

/** Longest texts, in UTF-16 units as a field counts them. */
export const longestName = 60;
export const longestPlace = 40;
export const longestNote = 240;

/** Things to order with a joint. */
export const extras = ["clips", "straps", "u-bolts", "plate-bolts"] as const;
export type Extra = (typeof extras)[number];

/** How it is greased, where somebody cares. */
export const greases = ["fitting", "sealed"] as const;
export type Grease = (typeof greases)[number];

export interface Wanted {
  item: Extra;
  count?: number; // left out: a line to fill in
}

export interface SlipJoint {
  count: number; // 1 to mostWanted
  place?: string; // where it goes, in the writer's words
  query?: Query; // the identification; left out when the size was chosen by its name
  row?: string; // id of that size's row
  grease?: Grease; // left out: not decided, a line to fill in
  extras: Wanted[];
}

export interface Slip {
  joints: SlipJoint[]; // one to mostJoints
  shop?: string; // who is asked
  shopReach?: string; // phone or mail
  from?: string; // who asks
  fromReach?: string;
  job?: string; // the customer or the vehicle
  note?: string;
  chart?: string; // the version it was made with
}

export function emptyJoint(): SlipJoint {
  return { count: 1, extras: [] };
}

/** The texts of a slip with their keys in the address and their longest. */
export const texts = [
  ["shop", "shop", longestName],
  ["shopReach", "shop-at", longestName],
  ["from", "from", longestName],
  ["fromReach", "from-at", longestName],
  ["job", "job", longestName],
  ["note", "say", longestNote],
] as const;
