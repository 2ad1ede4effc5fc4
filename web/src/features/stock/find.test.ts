import { describe, expect, it } from 'vitest';
import type { StockItem } from '../../api/stock';
import { called, inTurn, isWanted, matches, named, typedDay } from './find';

const item = (more: Partial<StockItem>): StockItem => ({
  product: 'p',
  name: '7 copper',
  code: '',
  barcode: '',
  range: 'tint',
  range_name: 'Tint one',
  cls: 'permanent',
  is: 'enough',
  grams: 60,
  short_g: 0,
  batches: [],
  seen: 1,
  counted_at: '',
  daily_g: 0,
  order_g: 0,
  ...more,
});

describe('what stands on the shelf', () => {
  it('is found by any part of what it is called', () => {
    const one = item({ code: 'K7', barcode: '0400', name: '7 cuivré' });
    for (const text of ['k7', 'cuivre', 'tint 7', '400', '']) expect(matches(one, text), text).toBe(true);
    expect(matches(one, 'k8')).toBe(false);
    expect(called(one)).toBe('K7 · 7 cuivré');
  });

  it('opens at a whole barcode or code only, and at one product only', () => {
    const items = [
      item({ product: 'a', barcode: '040' }),
      item({ product: 'b', code: 'K7' }),
      item({ code: 'X' }),
      item({ code: 'X' }),
    ];
    expect(named(items, '040')?.product).toBe('a');
    expect(named(items, ' k7 ')?.product).toBe('b');
    for (const text of ['04', 'X', '']) expect(named(items, text)).toBeUndefined();
  });

  it('shows first what asks for a hand', () => {
    const due = item({
      product: 'due',
      batches: [{ batch: 'L', expires: '2026-01-01', grams: 5, soon: true, expired: false }],
    });
    const items = [
      item({ product: 'enough' }),
      due,
      item({ product: 'none', is: 'none' }),
      item({ product: 'short', is: 'short_of' }),
    ];
    expect(inTurn(items).map((one) => one.product)).toEqual(['short', 'none', 'due', 'enough']);
    expect(isWanted(due, 'due')).toBe(true);
    expect(isWanted(due, 'order')).toBe(false);
    expect(items.filter((one) => isWanted(one, 'count')).map((one) => one.product)).toEqual(['short']);
  });
});

describe('a day on a tube', () => {
  it('is read as people write it', () => {
    expect(typedDay('')).toBeUndefined();
    expect(typedDay('2027-05-31')).toBe('2027-05-31');
    expect(typedDay('31.5.2027')).toBe('2027-05-31');
    expect(typedDay('2/2028')).toBe('2028-02-29');
    for (const text of ['31.2.2027', 'soon', '13/2027']) expect(typedDay(text), text).toBeNull();
  });
});
