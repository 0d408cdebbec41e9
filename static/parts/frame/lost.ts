// A kit of a large chart stands on the page of its size. Whoever comes by the address it had while the chart was small, from
// a printed code or a saved record, is led to the search for its name. Markup: templates/frame.html, of the page of lost
// addresses.

export function findLost(): void {
  const name = /\/joint\/([^/]+)\/(?:paper\/)?$/.exec(location.pathname)?.[1];
  const search = document.querySelector<HTMLAnchorElement>("[data-search]");
  if (document.body.dataset.lost !== undefined && name && search) location.replace(`${search.href}#q=${name}`);
}
