// What a page gets to see when it asks for an address.
//
//   listed, kept and sound   the kept copy; the network is not asked
//   listed, else             the network, when it has the listed bytes; they are kept again
//   listed, nowhere          a page that says so; never the same page of another edition
//   not listed               the network; without one, an asset of an older edition or the page for lost addresses
import { fromNetwork, kept, keptByOlder, put } from "./keep";
import { isApart, moved, own, root, scope, sums } from "./site";

/** Answers a GET below the root. */
export async function answer(request: Request): Promise<Response> {
  const page = request.mode === "navigate";
  const { pathname, search, href } = new URL(request.url);
  // A query names no other file; /chart/index.html is /chart/.
  const address = pathname.slice(new URL(root).pathname.length).replace(/(^|\/)index\.html$/, "$1");
  const to = moved.get(address) ?? moved.get(`${address}/`);
  if (page && to !== undefined) return Response.redirect(root + to, 302);
  if (page && !sums.has(address) && sums.has(`${address}/`))
    return Response.redirect(`${root + address}/${search}`, 302);
  return sums.has(address) ? listed(request, address, page) : unlisted(request, address, page, href);
}

async function listed(request: Request, address: string, page: boolean): Promise<Response> {
  const copy = await kept(address).catch(() => null); // a store that cannot be read holds nothing
  if (copy) return copy;
  try {
    const fetched = await fromNetwork(address);
    if (fetched.is === "elsewhere") return fetch(request);
    if (fetched.is === "listed") {
      const mended = put(address, fetched.response.clone());
      await mended.catch(() => undefined); // no room: the reader has the page all the same
      return fetched.response;
    }
  } catch {
    // no network
  }
  return (page && (await standIn("not-kept.html", 503))) || Response.error();
}

async function unlisted(request: Request, address: string, page: boolean, href: string): Promise<Response> {
  if (!page) return (await keptByOlder(address).catch(() => undefined)) ?? fetch(request);
  try {
    return await fetch(request);
  } catch (error) {
    if (!href.startsWith(scope)) throw error;
    const lost = await (isApart(address) ? standIn("not-kept.html", 503) : standIn("404.html", 404));
    if (lost) return lost;
    throw error;
  }
}

/** One of the site's own pages that stand in for others. */
async function standIn(name: string, status: number): Promise<Response | null> {
  const copy = await kept(own(name)).catch(() => null);
  return copy && new Response(copy.body, { status, headers: copy.headers });
}
