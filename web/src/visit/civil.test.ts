import { describe, expect, it } from 'vitest';
import { ageBand, ageOn, boundsOf, civilOf, daysAfter, instantAt, openHours } from './civil';

const vienna = 'Europe/Vienna';

describe('civil time of the salon', () => {
  // EU clocks change at 01:00 UTC on the last Sundays of March and October.
  it('knows the night of 23 hours', () => {
    expect(instantAt('2026-03-29', '01:59', vienna)).toBe('2026-03-29T00:59:00Z');
    expect(instantAt('2026-03-29', '03:00', vienna)).toBe('2026-03-29T01:00:00Z');
    expect(instantAt('2026-03-29', '02:30', vienna)).toBe('2026-03-29T01:30:00Z'); // no clock shows it
    expect(civilOf('2026-03-29T01:30:00Z', vienna)).toEqual({ day: '2026-03-29', hour: '03:30' });
    const { from, until } = boundsOf('2026-03-29', vienna);
    expect((Date.parse(until) - Date.parse(from)) / 3_600_000).toBe(23);
  });
  it('knows the night of 25 hours, and takes the first of two', () => {
    expect(instantAt('2026-10-25', '02:30', vienna)).toBe('2026-10-25T00:30:00Z');
    expect(instantAt('2026-10-25', '03:00', vienna)).toBe('2026-10-25T02:00:00Z');
    const { from, until } = boundsOf('2026-10-25', vienna);
    expect((Date.parse(until) - Date.parse(from)) / 3_600_000).toBe(25);
  });
  it('works where half hours, other days and southern summers are', () => {
    expect(instantAt('2026-06-01', '09:00', 'Asia/Kolkata')).toBe('2026-06-01T03:30:00Z');
    expect(civilOf('2026-06-01T23:00:00Z', 'Pacific/Auckland').day).toBe('2026-06-02');
    // Sydney turns back on 5 April 2026 at 03:00.
    expect(instantAt('2026-04-05', '02:30', 'Australia/Sydney')).toBe('2026-04-04T15:30:00Z');
  });
  it('keeps a house open over midnight', () => {
    expect(openHours('2026-12-31', 18 * 60, 2 * 60, vienna)).toEqual({
      from: '2026-12-31T17:00:00Z',
      until: '2027-01-01T01:00:00Z',
    });
    expect(daysAfter('2028-02-28', 1)).toBe('2028-02-29');
  });
  it('turns sixteen on the day, not before', () => {
    expect(ageOn('2010-11-30', '2026-11-29')).toBe(15);
    expect(ageOn('2010-11-30', '2026-11-30')).toBe(16);
    expect(ageBand('2010-11-30', '2026-11-29')).toBe('under_16');
    expect(ageBand('2010-11-30', '2026-11-30')).toBe('from_16_to_17');
    expect(ageBand('2008-11-30', '2026-11-30')).toBe('adult');
    expect(ageOn('2008-02-29', '2024-02-28')).toBe(15);
    expect(ageOn('2008-02-29', '2025-02-28')).toBe(16);
    expect(ageOn('2008-02-29', '2026-03-01')).toBe(18);
  });
});
