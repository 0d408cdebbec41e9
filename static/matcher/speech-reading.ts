// What is said of a reading that cannot be understood. One sentence each: what is
// wrong, then what to write.

export const empty = (): string => "There is nothing here. Write a reading, such as 27.00 mm or 1.062 in.";
export const tooLong = (most: number): string =>
  `That is longer than ${most} characters. Write one reading, such as 1.062 in.`;
export const noNumber = (text: string): string =>
  `There is no number in “${text.trim()}”. Write a reading, such as 27.00 mm.`;
export const notNumber = (number: string): string =>
  `“${number}” is not one number. Write it as 27.00, 1.062 or 1 1/16.`;
export const signed = (): string => "A length has no plus or minus sign. Leave the sign out.";
export const zero = (): string => "A length must be more than zero.";
export const exponent = (): string => "Write the number out in full, without an exponent.";
export const twoNumbers = (): string => "There are two numbers here. Write one reading at a time.";
export const thousands = (number: string): string =>
  `“${number}” has two points or commas, so it can be read two ways. Write only the one before the decimals.`;
export const whichUnit = (number: string): string =>
  `Is “${number}” in millimetres or inches? Write mm or in after it.`;
export const decimalFraction = (): string => "Write a fraction or a decimal, not both in one: 1 1/16 or 1.0625.";
export const fractionOfMillimetre = (): string =>
  "Fractions are for inches. Write millimetres as a decimal, or leave mm out.";
export const zeroBelow = (): string => "A fraction cannot have 0 below the line.";
export const oddFraction = (bottom: number): string =>
  `Inch rules divide by 2, 4, 8, 16, 32, 64 and 128, not by ${bottom}. Look again, or write a decimal.`;
export const improper = (): string =>
  "After a whole number the fraction must be less than one. Write 1 1/16, not 1 17/16.";

export function unknownUnit(word: string): string {
  const w = word.toLowerCase().replace(/\.$/, "");
  if (w === "cm") return "Write millimetres or inches: 1 cm is 10 mm.";
  if (w === "m") return "Write millimetres or inches: 1 m is 1000 mm.";
  if (w === "ft" || w === "feet" || w === "foot" || w === "'") return "Write inches or millimetres: 1 foot is 12 in.";
  if (w === "mil" || w === "mils" || w === "thou") return "Write inches with a point: 1062 thou is 1.062 in.";
  return `“${word}” is not a unit that is known here. Write mm or in.`;
}
