import { describe, expect, it } from 'vitest';
import { calendar, weeksAfter } from './dates';

describe('dates of a visit', () => {
  it('are counted in civil days, over a change of the clocks, a leap day and a year', () => {
    expect(weeksAfter('2026-03-23', 1)).toBe('2026-03-30');
    expect(weeksAfter('2026-10-20', 1)).toBe('2026-10-27');
    expect(weeksAfter('2028-02-28', 1 / 7)).toBe('2028-02-29');
    expect(weeksAfter('2026-12-30', 6)).toBe('2027-02-10');
  });

  // RFC 5545, read back by its own rules: CRLF, folding at 75 octets, escapes, DTEND exclusive.
  it('are iCalendar text that any calendar reads', () => {
    const text = calendar(
      [
        {
          uid: 'v1-next@strandline',
          from: '2026-05-04',
          until: '2026-05-18',
          summary: 'Colour; roots, ends \\ tips – ' + 'Strähnen '.repeat(12),
        },
      ],
      new Date('2026-03-10T09:08:07.654Z'),
    );
    const raw = text.split('\r\n');
    expect(raw.pop()).toBe('');
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    for (const line of raw) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
    const lines = text.replaceAll('\r\n ', '').split('\r\n');
    expect(lines.slice(0, 3)).toEqual(['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Strandline//EN']);
    expect(lines).toContain('DTSTAMP:20260310T090807Z');
    expect(lines).toContain('DTSTART;VALUE=DATE:20260504');
    expect(lines).toContain('DTEND;VALUE=DATE:20260519');
    const summary = lines.find((line) => line.startsWith('SUMMARY:')) ?? '';
    expect(summary).toContain('Colour\\; roots\\, ends \\\\ tips – Strähnen');
    expect(lines.filter((line) => /^(BEGIN|END):VEVENT$/.test(line))).toHaveLength(2);
  });

  it('are hours of UTC where a line of the diary is one', () => {
    const entry = {
      uid: 'a@strandline',
      from: '2026-03-29T00:30:00Z',
      until: '2026-03-29T02:30:00Z',
      summary: 'x',
    };
    const lines = calendar([entry], new Date(0)).split('\r\n');
    expect(lines).toContain('DTSTART:20260329T003000Z');
    expect(lines).toContain('DTEND:20260329T023000Z');
    expect(lines).toContain('TRANSP:OPAQUE');
  });
});
