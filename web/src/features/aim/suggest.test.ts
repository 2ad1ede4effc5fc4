import { describe, expect, it } from 'vitest';
import { newHead, withReading } from '../../visit/head';
import { depths, levelToday, suggestions, warmths } from './suggest';

describe('suggestions from words for hair', () => {
  let head = newHead();
  for (const area of head.areas) head = withReading(head, area.id, 'lengths', { level: 6 });

  it('start from the level of most of the hair', () => {
    expect(levelToday(head)).toBe(6);
  });

  it('are on the scale for every word, each once', () => {
    for (const level of [1, 6, 10]) {
      let read = head;
      for (const area of head.areas) read = withReading(read, area.id, 'lengths', { level });
      for (const depth of depths)
        for (const warmth of warmths) {
          const found = suggestions(read, depth, warmth);
          expect(found.length).toBeGreaterThan(0);
          for (const s of found)
            expect(s.level >= 1 && s.level <= 10 && s.lighter === s.level > level).toBe(true);
          expect(new Set(found.map((s) => `${s.level} ${s.tone} ${s.second}`)).size).toBe(found.length);
        }
    }
  });

  it('go the way the words say', () => {
    expect(suggestions(head, 'darker', 'cool').every((s) => s.level < 6)).toBe(true);
    expect(suggestions(head, 'same', 'warm').every((s) => s.level === 6)).toBe(true);
    expect(suggestions(head, 'lighter', 'neutral').every((s) => s.lighter)).toBe(true);
  });

  it('put what is within reach first', () => {
    const found = suggestions(head, 'lighter', 'warm', (level, tone) => level === 8 && tone === 'copper');
    expect(found[0]).toMatchObject({ level: 8, tone: 'copper', reachable: true });
    expect(found.at(-1)?.reachable).toBe(false);
  });
});
