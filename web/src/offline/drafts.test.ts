import fc from 'fast-check';
import { expect, it } from 'vitest';
import { sameDocument } from './drafts';

it('two documents are the same when their JSON says the same, in any order', () => {
  const sorted = (value: unknown): unknown =>
    Array.isArray(value)
      ? value.map(sorted)
      : value && typeof value === 'object'
        ? Object.fromEntries(
            Object.entries(value)
              .map(([key, one]) => [key, sorted(one)] as const)
              .sort(([a], [b]) => (a < b ? -1 : 1)),
          )
        : value;
  const turned = (value: unknown): unknown =>
    Array.isArray(value)
      ? value.map(turned)
      : value && typeof value === 'object'
        ? Object.fromEntries(
            Object.entries(value)
              .reverse()
              .map(([key, one]) => [key, turned(one)]),
          )
        : value;
  const json = fc.jsonValue({ maxDepth: 3 }).map((value) => JSON.parse(JSON.stringify(value)) as unknown);
  fc.assert(fc.property(json, (value) => sameDocument(value, turned(value))));
  fc.assert(
    fc.property(json, json, (a, b) => {
      expect(sameDocument(a, b)).toBe(JSON.stringify(sorted(a)) === JSON.stringify(sorted(b)));
    }),
  );
  expect(sameDocument({ a: 1, b: undefined }, { a: 1 })).toBe(true);
  expect(sameDocument([1], { 0: 1 })).toBe(false);
});
