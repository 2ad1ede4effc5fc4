/** Steps of a visit in their order; the words are the API's and the engine's. */
export const steps = ['gate', 'assess', 'aim', 'plan', 'agree', 'weigh', 'clock', 'record'] as const;
export type Step = (typeof steps)[number];

/** Steps that exist so far. */
export const open: readonly Step[] = ['gate', 'assess', 'aim', 'plan', 'weigh', 'clock'];

export type Route =
  | { page: 'home' }
  | { page: 'kit' }
  | { page: 'people' }
  | { page: 'visit'; id: string; step: Step }
  | { page: 'unknown'; hash: string };

/** Reads a location hash: "", "#/kit", "#/visits/ID/STEP". */
export function parseRoute(hash: string): Route {
  const parts = hash.replace(/^#\/?/, '').split('/').filter(Boolean);
  if (parts.length === 0) return { page: 'home' };
  if (parts[0] === 'kit' && parts.length === 1) return { page: 'kit' };
  if (parts[0] === 'people' && parts.length === 1) return { page: 'people' };
  if (parts[0] === 'visits' && parts[1] && parts.length <= 3) {
    const step = (parts[2] ?? 'assess') as Step;
    if (open.includes(step)) return { page: 'visit', id: decodeURIComponent(parts[1]), step };
  }
  return { page: 'unknown', hash };
}

export function visitHref(id: string, step: Step): string {
  return `#/visits/${encodeURIComponent(id)}/${step}`;
}

let current = $state<Route>(parseRoute(location.hash));
addEventListener('hashchange', () => {
  current = parseRoute(location.hash);
});

export function route(): Route {
  return current;
}
