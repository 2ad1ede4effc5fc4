import { Away, call, Refused } from '../api/client';
import { server } from './server.svelte';

/** How often a page that is seen asks; a store that ails refuses saves by itself meanwhile. */
export const healthEveryMs = 60_000;
/** How often while the server is silent, ms (by choice). */
export const awayEveryMs = 3000;

async function ask(signal: AbortSignal): Promise<void> {
  try {
    await call('GET', 'health', undefined, signal);
    server.ailing = undefined;
  } catch (error) {
    if (error instanceof Refused)
      server.ailing = error.problems[0] ?? { code: 'internal', path: '', params: {} };
    // Away is told by itself; whether the store is well is not known then.
    else if (!(error instanceof Away) && !signal.aborted) throw error;
  }
}

/** Asks the server for its health, `now` unless told otherwise, again and again, and when the page is seen again. Returns what ends it. */
export function watchHealth(every = healthEveryMs, now = true): () => void {
  const abort = new AbortController();
  const { signal } = abort;
  const look = () => {
    if (document.visibilityState !== 'hidden') void ask(signal);
  };
  if (now) look();
  const timer = setInterval(look, every);
  document.addEventListener('visibilitychange', look, { signal });
  return () => {
    clearInterval(timer);
    abort.abort();
  };
}
