import { n } from './count';

/** Other ways than the plan's. */
export const ways = {
  'ways.title': 'Other ways',
  'ways.lead': 'Worse on the whole, better in one thing.',
  'ways.none': 'No other way is gentler, simpler or cheaper and still near the wish.',
  'ways.gentler': 'Gentler on the hair',
  'ways.simpler': 'Simpler to mix',
  'ways.cheaper': 'Cheaper',
  'ways.fewer_bowls': 'Fewer bowls',
  'ways.later_on_lengths': 'The same mix, later on the lengths',
  'ways.other': 'Another way',
  'ways.same': 'hardly different',
  'ways.quarter': 'about a quarter level off',
  'ways.half': 'about half a level off',
  'ways.one': 'about a level off',
  'ways.more': 'more than a level off',
  'ways.figure': (words: string, levels: string) => `${words} (${n.levels(levels)})`,
  'ways.cost': (cost: string, grams: string) => `${cost} for ${grams}`,
  'ways.bowl': (label: string, grams: string, where: string) => `Bowl ${label}, ${grams}: ${where}`,
  'ways.look': 'See it',
  'ways.looking': (way: string) => `You see another way, not the plan: ${way}`,
  'ways.working': (way: string) => `Working out another way: ${way}`,
  'ways.failed': (way: string) => `This way could not be worked out just now: ${way}. You see the plan.`,
  'ways.back': 'Back to the plan',
  'ways.take': 'Take this one',
  'ways.taken': (way: string) => `These bowls are the plan now: ${way}.`,
};
