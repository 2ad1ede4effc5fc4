/** Repeatable random numbers: the same seed and place always give the same hair. */

/** PCG hash of a 32-bit whole number; the shader uses the same arithmetic. */
export function pcg(value: number): number {
  const state = (Math.imul(value >>> 0, 747796405) + 2891336453) >>> 0;
  const word = Math.imul(((state >>> ((state >>> 28) + 4)) ^ state) >>> 0, 277803737) >>> 0;
  return ((word >>> 22) ^ word) >>> 0;
}

/** A number in [0, 1) for place `a` on channel `b`. */
export const rnd = (seed: number, a: number, b: number): number =>
  pcg((pcg((pcg(seed >>> 0) + a) >>> 0) + b) >>> 0) / 4294967296;

/** A seed from a text such as an area's id (FNV-1a). */
export function seedFrom(text: string): number {
  let h = 2166136261;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 16777619) >>> 0;
  return h;
}
