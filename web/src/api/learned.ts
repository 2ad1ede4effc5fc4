import { call } from './client';
import type { components } from './schema';

type Schemas = components['schemas'];
export type Lesson = Schemas['Lesson'];
export type LearnedResult = Schemas['LearnedResult'];
export type LearnedHere = Schemas['LearnedHere'];
export type LearnedWord = Lesson['words'][number];
export type SwatchesRead = Schemas['SwatchesRead'];

/** What results taught; with `person` the client's own beside what is shared. */
export const learned = (person = '', signal?: AbortSignal) =>
  call<Lesson>('GET', person ? `learned?person=${encodeURIComponent(person)}` : 'learned', undefined, signal);

/** A result out of what is learned from, or in again. */
export const setWithout = (result: string, without: boolean) =>
  call<Lesson>('POST', `learned/${encodeURIComponent(result)}`, { without });

/** Swatches of a range from an instrument's file or a typed table; nothing is kept. */
export const readSwatches = (asked: { document: Schemas['Shelf']; range: string; text: string }) =>
  call<SwatchesRead>('POST', 'measure/swatches', asked);

export type CardRead = Schemas['CardRead'];
/** A strand in the window of the printed card, from a JPEG in base64; `card` is an instrument's file of its patches. */
export const readCardPhoto = (asked: { photo: string; card?: string }) =>
  call<CardRead>('POST', 'measure/photo', asked);
