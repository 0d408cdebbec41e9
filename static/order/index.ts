// The front door of the enquiry slip's pure part.
export { decodeSlip, encodeSlip, longestLink } from "./address";
export { jointsFrom } from "./add";
export { enquiryDocument } from "./document";
export { factsOf } from "./facts";
export { evidence, figure, measured, printings, whole } from "./figures";
export { mailSubject, mailText, textMessage } from "./texts";
