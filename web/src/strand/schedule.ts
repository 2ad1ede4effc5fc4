/** Spreads drawing on the page over frames, so that one frame never carries every strip. */

const BUDGET_MS = 4;
const waiting = new Map<object, () => void>();
let asked = 0;

function run(): void {
  asked = 0;
  const start = performance.now();
  for (const [owner, draw] of waiting) {
    waiting.delete(owner);
    draw();
    if (performance.now() - start > BUDGET_MS) break;
  }
  if (waiting.size > 0) asked = requestAnimationFrame(run);
}

/** Draws for `owner` in a coming frame; a later call by the same owner replaces the earlier one. */
export function drawLater(owner: object, draw: () => void): void {
  waiting.set(owner, draw);
  if (asked === 0) asked = requestAnimationFrame(run);
}

/** Drops what `owner` still had to draw. */
export function dropLater(owner: object): void {
  waiting.delete(owner);
}
