type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => p[key] ?? '?';

export const why = {
  'why.natural_share_for_white': (_p: P) => 'Du naturel dans le mélange couvre les blancs.',
  'why.counter_tone': (_p: P) => 'Un reflet contraire reprend la chaleur que l’éclaircissement montre.',
  'why.average_rule': (_p: P) => 'La nuance est choisie pour rencontrer les cheveux à mi-chemin.',
  'why.developer_for_lift': (_p: P) => 'L’oxydant est le plus faible qui éclaircit assez.',
  'why.one_bowl_serves': (_p: P) => 'Un seul bol sert assez bien ces zones.',
  'why.own_bowl': (_p: P) => 'Ces zones demandent leur propre bol.',
  'why.colour_does_not_lift_colour': (_p: P) =>
    'La couleur n’éclaircit pas la couleur : ce qui est teint doit d’abord être décapé ou éclairci.',
  'why.lift_limit': (_p: P) => 'C’est plus d’éclaircissement que cette étagère n’en donne sur ces cheveux.',
  'why.white_cover': (_p: P) => 'Les blancs se verraient encore à côté du reste.',
  'why.condition': (_p: P) => 'Les cheveux souffriraient plus que la maison ne permet.',
  'why.law': (_p: P) => 'Une limite légale s’y oppose.',
  'why.tone': (_p: P) => 'Ce reflet ne s’obtient pas avec ces nuances.',
  'why.whitest_first': (_p: P) => 'Le plus blanc d’abord : il demande le plus de temps.',
  'why.resistant_first': (_p: P) => 'Le plus résistant d’abord : il demande le plus de temps.',
  'why.crown_to_nape_then_sides': (_p: P) => 'Du sommet à la nuque, puis les côtés.',
  'why.hairline_last': (_p: P) => 'La bordure en dernier : les cheveux fins prennent vite.',
  'why.away_from_scalp_first': (_p: P) =>
    'Loin du cuir chevelu d’abord : sa chaleur accélère l’éclaircissement.',
  'why.scalp_zone_later': (_p: P) => 'La racine plus tard : sa chaleur accélère l’éclaircissement.',
  'why.back_before_front': (_p: P) => 'L’arrière avant l’avant pour éclaircir.',
  'why.porous_ends_last': (_p: P) => 'Les pointes poreuses en dernier : elles prennent vite.',
  'why.lengths_after_regrowth': (_p: P) => 'Les longueurs après la repousse.',
  'why.as_listed': (_p: P) => 'Dans l’ordre où les zones sont listées.',
  'why.small_mix': (_p: P) => 'De petits mélanges, pour que chacun serve tant qu’il agit.',
  'why.one_basin_time': (_p: P) => 'Tout ce qui touche le cuir chevelu part à la même heure.',
  'why.out_of_order': (p: P) => `Hors de l’ordre habituel pour gagner du temps : ${of(p, 'zone')}.`,
};
