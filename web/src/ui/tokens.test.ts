import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { contrast } from './contrast';

const css = readFileSync('src/ui/tokens.css', 'utf8');

function colours(selector: string): Record<string, string> {
  const block = css.slice(css.indexOf(`${selector} {`));
  const body = block.slice(0, block.indexOf('\n}'));
  return Object.fromEntries(
    [...body.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g)].map((m) => [m[1], m[2]] as [string, string]),
  );
}

const light = colours(':root');
const dark = { ...light, ...colours(":root[data-theme='dark']") };
const surfaces = ['stage', 'ground', 'panel', 'raised', 'press'];

describe('contrast', () => {
  // WCAG 2.2: black on white is 21:1; #767676 on white is the well-known 4.54:1.
  it('follows the published formula', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  });
});

describe.each([
  ['light', light],
  ['dark', dark],
])('%s tokens', (_, theme) => {
  it('are one family of neutral greys', () => {
    for (const [name, hex] of Object.entries(theme)) {
      expect([hex.slice(1, 3), hex.slice(3, 5)], name).toEqual([hex.slice(3, 5), hex.slice(5, 7)]);
    }
  });

  it.each(surfaces)('text and muted text read on %s (4.5:1)', (surface) => {
    expect(contrast(theme.text!, theme[surface]!)).toBeGreaterThanOrEqual(4.5);
    expect(contrast(theme.muted!, theme[surface]!)).toBeGreaterThanOrEqual(4.5);
  });

  it.each(surfaces)('control outlines and focus stand out on %s (3:1)', (surface) => {
    expect(contrast(theme.edge!, theme[surface]!)).toBeGreaterThanOrEqual(3);
    expect(contrast(theme.focus!, theme[surface]!)).toBeGreaterThanOrEqual(3);
    expect(contrast(theme.solid!, theme[surface]!)).toBeGreaterThanOrEqual(3);
  });

  it('text on a chosen control reads', () => {
    expect(contrast(theme['on-solid']!, theme.solid!)).toBeGreaterThanOrEqual(7);
  });
});

describe('what styles name', () => {
  it('is defined: a colour of no token is black in the dark', () => {
    const files = (readdirSync('src', { recursive: true }) as string[])
      .filter((file) => /\.(svelte|css)$/.test(file))
      .map((file) => [file, readFileSync(`src/${file}`, 'utf8')] as const);
    const defined = new Set(
      files.flatMap(([, text]) =>
        [...text.matchAll(/(?:^|[\s;{:])(--[a-z][\w-]*)\s*[:=]/gm)].map((m) => m[1]),
      ),
    );
    const used = files.flatMap(([file, text]) =>
      [...text.matchAll(/var\((--[a-z][\w-]*)(?=[),\s])/g)].map((m) => `${file} ${m[1]}`),
    );
    expect(used.length).toBeGreaterThan(500);
    expect(used.filter((one) => !defined.has(one.split(' ')[1]!))).toEqual([]);
  });
});
