import type { Visit } from '../api/types';
import { run } from '../back/back';

/** A document that the server has not stored yet, and the journal entry it was changed from. */
export interface Draft {
  seq: number;
  document: Visit;
}

/** Where the open visit leaves its unsaved document. */
export interface Drafts {
  keep(id: string, draft: Draft): Promise<boolean>;
  read(id: string): Promise<Draft | undefined>;
  drop(id: string): Promise<void>;
}

/** Unsaved documents in the browser's store; gone once the server has them. */
export const drafts: Drafts = {
  keep: (id, draft) => run('keepDraft', { id, draft }),
  read: (id) => run('readDraft', id),
  drop: (id) => run('dropDraft', id),
};
