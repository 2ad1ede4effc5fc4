/** Whether the salon's server answers; set by every call of the API. */
export const server = $state<{ away: boolean }>({ away: false });

export function heard(): void {
  server.away = false;
}

export function lost(): void {
  server.away = true;
}
