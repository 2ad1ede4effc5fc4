import type { Problem } from '../api/types';

/** Whether the salon's server answers, set by every call of the API, and what it finds wrong with its store. */
export const server = $state<{ away: boolean; ailing?: Problem }>({ away: false });

export function heard(): void {
  server.away = false;
}

export function lost(): void {
  server.away = true;
}
