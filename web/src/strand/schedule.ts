/** Spreads drawing on the page over frames, so that one frame never carries every strip. */

const BUDGET_MS = 4;
const waiting = new Map<object, () => void>();
const listeners: (() => void)[] = [];
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
  else told();
}
function told(): void {
  listeners.splice(0).forEach((tell) => tell());
}

/** Ends once nothing is left to draw. */
export const drawnLater = (): Promise<void> =>
  new Promise((tell) => {
    listeners.push(tell);
    if (waiting.size === 0) told();
  });

/** Draws for `owner` in a coming frame; a later call by the same owner replaces the earlier one. */
export function drawLater(owner: object, draw: () => void): void {
  waiting.set(owner, draw);
  if (asked === 0) asked = requestAnimationFrame(run);
}

/** Drops what `owner` still had to draw. */
export function dropLater(owner: object): void {
  waiting.delete(owner);
  if (waiting.size === 0) told();
}
