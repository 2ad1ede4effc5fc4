import fc from 'fast-check';
import { expect, it } from 'vitest';
import { sameDocument } from './drafts';

/** The same, the keys of every object in this order. */
function ordered(value: unknown, order: (keys: string[]) => string[]): unknown {
  if (Array.isArray(value)) return value.map((one) => ordered(one, order));
  if (!value || typeof value !== 'object') return value;
  const held = new Map(Object.entries(value));
  return Object.fromEntries(order([...held.keys()]).map((key) => [key, ordered(held.get(key), order)]));
}

it('two documents are the same when their JSON says the same, in any order', () => {
  const sorted = (value: unknown) => JSON.stringify(ordered(value, (keys) => keys.sort()));
  const json = fc.jsonValue({ maxDepth: 3 }).map((value) => JSON.parse(JSON.stringify(value)) as unknown);
  fc.assert(
    fc.property(json, (value) =>
      sameDocument(
        value,
        ordered(value, (keys) => keys.reverse()),
      ),
    ),
  );
  fc.assert(
    fc.property(json, json, (a, b) => {
      expect(sameDocument(a, b)).toBe(sorted(a) === sorted(b));
    }),
  );
  expect(sameDocument({ a: 1, b: undefined }, { a: 1 })).toBe(true);
  expect(sameDocument([1], { 0: 1 })).toBe(false);
});
