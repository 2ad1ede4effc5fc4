import type { en } from './en';

type Widen<T> = T extends (...args: infer A) => string ? (...args: A) => string : string;

export type Key = keyof typeof en;

/** A complete dictionary has every key of the English one, with the same parameters. */
export type Dictionary = { [K in Key]: Widen<(typeof en)[K]> };

export type Args<K extends Key> = (typeof en)[K] extends (...args: infer A) => string ? A : [];

/** One part of the English dictionary in another language: every key, with the same parameters. */
export type Part<T> = { [K in keyof T]: Widen<T[K]> };
