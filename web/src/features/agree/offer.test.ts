import { describe, expect, it } from 'vitest';
import type { PlanAnswer, Visit } from '../../api/types';
import { offerOf } from './offer';

const zone = (over: object = {}) => ({
  zone: 'crown/regrowth',
  bowl: 'A',
  reachable: true,
  why_not: [],
  today: { condition_left: 0.8 },
  planned: {
    level: 5.2,
    tone: 'copper',
    level_spread: { p10: 4.9, p50: 5.2, p90: 5.5 },
    condition_left: 0.78,
    contrast_levels: 0.2,
    srgb: { daylight: { hex: '#604530' } },
  },
  ...over,
});
const plan = (over: object = {}) =>
  ({
    zones: [zone()],
    verdicts: [{ rule: 'white.natural', topic: 'wish', says: 'ceiling' }],
    bands: [],
    routes: [],
    alternatives: [{ axis: 'simpler' }, { axis: 'gentler' }],
    timeline: { finish_min: 90 },
    after: {
      rebook: { from: 4, until: 6 },
      visits_from: 1,
      visits_until: 1,
      next_test: '',
      told: [{ code: 'after_signs_wash_off', path: '', params: {} }],
    },
    ...over,
  }) as unknown as PlanAnswer;
const visit = { head: { areas: [] } } as unknown as Visit;

describe('what a client agrees to', () => {
  it('names the colour as clients do', () => {
    expect(offerOf(plan(), visit).words).toEqual(['light brown (level 5, copper) – regrowth.']);
  });

  it('says nothing that is the colourist’s: no rules of mixing, no simpler bowls', () => {
    const { risks, alternatives } = offerOf(plan(), visit);
    expect(risks.join(' ')).not.toMatch(/White asks for|bottle/);
    expect(risks.join(' ')).toMatch(/allergic reaction.*Itch, redness/);
    expect(alternatives).toEqual(['Gentler on the hair']);
  });

  it('tells of each risk that the plan foresees, and of no other', () => {
    // Allergy and what it may feel like are told whatever the plan is.
    expect(offerOf(plan(), visit).risks).toHaveLength(3);
    expect(offerOf(plan(), visit).rights).toHaveLength(2);
    const { planned } = zone() as { planned: object };
    const told = offerOf(
      plan({
        zones: [
          zone({
            planned: {
              ...planned,
              condition_left: 0.5,
              contrast_levels: 2,
              level_spread: { p10: 4, p50: 5, p90: 6 },
            },
          }),
        ],
        bands: [{}],
        verdicts: [{ rule: 'strand.needed' }],
      }),
      visit,
    ).risks.join(' ');
    for (const words of [
      /1 level lighter or darker/,
      /may break/,
      /white may still/,
      /A line/,
      /a strand is tried/,
    ])
      expect(told).toMatch(words);
  });
});
