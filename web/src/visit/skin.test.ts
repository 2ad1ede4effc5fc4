import { describe, expect, it } from 'vitest';
import { skinTestOf } from './skin';

describe('the skin test of a visit', () => {
  it('is missing, late, too young, or to be asked about; never said to be clear', () => {
    const date = '2025-03-10';
    expect(skinTestOf({ date })).toBe('none');
    expect(skinTestOf({ date, skin_test: '' })).toBe('none');
    expect(skinTestOf({ date, skin_test: '2025-03-11' })).toBe('late');
    expect(skinTestOf({ date, skin_test: '2025-03-10' })).toBe('young');
    expect(skinTestOf({ date, skin_test: '2025-03-09' })).toBe('young');
    expect(skinTestOf({ date, skin_test: '2025-03-08' })).toBe('ask');
  });
});
