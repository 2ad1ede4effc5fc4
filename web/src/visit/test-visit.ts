import type { Visit } from '../api/types';
import type { SavedVisit } from '../api/visits';
import { newVisit, withReading } from './head';

/** What the tests of an open visit start from: a new visit, stored as the server gives it, and read with some white (%). */
export const visit = newVisit('A. B.', '2026-03-09');

export const saved = (document: Visit, seq = 1): SavedVisit => ({
  id: 'v1',
  seq,
  entry: 'of-another-device',
  client: '',
  date: '',
  opened_at: '',
  changed_at: '',
  document,
});

export const read = (white: number): Visit => ({
  ...visit,
  head: withReading(visit.head, 'crown', 'regrowth', { white }),
});
