// SHA-256 (FIPS 180-4), by which the bytes of a file are held to the name it has. The browser's own is there only on
// pages that came by https, and a chart in a workshop's network comes by http; integrity in a request would want the
// whole sum, which makes the directory of a large chart longer by a third.

let round: Int32Array | undefined; // made when first needed
let begin: Int32Array | undefined;

// The first 32 bits of the fractions of roots of the first primes. A double has 53, of which 3 or 5 are the whole part.
function constants(root: (prime: number) => number, count: number): Int32Array {
  const out = new Int32Array(count);
  let found = 0;
  for (let n = 2; found < count; n++) {
    let prime = true;
    for (let by = 2; by * by <= n; by++) if (n % by === 0) prime = false;
    if (prime) out[found++] = (root(n) % 1) * 2 ** 32;
  }
  return out;
}

const turn = (x: number, by: number): number => (x >>> by) | (x << (32 - by));

/** sha256 is the sum of the bytes, 32 of them. */
export function sha256(bytes: Uint8Array): Uint8Array {
  round ??= constants(Math.cbrt, 64);
  begin ??= constants(Math.sqrt, 8);
  const blocks = new Uint8Array(((bytes.length + 8) >> 6) * 64 + 64);
  blocks.set(bytes);
  blocks[bytes.length] = 0x80;
  const view = new DataView(blocks.buffer);
  view.setUint32(blocks.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(blocks.length - 4, bytes.length << 3);
  const sum = Int32Array.from(begin);
  const w = new Int32Array(64);
  for (let at = 0; at < blocks.length; at += 64) block(view, at, sum, w, round);
  const out = new DataView(new ArrayBuffer(32));
  for (let n = 0; n < 8; n++) out.setInt32(4 * n, sum[n] ?? 0);
  return new Uint8Array(out.buffer);
}

// 6.2.2 of the standard, for the block that begins at `at`.
function block(view: DataView, at: number, sum: Int32Array, w: Int32Array, round: Int32Array): void {
  for (let t = 0; t < 16; t++) w[t] = view.getInt32(at + 4 * t);
  for (let t = 16; t < 64; t++) {
    const [x, y] = [w[t - 15] ?? 0, w[t - 2] ?? 0];
    const s0 = turn(x, 7) ^ turn(x, 18) ^ (x >>> 3);
    const s1 = turn(y, 17) ^ turn(y, 19) ^ (y >>> 10);
    w[t] = (w[t - 16] ?? 0) + s0 + (w[t - 7] ?? 0) + s1;
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = sum;
  for (let t = 0; t < 64; t++) {
    const s1 = turn(e, 6) ^ turn(e, 11) ^ turn(e, 25);
    const one = (h + s1 + ((e & f) ^ (~e & g)) + (round[t] ?? 0) + (w[t] ?? 0)) | 0;
    const s0 = turn(a, 2) ^ turn(a, 13) ^ turn(a, 22);
    const two = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + one) | 0, c, b, a, (one + two) | 0];
  }
  [a, b, c, d, e, f, g, h].forEach((word, n) => {
    sum[n] = (sum[n] ?? 0) + word;
  });
}

/** A name is the beginning of the sum in small hex digits, 128 bits of it or more: no file system takes two for one. */
export function isNamed(bytes: Uint8Array, name: string): boolean {
  if (name.length < 32) return false;
  const whole = Array.from(sha256(bytes), (byte) => byte.toString(16).padStart(2, "0")).join("");
  return whole.startsWith(name);
}
