/** The range of a stepped number. `min` is on the grid; the grid is min + k * step. */
export interface Steps {
  min: number;
  max: number;
  step: number;
}

const tidy = (value: number) => Math.round(value * 1e6) / 1e6;

/** Nearest value of the grid inside [min, max]. NaN and missing values become min. */
export function snap(value: number, { min, max, step }: Steps): number {
  if (!Number.isFinite(value)) return value === Infinity ? max : min;
  const cells = Math.floor((max - min) / step + 1e-9);
  const cell = Math.min(Math.max(Math.round((value - min) / step), 0), cells);
  return tidy(min + cell * step);
}

/** The grid value `count` steps away, starting from the nearest grid line in that direction. */
export function stepBy(value: number, count: number, steps: Steps): number {
  const at = (value - steps.min) / steps.step;
  const from = count > 0 ? Math.floor(at + 1e-9) : Math.ceil(at - 1e-9);
  return snap(steps.min + (from + count) * steps.step, steps);
}

/** How many steps one tick of a held button makes: single at first, then coarse. */
export function holdStride(tick: number): number {
  return tick < 8 ? 1 : tick < 24 ? 2 : 5;
}

/** Number typed or pasted with a decimal point or comma; undefined when it is not a number. */
export function parseNumber(text: string): number | undefined {
  const plain = text
    .trim()
    .replace(/\u2212/g, '-')
    .replace(',', '.');
  if (!/^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain)) return undefined;
  return Number(plain);
}
