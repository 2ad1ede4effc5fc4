import { call } from './client';
import type { components } from './schema';

type Schemas = components['schemas'];
export type ShelfPaper = Schemas['Shelf'];
export type ShelfRange = Schemas['Range'];
export type ShelfProduct = Schemas['Product'];
export type ShelfLine = Schemas['ShelfSummary'];
export type SavedShelf = Schemas['SavedShelf'];
export type ReadTable = Schemas['ReadTable'];
export type TableColumn = Schemas['TableColumn'];
export type ShelfVersion = Schemas['ShelfVersion'];

const at = (id: string, more = '') => `shelves/${encodeURIComponent(id)}${more}`;

export const listShelves = (signal?: AbortSignal) =>
  call<{ shelves: ShelfLine[] }>('GET', 'shelves', undefined, signal);

export const openShelf = (id: string, signal?: AbortSignal) =>
  call<SavedShelf>('GET', at(id), undefined, signal);

/** `entry` names what is saved: handed in again under the same id it is stored once and answered as the first time. */
export const createShelf = (document: ShelfPaper, entry: string) =>
  call<SavedShelf>('POST', `shelves?entry=${entry}`, document);

export const saveShelf = (id: string, seq: number, document: ShelfPaper, entry: string) =>
  call<SavedShelf>('PUT', at(id, `?entry=${entry}`), document, undefined, { 'if-match': `"${seq}"` });

export const setEmpty = (id: string, product: string, empty: boolean, entry: string) =>
  call<SavedShelf>('POST', at(id, `/tubes?entry=${entry}`), { product, empty });

/** New visits plan on it. */
export const chooseShelf = (shelf: string) =>
  call<{ shelves: ShelfLine[] }>('POST', 'shelf/choose', { shelf });

export const shelfHistory = (id: string, signal?: AbortSignal) =>
  call<{ versions: ShelfVersion[] }>('GET', at(id, '/history'), undefined, signal);

/** Classes of products as they are commonly used; no maker's. */
export const shelfClasses = (signal?: AbortSignal) =>
  call<{ document: ShelfPaper }>('GET', 'shelf/classes', undefined, signal);

/** What is understood of a pasted list; nothing is kept. */
export const readTable = (
  asked: { document: ShelfPaper; text: string; range: string; package_g?: number; columns?: TableColumn[] },
  signal?: AbortSignal,
) => call<ReadTable>('POST', 'shelf/read', asked, signal);

/** A range as CSV; "" = what has no range. */
export const shelfTable = (id: string, range: string) =>
  call<{ csv: string }>('GET', at(id, `/table?range=${encodeURIComponent(range)}`));
