// What the finder in somebody else's page says by itself.
export const words = {
  loading: "Getting the joint finder …",
  failed: "The joint finder could not be loaded here.",
  fullPage: "Open the full page",
  retry: "Try again",
  partMissing:
    "A part of the finder did not load: nobody has looked for known slips of measuring. It is tried again with the next reading.",
  chart: (version: string) => `Chart ${version}.`,
  startedOver: "All readings removed.",
  noLanguage: (asked: string, given: string) =>
    `joint-finder: this site has no language ${JSON.stringify(asked)}; it speaks ${given}.`,
} as const;
