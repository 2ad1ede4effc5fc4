/** How much of each fibre one sees in each span: rows × spans, in points of a regular grid. */
export interface Weights {
  readonly spans: number;
  /** Points where the fibre lies uppermost. */
  readonly seen: Float32Array;
  /** The same, each point weighted by how light the fibre is drawn there (1 = its own colour). */
  readonly light: Float32Array;
}

/** Every fibre is seen alike: what the plain drawing assumes. */
export function evenWeights(rows: number, spans: number): Weights {
  return {
    spans,
    seen: new Float32Array(rows * spans).fill(1),
    light: new Float32Array(rows * spans).fill(1),
  };
}

/**
 * Counts a grid of RGBA bytes as the shader tells it: fibre = R + 256 G, light = B / 127.5, A = 255 where there is hair.
 * `ends` are the ends of the spans in grid columns.
 */
export function countWeights(
  grid: Uint8Array,
  columns: number,
  rows: number,
  ends: readonly number[],
): Weights {
  const spans = ends.length;
  const weights: Weights = {
    spans,
    seen: new Float32Array(rows * spans),
    light: new Float32Array(rows * spans),
  };
  const spanOf = Array.from({ length: columns }, (_, x) => {
    const s = ends.findIndex((end) => x + 0.5 < end);
    return s === -1 ? spans - 1 : s;
  });
  for (let i = 0; i < grid.length; i += 4) {
    if (grid[i + 3] !== 255) continue;
    const row = (grid[i] ?? 0) + 256 * (grid[i + 1] ?? 0);
    if (row >= rows) continue;
    const at = row * spans + (spanOf[(i / 4) % columns] ?? 0);
    weights.seen[at] = (weights.seen[at] ?? 0) + 1;
    weights.light[at] = (weights.light[at] ?? 0) + (grid[i + 2] ?? 0) / 127.5;
  }
  return weights;
}
