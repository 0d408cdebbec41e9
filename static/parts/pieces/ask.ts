// A question to a chart in pieces. While pieces are on their way there is no answer, and nothing of an older one; when
// they have come, whoever asked is told to ask again, with the readings of that moment. What would cost much is asked
// for first.
import type { AnyChart } from "../../matcher/prepared";
import type { Answer, Query } from "../../matcher/types";
import { whyLost, type Why } from "./fetch";
import { heldOf, tried } from "./held";

/** What a question may fetch without the reader being asked, in bytes as a host sends them. */
const most = 60_000;

/** How long it takes, ms, until the page says that it is waiting, and until it offers to give up a request. */
const slowAfter = 700;
const stuckAfter = 10_000;

/** Why there is no answer yet. `pieces` and `bytes` are what is being fetched, or would be. */
export interface Waiting {
  is: "looking" | "slow" | "stuck" | "costly" | Why;
  pieces: number;
  bytes: number;
  few: boolean; // a further measurement would make it less
  /** Fetches what is costly, or tries again. */
  go(): void;
}

/** What is fetched for a question, and how; `anew` gives up requests that hang. It rejects with what whyLost knows. */
interface Load extends Pick<Waiting, "pieces" | "bytes" | "few"> {
  fetch(anew: boolean): Promise<void>;
}

interface Asked {
  key: string;
  spent: number; // bytes that have come for it
  allowed: boolean; // the reader has agreed to what is costly
  waiting: Waiting | null;
}

/** Who asks: a page, or one of the forms on it. It has one question at a time. */
export interface Asker {
  /**
   * lookUp gives what a run that asks the core comes to, or null while it lacks pieces; then `again` is called when it
   * is worth another call. The key tells one question from the next.
   */
  lookUp<T>(chart: AnyChart, key: string, run: () => T, again: () => void, few?: boolean): T | null;
  /** waitFor fetches what a question needs besides pieces. It is waited for as they are, and costs little. */
  waitFor(key: string, fetch: Load["fetch"], again: () => void): void;
  /** The answer of the core, or null while pieces are missing. */
  answer(chart: AnyChart, query: Query, again: () => void): Answer | null;
  /** whenAnswered hands over the answer to a query, once; never when other readings come before it. */
  whenAnswered(query: Query, take: (answer: Answer) => void): void;
  /** Why there is no answer; null when nobody asked, or there is one. */
  waiting(): Waiting | null;
  /** Nothing is asked any more. */
  forget(): void;
}

/** The page, of which one part asks. */
export const page = /* @__PURE__ */ asker();

/** asker makes another, for forms that stand beside each other. */
export function asker(): Asker {
  let asked: Asked | null = null;
  let since: { key: string; take: (answer: Answer) => void } | null = null; // who waits for the answer to an address

  // The question in hand: it is the same as long as its key is.
  function askedOf(key: string): Asked {
    if (asked?.key !== key) asked = { key, spent: 0, allowed: false, waiting: null };
    return asked;
  }

  function begun(own: Asked, load: Load, again: () => void): void {
    if (own.waiting !== null) return;
    begin(own, load, () => {
      if (asked === own) again();
    });
  }

  function lookUp<T>(chart: AnyChart, key: string, run: () => T, again: () => void, few = false): T | null {
    const held = heldOf(chart);
    const own = askedOf(key);
    const found = tried(held, run);
    if (!found.whole) {
      const { missing } = found;
      const fetch = (anew: boolean): Promise<void> => held.fetch(missing, anew);
      begun(own, { pieces: missing.length, bytes: held.bytes(missing), few, fetch }, again);
      return null;
    }
    own.waiting = null;
    return found.came;
  }

  return {
    lookUp,
    waitFor: (key, fetch, again) => begun(askedOf(key), { pieces: 0, bytes: 0, few: false, fetch }, again),
    answer(chart, query, again) {
      const key = JSON.stringify(query);
      const answer = lookUp(chart, key, () => heldOf(chart).identify(query), again, isOpen(query));
      if (since !== null && since.key !== key) since = null; // other readings came before it
      if (answer !== null) {
        since?.take(answer);
        since = null;
      }
      return answer;
    },
    whenAnswered(query, take) {
      since = { key: JSON.stringify(query), take };
    },
    waiting: () => asked?.waiting ?? null,
    forget() {
      asked = null;
      since = null;
    },
  };
}

// begin fetches what a question lacks; `tell` is called whenever there is something new to say of it.
function begin(own: Asked, load: Load, tell: () => void): void {
  const { pieces, bytes, few } = load;
  let turn = 0; // a try that another has followed says nothing any more
  const wait = (is: Waiting["is"], go: () => void): void => {
    own.waiting = { is, pieces, bytes, few, go };
  };
  function fetch(anew: boolean): void {
    const mine = ++turn;
    const retry = (): void => {
      fetch(true);
      tell();
    };
    const later = (is: "slow" | "stuck", after: number): number =>
      window.setTimeout(() => {
        if (mine !== turn) return;
        wait(is, retry);
        tell();
      }, after);
    const clocks = [later("slow", slowAfter), later("stuck", stuckAfter)];
    const end = (is: Why | null): void => {
      clocks.forEach(clearTimeout);
      if (mine !== turn) return;
      own.spent += is === null ? bytes : 0;
      own.waiting = null;
      if (is !== null) wait(is, retry);
      tell();
    };
    wait("looking", retry);
    load.fetch(anew).then(
      () => end(null),
      (error: unknown) => end(whyLost(error) ?? "damaged"),
    );
  }
  if (own.allowed || own.spent + bytes <= most) {
    fetch(false);
    return;
  }
  wait("costly", () => {
    own.allowed = true;
    fetch(false);
    tell();
  });
}

function isOpen(query: Query): boolean {
  return query.ends.some((end) => !end.cap?.length || !end.across?.length);
}
