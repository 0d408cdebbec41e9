// Fetches an asset of the site by adding it to the page. Its name and sum come from the bundler (static/bundle.go), so
// that no page has to carry them.

export interface Asset {
  file: string; // beside the script that asks
  integrity: string;
}

/** Resolves once the script or sheet is there, rejects when it does not come. */
export function load(tag: "script" | "link", asset: Asset, from: string): Promise<void> {
  return new Promise((done, failed) => {
    const element = document.createElement(tag);
    const address = new URL(asset.file, from).href;
    if (element instanceof HTMLScriptElement) element.src = address;
    else {
      element.rel = "stylesheet";
      element.href = address;
    }
    element.integrity = asset.integrity;
    element.onload = () => done();
    element.onerror = () => {
      element.remove();
      failed(new Error(address));
    };
    document.head.append(element);
  });
}
