import { call } from './client';
import type { components } from './schema';

type Schemas = components['schemas'];
export type StockView = Schemas['StockView'];
export type StockItem = Schemas['StockItem'];
export type StockMove = Schemas['StockMove'];
export type StockWish = Schemas['StockWish'];

const asked = (params: Record<string, string | undefined>) => {
  const set = Object.entries(params).filter((pair): pair is [string, string] => Boolean(pair[1]));
  return set.length ? `?${new URLSearchParams(set).toString()}` : '';
};

/** What stands on the shelf that is in use, or on another. */
export const stock = (shelf = '', signal?: AbortSignal) =>
  call<StockView>('GET', `stock${asked({ shelf })}`, undefined, signal);

/** All of it or nothing. `entry` names it: handed in again under the same id it is kept once. */
export const moveStock = (shelf: string, moves: readonly StockWish[], entry: string) =>
  call<{ moves: StockMove[] }>('POST', `stock/moves${asked({ shelf, entry })}`, { moves });

/** Newest first. */
export const stockMoves = (
  shelf: string,
  of: { product?: string; visit?: string; cursor?: string; limit?: string } = {},
  signal?: AbortSignal,
) =>
  call<{ moves: StockMove[]; next?: string }>(
    'GET',
    `stock/moves${asked({ shelf, ...of })}`,
    undefined,
    signal,
  );

export type StockReport = Schemas['StockReport'];
export type StockLine = Schemas['StockLine'];
export type PriceRules = Schemas['PriceRules'];
export type PriceAsked = Schemas['PriceAsked'];
export type Price = Schemas['Price'];

/** Of the days from `from` to today; civil dates. */
export const stockReport = (from: string, signal?: AbortSignal) =>
  call<StockReport>('GET', `stock/report${asked({ from })}`, undefined, signal);

/** What is there, or every movement. */
export const stockCsv = (what: 'stock' | 'moves') =>
  call<{ csv: string }>('GET', `stock/table${asked({ moves: what === 'moves' ? 'all' : undefined })}`);

/** What is understood of a pasted list; nothing is kept. */
export const readStock = (text: string, what: 'receive' | 'count', signal?: AbortSignal) =>
  call<{ lines: StockLine[] }>('POST', 'stock/table', { text, what }, signal);

export const prices = (signal?: AbortSignal) =>
  call<{ rules?: PriceRules }>('GET', 'prices', undefined, signal);
export const setPrices = (rules: PriceRules) => call<{ rules?: PriceRules }>('PUT', 'prices', rules);
/** What a visit costs by the house's rules. */
export const priceOf = (asked: PriceAsked, signal?: AbortSignal) =>
  call<Price>('POST', 'price', asked, signal);
