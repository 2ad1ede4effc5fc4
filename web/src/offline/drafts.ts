import type { Visit } from '../api/types';
import type { HandIn, NewFact } from '../api/facts';
import { run } from '../back/back';

/** A document that the server has not stored yet, and the journal entry it was changed from. */
export interface Draft {
  seq: number;
  document: Visit;
  /** Of a running visit: what it was changed from, so that marks of two devices can be told apart. */
  base?: Visit;
  /** The server has it: kept because bowls and times are on a head, to be opened without it. Nothing to hand in. */
  clean?: true;
  /** The id under which the document is saved, and those of earlier ones whose answers did not come. */
  entry?: string;
  handed?: string[];
}

/** True when both say the same, in whatever order they say it. */
export function sameDocument(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b || Array.isArray(a) !== Array.isArray(b))
    return false;
  const [left, right] = [a, b].map((one) => Object.entries(one).filter(([, value]) => value !== undefined));
  const there = new Map(right);
  return (
    left!.length === there.size &&
    left!.every(([key, value]) => there.has(key) && sameDocument(value, there.get(key)))
  );
}

/** Where the open visit leaves its unsaved document. */
export interface Drafts {
  keep(id: string, draft: Draft): Promise<boolean>;
  read(id: string): Promise<Draft | undefined>;
  drop(id: string): Promise<void>;
}

/** Facts of a visit that were not handed over yet, beside its draft. */
export const waiting = {
  keep: (id: string, facts: readonly NewFact[]): Promise<unknown> =>
    facts.length
      ? run('keepDraft', { id: `facts of ${id}`, draft: facts })
      : run('dropDraft', `facts of ${id}`),
  read: (id: string) => run('readDraft', `facts of ${id}`) as Promise<readonly NewFact[] | undefined>,
};

/** A hand-in that has no answer yet; the entry number is that of the document once it is stored. */
export type EndingAsked = Omit<HandIn, 'seq'> & { facts: NewFact[] };

/** The end of a visit that was asked for, beside its draft. */
export const endings = {
  keep: (id: string, asked: EndingAsked): Promise<boolean> =>
    run('keepDraft', { id: `end of ${id}`, draft: asked }),
  read: (id: string) => run('readDraft', `end of ${id}`) as Promise<EndingAsked | undefined>,
  drop: (id: string): Promise<void> => run('dropDraft', `end of ${id}`),
};

/** Unsaved documents in the browser's store; gone once the server has them. */
export const drafts: Drafts = {
  keep: (id, draft) => run('keepDraft', { id, draft }),
  read: (id) => run('readDraft', id) as Promise<Draft | undefined>,
  drop: (id) => run('dropDraft', id),
};
