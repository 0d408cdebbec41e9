// What the build tells the worker: the list of the site's files, each with its sum. build/worker.go writes it in front
// of the script, so that a changed file makes another worker, and the browser sees by itself that there is one.
import type { Message } from "./messages";

interface Site {
  /** The sum of the whole list: the name of this edition of the site. */
  edition: string;
  /** The chart's version name, for the reader. */
  chart: string;
  /** "sum address" for each file that is kept before the worker begins its work. */
  first: string[];
  /** The same for the files that are kept when there is time. */
  rest: string[];
  /** Addresses that the host sends elsewhere, with where. */
  moved: Record<string, string>;
  /** Where the root of a site in several languages is from this worker's folder; not there where it is the same. */
  root?: string;
  /** Folders below the scope of whose pages this worker keeps none or few: other languages', or a large chart's sizes. */
  apart?: string[];
}

declare const capspanSite: Site;
declare const self: ServiceWorkerGlobalScope;

export const site = capspanSite;

/** The address of the front page; the pages of this worker lie below it. */
export const scope = new URL("./", self.location.href).href;

/** The root of the site, where what all its languages share lies; addresses are written without it. */
export const root = new URL(site.root ?? "./", scope).href;

/** The address below the root of a page of this worker. */
export const own = (name: string): string => scope.slice(root.length) + name;

/** Whether the page may be there though this worker does not keep it, so that it cannot say that there is none. */
export const isApart = (address: string): boolean => (site.apart ?? []).some((folder) => address.startsWith(folder));

/** The sum of each listed file, by its address below the root; a page's address ends in a slash. */
export const sums = new Map<string, string>();

/** Notes the sums of "sum address" lines and returns the addresses, in order. */
function read(lines: string[]): string[] {
  return lines.map((line) => {
    const [sum = "", address = ""] = line.split(" ");
    sums.set(address, sum);
    return address;
  });
}

/** Where the host sends an address of the site that is no page any more. */
export const moved = new Map(Object.entries(site.moved));

export const first = read(site.first);
export const rest = read(site.rest);

/** The windows that show a page of this site, whoever gave it to them. */
export async function windows(): Promise<readonly WindowClient[]> {
  const all = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  return all.filter(({ url }) => url.startsWith(scope)); // not those of another language, or of another chart
}

/** Tells every open page. */
export async function tell(message: Message): Promise<void> {
  for (const page of await windows()) page.postMessage(message);
}
