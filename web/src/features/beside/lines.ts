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
] as const;

export const bins = ['tube', 'foil', 'paper', 'rest_of_bowl', 'gloves'] as const;
