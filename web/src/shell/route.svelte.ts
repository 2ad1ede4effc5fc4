/** Steps of a visit in their order; the words are the API's and the engine's. */
export const steps = [
  'gate',
  'assess',
  'aim',
  'plan',
  'agree',
  'weigh',
  'clock',
  'beside',
  'record',
  'aftercare',
  'incident',
] as const;
export type Step = (typeof steps)[number];

/** Those that stand in the rail; what went wrong is written from where it was stopped. */
export const inRail: readonly Step[] = steps.filter((step) => step !== 'incident');
/** What is left to open of a visit that was handed in. */
export const afterwards: readonly Step[] = ['record', 'aftercare', 'beside', 'incident'];

export type Route =
  | { page: 'home' }
  | { page: 'kit' }
  | { page: 'people' }
  /** On a device that an owner lets in. */
  | { page: 'pair'; code: string }
  | { page: 'diary'; day?: string }
  | { page: 'clients' }
  | { page: 'stock'; report?: true }
  | { page: 'client'; id: string }
  | { page: 'shelf'; id?: string }
  | { page: 'learned'; id?: string }
  | { page: 'visit'; id: string; step: Step }
  | { page: 'unknown'; hash: string };

/** Reads a location hash: "", "#/kit", "#/shelf", "#/shelf/ID", "#/diary/DAY", "#/visits/ID/STEP". */
export function parseRoute(hash: string): Route {
  const parts = hash.replace(/^#\/?/, '').split('/').filter(Boolean);
  if (parts.length === 0) return { page: 'home' };
  if (parts[0] === 'kit' && parts.length === 1) return { page: 'kit' };
  if (parts[0] === 'people' && parts.length === 1) return { page: 'people' };
  if (parts[0] === 'pair' && parts[1] && parts.length === 2) return { page: 'pair', code: parts[1] };
  if (parts[0] === 'stock' && parts.length === 1) return { page: 'stock' };
  if (parts[0] === 'stock' && parts[1] === 'report' && parts.length === 2)
    return { page: 'stock', report: true };
  if (parts[0] === 'diary' && parts.length <= 2 && /^(\d{4}-\d\d-\d\d)?$/.test(parts[1] ?? ''))
    return { page: 'diary', ...(parts[1] && { day: parts[1] }) };
  if (parts[0] === 'clients' && parts.length <= 2)
    return parts[1] ? { page: 'client', id: decodeURIComponent(parts[1]) } : { page: 'clients' };
  if (parts[0] === 'shelf' && parts.length <= 2)
    return { page: 'shelf', ...(parts[1] && { id: decodeURIComponent(parts[1]) }) };
  if (parts[0] === 'learned' && parts.length <= 2)
    return { page: 'learned', ...(parts[1] && { id: decodeURIComponent(parts[1]) }) };
  if (parts[0] === 'visits' && parts[1] && parts.length <= 3) {
    const step = (parts[2] ?? 'assess') as Step;
    if (steps.includes(step)) return { page: 'visit', id: decodeURIComponent(parts[1]), step };
  }
  return { page: 'unknown', hash };
}

export function visitHref(id: string, step: Step): string {
  return `#/visits/${encodeURIComponent(id)}/${step}`;
}

/** A day of the diary; without one, today. */
export const diaryHref = (day = '') => (day ? `#/diary/${day}` : '#/diary');
export const clientHref = (id: string) => `#/clients/${encodeURIComponent(id)}`;
/** One shelf, or all of them. */
export const shelfHref = (id = ''): string => (id ? `#/shelf/${encodeURIComponent(id)}` : '#/shelf');

/** What results taught: of the salon, or of one client. */
export const learnedHref = (id = ''): string => (id ? `#/learned/${encodeURIComponent(id)}` : '#/learned');

let current = $state<Route>(parseRoute(location.hash));
addEventListener('hashchange', () => {
  current = parseRoute(location.hash);
});

export function route(): Route {
  return current;
}
