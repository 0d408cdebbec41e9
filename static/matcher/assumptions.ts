// Every constant of the method, each with what it rests on, so that a reader can see
// which figures are published and which are our judgement.
export * from "./assumptions-measuring";
export * from "./assumptions-weighing";
export { assumptions } from "./assume";
