// What pages and the worker say to each other. static/parts/offline is the other side.

/**
 * From a page: keep the rest of the list while nothing else is to do; say about yourself, through the port; take over.
 */
export type Request = "fill" | "about" | "use";

/** To all pages: a newer edition cannot be kept beside this one. */
export type Message = "no-room";

/** The answer to "about". */
export interface About {
  edition: string;
  chart: string;
  /** Open pages of the site, the one that asks among them. */
  pages: number;
}
