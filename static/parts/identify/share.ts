// Copy address and Send. Copying needs a secure page and leave; without them the address is shown to be copied.
import { part } from "./element";
import { words } from "words:identify";

export function sharePart(root: HTMLElement, say: (text: string) => void, title: string = words.shareTitle): void {
  const box = part(root, "address-box");
  const field = part<HTMLInputElement>(root, "address");

  part(root, "copy").addEventListener("click", async () => {
    try {
      await navigator.clipboard.writeText(location.href);
      box.hidden = true;
      say(words.copied);
    } catch {
      box.hidden = false;
      field.value = location.href;
      field.focus();
      field.select();
      say(words.copyByHand);
    }
  });

  const share = part<HTMLButtonElement>(root, "share");
  share.hidden = typeof navigator.share !== "function";
  share.addEventListener("click", async () => {
    try {
      await navigator.share({ title, url: location.href });
      say(words.shared);
    } catch {
      say(""); // the reader closed the list of apps
    }
  });
}
