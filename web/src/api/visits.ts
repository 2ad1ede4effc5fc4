import { call } from './client';
import type { AimAnswer, AssessAnswer, LevelsAnswer, PlanAnswer, ShelfAnswer, Visit } from './types';

/** A line of the list of visits. */
export interface VisitLine {
  id: string;
  client: string;
  date: string;
  skin_test: string;
  updated_at: string;
}

/** A stored visit; `revision` goes back with each change so that two devices never overwrite each other unseen. */
export interface StoredVisit {
  id: string;
  revision: number;
  visit: Visit;
}

export const listVisits = (signal?: AbortSignal) =>
  call<{ visits: VisitLine[] }>('GET', 'visits', undefined, signal);

export const createVisit = (visit: Visit) => call<StoredVisit>('POST', 'visits', visit);

export const openVisit = (id: string, signal?: AbortSignal) =>
  call<StoredVisit>('GET', `visits/${encodeURIComponent(id)}`, undefined, signal);

export const storeVisit = (id: string, revision: number, visit: Visit) =>
  call<StoredVisit>('PUT', `visits/${encodeURIComponent(id)}`, { revision, visit });

export const assess = (visit: Visit, signal?: AbortSignal) =>
  call<AssessAnswer>('POST', 'assess', visit, signal);

export const aim = (visit: Visit, signal?: AbortSignal) => call<AimAnswer>('POST', 'aim', visit, signal);

/** Searches bowls; can take seconds. */
export const plan = (visit: Visit, signal?: AbortSignal) => call<PlanAnswer>('POST', 'plan', visit, signal);

/** What the visit's own bowls do: nothing is searched. */
export const whatIf = (visit: Visit, signal?: AbortSignal) =>
  call<PlanAnswer>('POST', 'what-if', visit, signal);

export const levels = (signal?: AbortSignal) => call<LevelsAnswer>('GET', 'levels', undefined, signal);

export const shelf = (signal?: AbortSignal) => call<ShelfAnswer>('GET', 'shelf', undefined, signal);
