import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { program, root } from '../support/server';
import { expect, test } from '../support/test';

// The types that the web app is checked against are those of the program that serves it.
test('schema.d.ts is what this server describes', () => {
  const folder = mkdtempSync(join(tmpdir(), 'strandline-api-'));
  try {
    writeFileSync(join(folder, 'openapi.json'), execFileSync(program, ['openapi'], { maxBuffer: 64e6 }));
    const generator = join(root, 'web/node_modules/openapi-typescript/bin/cli.js');
    execFileSync(process.execPath, [
      generator,
      join(folder, 'openapi.json'),
      '-o',
      join(folder, 'schema.d.ts'),
    ]);
    const kept = readFileSync(join(root, 'web/src/api/schema.d.ts'), 'utf8');
    expect(kept, 'run `npm run api` in web/').toBe(readFileSync(join(folder, 'schema.d.ts'), 'utf8'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
