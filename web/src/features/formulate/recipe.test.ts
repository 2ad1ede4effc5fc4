import { describe, expect, it } from 'vitest';
import { effectWords, recipeWords } from './recipe';

const effect = { product: 'x', level_without: 0, warm_without: 0, red_without: 0, loss_without: 0 };

describe('what a part does', () => {
  it('is said by what is missing without it', () => {
    expect(
      effectWords({ ...effect, level_without: 0.62, warm_without: 4, red_without: -2, loss_without: 0.4 }),
    ).toBe('0.6 levels lighter, warmer, less red, 0.40 levels further from the target');
    expect(effectWords({ ...effect, level_without: -1, warm_without: -3 })).toBe('1 level darker, cooler');
  });

  it('is hardly anything where nothing moves', () => {
    expect(effectWords({ ...effect, level_without: 0.01, loss_without: -0.2 })).toBe('hardly different');
  });
});

describe('a recipe', () => {
  it('names shares, strength and time, and none where none is used', () => {
    const recipe = {
      range: 'r',
      shares: [
        { product: 'a', eighths: 5 },
        { product: 'b', eighths: 3 },
      ],
      developer_percent: 6,
      ratio: 1,
      minutes: 35,
    };
    expect(recipeWords(recipe)).toMatch(/^r: 5\/8 a \+ 3\/8 b, 6\u00a0% 1:1, /);
    expect(recipeWords({ ...recipe, developer_percent: 0 })).not.toContain('%');
  });
});
