import type { Key } from './types';

/** Sentences that warn or stop: every language has them, finished or not. */
export const warnings = [
  'problem.read_on_dry_hair',
  'problem.history_unknown_test_first',
  'problem.failed_stretch',
  'problem.extension_strand_first',
  'problem.two_makers_in_one_bowl',
  'problem.ratio_not_of_range',
  'problem.developer_not_of_range',
  'problem.longer_than_range_allows',
  'problem.over_legal_limit',
  'problem.not_permitted_use',
  'problem.percentages_unknown',
  'problem.no_range_usable',
  'why.needs_filler',
  'why.condition_spent',
  'why.metal_test_first',
  'why.minerals_first',
  'why.range_not_on_scalp',
  'why.straightened_lately',
  'why.failed_stretch',
  'why.law',
  'why.other_maker_skin_test',
  'why.nothing_may_replace',
  'why.scalp_lightener_strength',
  'why.route_strand_first',
  'why.route_stays_short',
  'why.route_needs_visits',
  'why.route_lighten',
  'why.finding_green',
] as const satisfies readonly Key[];

export type Warning = (typeof warnings)[number];
