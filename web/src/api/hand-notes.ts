import { call } from './client';

/** How the house, or whoever is in (`own`), does a technique. */
export interface HandNote {
  technique: string;
  own: boolean;
  text: string;
  written_at: string;
}
export const LONGEST_NOTE = 600;

export const handNotes = (signal?: AbortSignal) =>
  call<{ notes: HandNote[] }>('GET', 'hand-notes', undefined, signal);

/** An empty text takes it away. */
export const writeHandNote = (technique: string, text: string, own: boolean) =>
  call<{ notes: HandNote[] }>('PUT', `hand-notes/${technique}`, { text, own });
