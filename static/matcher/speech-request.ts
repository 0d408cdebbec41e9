// What is said of a link that asks for no measurements one could take.

export const empty = (): string => "This page is opened by a link that says what to measure. Yours carries nothing.";
export const broken = (): string =>
  "This link has lost a piece on its way, so we cannot tell all that was asked. Ask for it to be sent again, as one line.";
export const notOurs = (): string =>
  "This link does not say what to measure. It may have been typed by hand or changed.";
export const nothingAsked = (): string => "This link asks for nothing to be measured. Ask for a new one.";
export const tooLong = (): string => "This link is too long to be one of ours. Ask for a new one.";
