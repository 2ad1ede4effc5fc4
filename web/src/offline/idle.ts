/** How often is looked, ms: a lock that comes up to so much late. */
const LOOK = 5000;

/**
 * Calls `left` once nobody has touched this page for `minutes`; while it is `held` (a clock runs and hands are full) it
 * counts as touched. Returns what ends it.
 */
export function watchIdle(minutes: number, left: () => void, held: () => boolean = () => false): () => void {
  const abort = new AbortController();
  let last = Date.now();
  const used = () => (last = Date.now());
  for (const event of ['pointerdown', 'keydown', 'wheel', 'touchmove'])
    addEventListener(event, used, { signal: abort.signal, passive: true, capture: true });
  const look = () => {
    if (held()) used();
    if (Date.now() - last < minutes * 60_000) return;
    end();
    left();
  };
  const timer = setInterval(look, LOOK);
  // A device that slept has not looked meanwhile.
  document.addEventListener('visibilitychange', look, { signal: abort.signal });
  function end() {
    clearInterval(timer);
    abort.abort();
  }
  return end;
}
