/** Before the first bowl, in the order of hands: for client, colourist, air, tools and products. */
export const prepareLines = [
  'gown',
  'skin_cream',
  'rings_off',
  'gloves',
  'air',
  'tools_clean',
  'products_ready',
  'chair_height',
  'client_sits',
  'own_stance',
] as const;

/** After the rinse, before the mirror. */
export const finishLines = [
  'water_warm',
  'rinsed_clear',
  'no_tangle',
  'acid_care',
  'scalp_calm',
  'skin_wiped',
  'compared',
] as const;

export const bins = ['tube', 'foil', 'paper', 'rest_of_bowl', 'gloves'] as const;
