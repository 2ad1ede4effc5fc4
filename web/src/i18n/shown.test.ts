import { expect, test } from 'vitest';
import { areaName, zoneWords } from '../visit/words';
import { clientName } from '../visit/names';
import { problemWords } from './problems';
import { shown } from './shown';

const mark = '\u202E'; // turns the order of what follows

test('marks that turn or hide text are shown as what they are', () => {
  expect(shown(`Ann${mark}a\u2066b\u2069\u200F\u061C\u200B\uFEFF\u2028\n`)).toBe(
    'Ann⟨U+202E⟩a⟨U+2066⟩b⟨U+2069⟩⟨U+200F⟩⟨U+061C⟩⟨U+200B⟩⟨U+FEFF⟩⟨U+2028⟩⟨U+000A⟩',
  );
});

test('letters, marks and joiners of every script stay', () => {
  const names = 'Zoë נועה علی می\u200Cخواهم 👩\u200D🎨 ½ –';
  expect(shown(names)).toBe(names);
  expect(shown(shown(`a${mark}`))).toBe(shown(`a${mark}`));
});

test('names of clients, areas and spans are shown so, and what fills a sentence', () => {
  expect(clientName(`A${mark}B`)).toBe('A⟨U+202E⟩B');
  expect(clientName('')).not.toBe('');
  expect(areaName(`fr${mark}ont`)).toBe('fr⟨U+202E⟩ont');
  expect(zoneWords(`a${mark}/b${mark}`)).not.toContain(mark);
  const problem = { code: 'no_such_code', path: '', params: {} };
  expect(problemWords({ ...problem, code: `x${mark}` })).not.toContain(mark);
  expect(problemWords({ ...problem, code: 'name_used_twice', params: { name: mark } })).not.toContain(mark);
});
