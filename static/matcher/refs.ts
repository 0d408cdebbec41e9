// Every row an answer names, whatever for.
import type { PartAnswer } from "./part-types";
import type { Answer } from "./types";

export function refsOf(answer: Answer | PartAnswer): Set<string> {
  const refs = new Set<string>();
  const add = (list: readonly string[]): void => {
    for (const ref of list) refs.add(ref);
  };
  if ("rows" in answer) {
    add([...answer.rows, ...answer.near].map((row) => row.ref));
    return refs;
  }
  for (const size of [...answer.sizes, ...answer.near, ...answer.sameFigures]) add(size.rows);
  for (const end of answer.ends) add(end.rows);
  for (const slip of answer.slips) add(slip.rows);
  for (const way of answer.ways) add([way.joint, ...way.to]);
  add(answer.conversions);
  return refs;
}
