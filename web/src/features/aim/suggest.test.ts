import { describe, expect, it } from 'vitest';
import { newHead, withReading } from '../../visit/head';
import { contrasts, levelToday, skins, suggestions } from './suggest';

describe('suggestions from house words', () => {
  let head = newHead();
  for (const area of head.areas) head = withReading(head, area.id, 'lengths', { level: 6 });

  it('start from the level of most of the hair', () => {
    expect(levelToday(head)).toBe(6);
  });

  it('are on the scale for every word, and put what needs no lighter hair first', () => {
    for (const level of [1, 6, 10]) {
      let dark = head;
      for (const area of head.areas) dark = withReading(dark, area.id, 'lengths', { level });
      for (const skin of skins) {
        for (const contrast of contrasts) {
          const found = suggestions(dark, skin, contrast);
          expect(found.length).toBeGreaterThan(0);
          for (const s of found)
            expect(s.level >= 1 && s.level <= 10 && s.lighter === s.level > level).toBe(true);
          const firstLighter = found.findIndex((s) => s.lighter);
          if (firstLighter >= 0) expect(found.slice(firstLighter).every((s) => s.lighter)).toBe(true);
        }
      }
    }
  });

  it('put what is within reach first', () => {
    const found = suggestions(head, 'even', 'clear', (level, tone) => level === 7 && tone === 'gold');
    expect(found[0]).toMatchObject({ level: 7, tone: 'gold', reachable: true });
    expect(found.slice(1).every((s) => s.reachable === false)).toBe(true);
  });

  it('differ with the words', () => {
    expect(suggestions(head, 'rosy', 'soft')).not.toEqual(suggestions(head, 'golden', 'soft'));
    expect(suggestions(head, 'rosy', 'soft')).not.toEqual(suggestions(head, 'rosy', 'strong'));
  });
});
