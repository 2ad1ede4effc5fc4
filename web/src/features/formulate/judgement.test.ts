import { describe, expect, it } from 'vitest';
import type { PlanAnswer } from '../../api/types';
import { judgement } from './judgement';

const answer = (miss: number) =>
  ({
    go: 'go',
    verdicts: [],
    bowls: [{}],
    zones: [
      {
        zone: 'top/lengths',
        bowl: 'A',
        target: { level: 7, weight: 1, lab: { l: 50, a: 6, b: 14 } },
        planned: { level: 7, lab: { l: 50, a: 6, b: 14 } },
        landing: { expected_loss: miss },
      },
    ],
  }) as unknown as PlanAnswer;

describe('what bowls of one’s own do', () => {
  it('is beside the suggestion what an eye can tell', () => {
    expect(judgement(answer(1.97), answer(2))).toContain('hardly different');
    expect(judgement(answer(2.03), answer(2))).toContain('hardly different');
    expect(judgement(answer(1.8), answer(2))).toContain('0.20 levels nearer to the target');
    expect(judgement(answer(2.5), answer(2))).toContain('half a level off');
  });
});
