import type { Problem } from '../api/types';

/** Whether the salon's server answers, set by every call of the API, and what it finds wrong with its store. */
export const server = $state<{ away: boolean; ailing?: Problem }>({ away: false });

export function heard(): void {
  server.away = false;
}

export function lost(): void {
  server.away = true;
}

/** Comes once the server is not known to be silent. */
function spoken(): Promise<void> {
  return new Promise((resolve) => {
    const end = $effect.root(() => {
      $effect(() => {
        if (server.away) return;
        resolve();
        queueMicrotask(() => end());
      });
    });
  });
}

/** A part of the page that is asked for again whenever the server speaks, until it comes. */
export async function insist<T>(part: () => Promise<T>): Promise<T> {
  for (;;) {
    try {
      return await part();
    } catch {
      lost();
      await spoken();
    }
  }
}
