// Every constant of the method. What each rests on is in method.ts beside it, which the
// type check keeps complete; only the about page needs that, so no reader's phone loads it.
export * from "./given-measuring";
export * from "./given-slips";
export * from "./given-weighing";
export * from "./given-yokes";
