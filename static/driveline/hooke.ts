// The arithmetic of one Hooke joint, and of several in a row as 2 x 2 matrices.
//
//   (cos t, sin t)  --joint-->  (cos b cos t, sin t)  --turned by d-->  ...
//
// Whatever the product, its singular values s1 >= s2 make it one joint of cos b = s2 / s1
// with a turn before and one after. Angles are rad, accelerations are over the square of
// the driving speed.

/** Row by row: [a, b, c, d] is a b over c d. */
export type Matrix = readonly [number, number, number, number];

/** A joint of angle b, rotations counted from the driving yoke in its plane. */
export function joint(b: number): Matrix {
  return [Math.cos(b), 0, 0, 1];
}

/** What comes after is seen turned by d. */
export function turned(d: number): Matrix {
  const c = Math.cos(d);
  const s = Math.sin(d);
  return [c, -s, s, c];
}

/** First `first`, then `then`. */
export function chain(then: Matrix, first: Matrix): Matrix {
  return [
    then[0] * first[0] + then[1] * first[2],
    then[0] * first[1] + then[1] * first[3],
    then[2] * first[0] + then[3] * first[2],
    then[2] * first[1] + then[3] * first[3],
  ];
}

/** Driven over driving speed at a rotation of the driving side. */
export function ratioAt(m: Matrix, rotation: number): number {
  const x = m[0] * Math.cos(rotation) + m[1] * Math.sin(rotation);
  const y = m[2] * Math.cos(rotation) + m[3] * Math.sin(rotation);
  return (m[0] * m[3] - m[1] * m[2]) / (x * x + y * y);
}

/** The angle of the one joint that a chain amounts to. Written with half the angle, so
 *  that nothing is lost where next to nothing is left. */
export function residualAngle(m: Matrix): number {
  const q = length(m[0] + m[3], m[2] - m[1]);
  const r = length(m[0] - m[3], m[2] + m[1]);
  return 2 * Math.asin(Math.sqrt(r / (q + r)));
}

function length(x: number, y: number): number {
  return Math.sqrt(x * x + y * y);
}

/** (fastest - slowest) / driving speed. */
export function fluctuation(b: number): number {
  return Math.tan(b) * Math.sin(b);
}

/** Driven acceleration at a rotation. */
export function accelerationAt(b: number, rotation: number): number {
  const s2 = Math.sin(b) ** 2;
  return (-Math.cos(b) * s2 * Math.sin(2 * rotation)) / (1 - s2 * Math.cos(rotation) ** 2) ** 2;
}

/** The rotation of greatest slowing down, exact. Where the derivative of the acceleration is
 *  zero, x = cos 2t solves s² x² + (2 - s²) x - 2 s² = 0 with s = sin b. */
export function peakRotation(b: number): number {
  const s2 = Math.sin(b) ** 2;
  const p = 2 - s2;
  return Math.acos((4 * s2) / (p + Math.sqrt(p * p + 8 * s2 * s2))) / 2;
}

/** The greatest driven acceleration. */
export function peakAcceleration(b: number): number {
  return Math.abs(accelerationAt(b, peakRotation(b)));
}
