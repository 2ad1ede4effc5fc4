import { call } from './client';
import type {
  AimAnswer,
  AssessAnswer,
  FadeAnswer,
  GrowAnswer,
  LevelsAnswer,
  PlanAnswer,
  ReachAnswer,
  RemadeAnswer,
  Replanned,
  ReviewAnswer,
  ShelfAnswer,
  Visit,
} from './types';

/** A line of the list of visits. */
export interface VisitLine {
  id: string;
  /** The newest entry of its journal. */
  seq: number;
  client: string;
  date: string;
  opened_at: string;
  changed_at: string;
  /** Whose visit it is; absent = nobody's yet. */
  person?: string;
  /** Absent = it is still a draft. */
  handed_in_at?: string;
}

/** A visit as the salon keeps it. `seq` goes back with each change, so that no device overwrites another unseen. */
export interface SavedVisit extends VisitLine {
  /** The id that the device which saved this document gave to it. */
  entry: string;
  document: Visit;
}

/** Which visits: part of a client's name, and `next` of the page before. */
export interface VisitsAsked {
  find?: string;
  cursor?: string;
  limit?: number;
}

/** Newest change first; without `next` it is the last page. */
export function listVisits(asked: VisitsAsked = {}, signal?: AbortSignal) {
  const query = new URLSearchParams();
  for (const [key, value] of Object.entries(asked)) if (value) query.set(key, String(value));
  const path = query.size ? `visits?${query}` : 'visits';
  return call<{ visits: VisitLine[]; next?: string }>('GET', path, undefined, signal);
}

/** `entry` names what is saved: handed in again under the same id it is stored once and answered as the first time. */
export const createVisit = (visit: Visit, entry: string, person?: string) =>
  call<SavedVisit>('POST', `visits?entry=${entry}${person ? `&person=${person}` : ''}`, visit);

export const openVisit = (id: string, signal?: AbortSignal) =>
  call<SavedVisit>('GET', `visits/${encodeURIComponent(id)}`, undefined, signal);

export const saveVisit = (id: string, seq: number, visit: Visit, entry: string) =>
  call<SavedVisit>('PUT', `visits/${encodeURIComponent(id)}?entry=${entry}`, visit, undefined, {
    'if-match': `"${seq}"`,
  });

export const assess = (visit: Visit, signal?: AbortSignal) =>
  call<AssessAnswer>('POST', 'assess', visit, signal);

export const aim = (visit: Visit, signal?: AbortSignal) => call<AimAnswer>('POST', 'aim', visit, signal);

/** What each zone can become today, cell by cell of the level × tone map; wishes are not read. */
export const reach = (visit: Visit, signal?: AbortSignal) =>
  call<ReachAnswer>('POST', 'reach', visit, signal);

/** Searches bowls; can take seconds. */
export const plan = (visit: Visit, signal?: AbortSignal) => call<PlanAnswer>('POST', 'plan', visit, signal);

/** What the visit's own bowls do: nothing is searched. */
export const whatIf = (visit: Visit, signal?: AbortSignal) =>
  call<PlanAnswer>('POST', 'what-if', visit, signal);

/** The clock of a visit that has begun, from its marks; milliseconds. */
export const replan = (visit: Visit, signal?: AbortSignal) =>
  call<Replanned>('POST', 'replan', visit, signal);

/** The visit's own bowls beside the best of the shelf; searches, can take seconds. */
export const review = (visit: Visit, signal?: AbortSignal) =>
  call<ReviewAnswer>('POST', 'review', visit, signal);

/** The own bowls' results from another range. */
export const convert = (visit: Visit, range: string, signal?: AbortSignal) =>
  call<RemadeAnswer>('POST', `convert?range=${encodeURIComponent(range)}`, visit, signal);

/** The own bowls without a product that ran out. */
export const substitute = (visit: Visit, product: string, signal?: AbortSignal) =>
  call<RemadeAnswer>('POST', `substitute?product=${encodeURIComponent(product)}`, visit, signal);

export const levels = (signal?: AbortSignal) => call<LevelsAnswer>('GET', 'levels', undefined, signal);

/** How colour fades and hair grows in the weeks after the visit's own bowls. */
export const fade = (visit: Visit, signal?: AbortSignal) => call<FadeAnswer>('POST', 'fade', visit, signal);
export const grow = (visit: Visit, signal?: AbortSignal) => call<GrowAnswer>('POST', 'grow', visit, signal);

/** By the name that a visit gives it; "" = the one new visits plan on. */
export const shelf = (name = '', signal?: AbortSignal) =>
  call<ShelfAnswer>('GET', name ? `shelf?name=${encodeURIComponent(name)}` : 'shelf', undefined, signal);
