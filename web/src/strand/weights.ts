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

/** What a coarse relief tells: for each point of the grid fibre + 1 (0 = no hair) and its light, row by row. */
export interface Grid {
  readonly columns: number;
  readonly fibre: Uint16Array;
  readonly light: Uint16Array;
}

/** Counts a grid of `rows` fibres; `ends` are the ends of the spans in grid columns, `full` the light of its own colour. */
export function countWeights(grid: Grid, rows: number, ends: readonly number[], full: number): Weights {
  const { columns, fibre, light } = grid;
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
  for (let i = 0; i < fibre.length; i++) {
    const row = (fibre[i] ?? 0) - 1;
    if (row < 0 || row >= rows) continue;
    const at = row * spans + (spanOf[i % columns] ?? 0);
    weights.seen[at] = (weights.seen[at] ?? 0) + 1;
    weights.light[at] = (weights.light[at] ?? 0) + (light[i] ?? 0) / full;
  }
  return weights;
}
