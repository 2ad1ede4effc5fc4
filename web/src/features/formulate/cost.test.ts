import { afterEach, describe, expect, it } from 'vitest';
import type { ShelfAnswer } from '../../api/types';
import { scale } from '../../visit/scale.svelte';
import { costWords } from './cost';

afterEach(() => (scale.shelf = undefined));

describe('what bowls cost', () => {
  it('is not known while one price is not', () => {
    scale.shelf = {
      products: [
        { id: 'a', price_per_g: 0.1 },
        { id: 'b', price_per_g: 0 },
      ],
    } as unknown as ShelfAnswer;
    const bowl = (...ids: string[]) => ({ parts: ids.map((product) => ({ product })) }) as never;
    expect(costWords(3, 'EUR', [bowl('a')])).toContain('3.00');
    expect(costWords(3, 'EUR', [bowl('a'), bowl('a', 'b')])).toBe('price not known');
  });
});
