import { n } from './count';

/** Other ways than the plan's. */
export const ways = {
  'ways.title': 'Autres chemins',
  'ways.lead': 'Moins bons dans l’ensemble, meilleurs sur un point.',
  'ways.none': 'Aucun autre chemin n’est plus doux, plus simple ou moins cher en restant près du souhait.',
  'ways.gentler': 'Plus doux pour le cheveu',
  'ways.simpler': 'Plus simple à mélanger',
  'ways.cheaper': 'Moins cher',
  'ways.fewer_bowls': 'Moins de bols',
  'ways.later_on_lengths': 'Le même mélange, plus tard sur les longueurs',
  'ways.other': 'Un autre chemin',
  'ways.same': 'presque pareil',
  'ways.quarter': 'écart d’environ un quart de ton',
  'ways.half': 'écart d’environ un demi-ton',
  'ways.one': 'écart d’environ un ton',
  'ways.more': 'écart de plus d’un ton',
  'ways.figure': (words: string, levels: string) => `${words} (${n.tons(levels)})`,
  'ways.cost': (cost: string, grams: string) => `${cost} pour ${grams}`,
  'ways.bowl': (label: string, grams: string, where: string) => `Bol ${label}, ${grams} : ${where}`,
  'ways.look': 'Voir',
  'ways.looking': (way: string) => `Un autre chemin est montré, pas le plan : ${way}`,
  'ways.working': (way: string) => `Calcul d’un autre chemin : ${way}`,
  'ways.failed': (way: string) => `Ce chemin n’a pas pu être calculé : ${way}. Le plan est montré.`,
  'ways.back': 'Revenir au plan',
  'ways.take': 'Prendre celui-ci',
  'ways.taken': (way: string) => `Ces bols sont maintenant le plan : ${way}.`,
};
