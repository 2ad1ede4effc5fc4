import type { Body, FactKind, NewFact } from '../api/facts';
import { newId } from '../api/id';

/** A fact that happens now. */
export const happened = <K extends FactKind>(kind: K, body: Body<K>): NewFact =>
  ({ id: newId(), kind, made_at: new Date().toISOString(), body }) as NewFact;
