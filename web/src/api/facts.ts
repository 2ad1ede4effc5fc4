import { call } from './client';
import type { components, operations } from './schema';
import type { SavedVisit } from './visits';

/** A fact as it is told, and as the salon keeps it: one body per kind. */
export type NewFact = components['schemas']['NewFact'];
export type Fact = components['schemas']['Fact'];
export type FactKind = NewFact['kind'];
export type Told<K extends Fact['kind']> = Extract<Fact, { kind: K }>;
export type Body<K extends FactKind> = Extract<NewFact, { kind: K }>['body'];
export type ClientLine = components['schemas']['ClientLine'];
export type ClientRecord = operations['openClient']['responses']['200']['content']['application/json'];
export type HandIn = operations['handInVisit']['requestBody']['content']['application/json'];

const visit = (id: string) => `visits/${encodeURIComponent(id)}`;

/** Told again under the same id it is kept once. */
export const tellFact = (id: string, fact: NewFact) => call<Fact>('POST', `${visit(id)}/facts`, fact);

/** All of a visit, in order. */
export async function factsOf(id: string, signal?: AbortSignal): Promise<Fact[]> {
  const out: Fact[] = [];
  let cursor = '';
  do {
    const path: string = `${visit(id)}/facts${cursor && `?cursor=${cursor}`}`;
    const page = await call<{ facts: Fact[]; next?: string }>('GET', path, undefined, signal);
    out.push(...page.facts);
    cursor = page.next ?? '';
  } while (cursor);
  return out;
}

/** Ends the visit; under the same entry once, however often it is asked. */
export const handIn = (id: string, asked: HandIn) => call<SavedVisit>('POST', `${visit(id)}/hand-in`, asked);

/** All that is kept of a client, opened. */
export type Everything = components['schemas']['Everything'];
export const everythingOf = (id: string) =>
  call<Everything>('GET', `clients/${encodeURIComponent(id)}/everything`);
/** For good; the name as it stands there says that the right one is meant. */
export const eraseClient = (id: string, name: string) =>
  call('POST', `clients/${encodeURIComponent(id)}/erase`, { name });

/** Whose name contains `find`; the newest visit first. */
export const findClients = (find: string, limit: number, signal?: AbortSignal) =>
  call<{ clients: ClientLine[] }>(
    'GET',
    `clients?limit=${limit}&find=${encodeURIComponent(find)}`,
    undefined,
    signal,
  ).then((answer) => answer.clients);

export const openClient = (id: string, signal?: AbortSignal) =>
  call<ClientRecord>('GET', `clients/${encodeURIComponent(id)}`, undefined, signal);
