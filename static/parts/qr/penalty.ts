// How hard a masked symbol is to read (ISO/IEC 18004:2015, 7.8.3): the mask with the least is taken.

// Dark and light as 1:1:3:1:1 beside four light modules, which could be taken for a finder; as eleven bits.
const finderLike = [0b00001011101, 0b10111010000];

export function penalty(grid: readonly (readonly boolean[])[]): number {
  const side = grid.length;
  let sum = 0;
  let dark = 0;
  let above: readonly boolean[] = [];
  grid.forEach((row, r) => {
    sum += line(row) + line(grid.map((other) => other[r] ?? false));
    for (let c = 0; c < side; c++) {
      if (row[c]) dark++;
      // a square of four of one colour
      if (c > 0 && r > 0 && row[c] === row[c - 1] && row[c] === above[c] && row[c] === above[c - 1]) sum += 3;
    }
    above = row;
  });
  const share = (dark * 100) / (side * side);
  return sum + 10 * Math.floor(Math.abs(share - 50) / 5);
}

// Runs of five or more of one colour, and what looks like a finder.
function line(modules: readonly boolean[]): number {
  let sum = 0;
  let run = 0;
  let window = 0;
  for (let i = 0; i < modules.length; i++) {
    run = i > 0 && modules[i] === modules[i - 1] ? run + 1 : 1;
    if (run === 5) sum += 3;
    else if (run > 5) sum += 1;
    window = ((window << 1) | (modules[i] ? 1 : 0)) & 0x7ff;
    if (i >= 10 && finderLike.includes(window)) sum += 40;
  }
  return sum;
}
