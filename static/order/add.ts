// What a person may write to put a joint on a slip: a size by one of its names, or an address of this site.
import { decodeSlip } from "./address";
import type { SlipChart, SlipRow } from "./chart";
import { emptyJoint, type SlipJoint } from "./slip";
import { addWords as say } from "words:order";

export type Added = { ok: true; joints: SlipJoint[] } | { ok: false; says: string };

/** jointsFrom reads the name of a row, another name of one, a row's address, an identification's or a slip's. */
export function jointsFrom(typed: string, slips: SlipChart): Added {
  const text = (capspanInPieces ? nameIn(typed) : typed).trim();
  if (text === "") return { ok: false, says: say.nothing };
  const at = text.indexOf("#");
  if (at >= 0) {
    const opened = decodeSlip(text.slice(at));
    return opened.ok ? { ok: true, joints: opened.slip.joints } : { ok: false, says: opened.says };
  }
  const page = /\/joint\/([^/]+)\//.exec(text);
  const name = plain(page?.[1] ?? text);
  const byId = slips.rows.filter((r) => plain(r.id) === name);
  const found = byId.length > 0 ? byId : slips.rows.filter((r) => r.also.some((also) => plain(also) === name));
  const [row] = found;
  if (row === undefined) return { ok: false, says: say.unknown(text.slice(0, 60)) };
  if (found.length > 1) return { ok: false, says: say.several(text.slice(0, 60), found.map(idOf).join(", ")) };
  return { ok: true, joints: [{ ...emptyJoint(), row: row.id }] };
}

/** In a large chart a row has its page with its size: the name in such an address, or what else was typed. */
export function nameIn(typed: string): string {
  return /\/size\/[^/]+\/#([^/\s]+)\s*$/.exec(typed)?.[1] ?? typed;
}

function idOf(row: SlipRow): string {
  return row.id;
}

/** A name as whoever types it may write it; plainName in build/slip_chart.go makes the same. */
export function plain(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .replace(/[\s×]+/g, (s) => (s.includes("×") ? "x" : ""));
}
