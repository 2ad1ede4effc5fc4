import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from '../support/server';
import { expect, test } from '@playwright/test';

test('the documentation shows six pictures, each of them kept and none beside', () => {
  const kept = readdirSync(join(root, 'docs/screens')).sort();
  const shown = ['README.md', 'docs/tour.md'].flatMap((file) =>
    [...readFileSync(join(root, file), 'utf8').matchAll(/!\[[^\]]+\]\((?:docs\/)?screens\/([^)]+)\)/g)].map(
      (m) => m[1]!,
    ),
  );
  expect([...shown].sort()).toEqual(kept);
  expect(kept).toHaveLength(6);
});
