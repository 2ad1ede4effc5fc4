import type { PartialDictionary } from '../types';

type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => (p[key] ?? '?').replace(/\.0$/, '').replace('.', ',');

/** Warum eine Schale oder eine Reihenfolge so ist; das Übrige steht noch auf Englisch da. */
export const why: PartialDictionary = {
  'why.natural_share_for_white': (p: P) =>
    `${of(p, 'share')} % Naturton, damit ${of(p, 'white')} % Weiß gedeckt wird und nicht flach wirkt.`,
  'why.counter_tone': (p: P) => `${of(p, 'product')}, ${of(p, 'share')} %, nimmt die Wärme darunter zurück.`,
  'why.developer_for_white': (p: P) => `Entwickler ${of(p, 'percent')} %, damit Weiß annimmt.`,
  'why.developer_for_deposit': (p: P) =>
    `Entwickler ${of(p, 'percent')} %: Farbe lagert sich an, kaum etwas hellt auf.`,
  'why.own_bowl': () => 'Diese Zone braucht eine eigene Schale.',
  'why.warming_tone': (p: P) =>
    `${of(p, 'product')}, ${of(p, 'share')} %, gibt die Wärme zurück, die fehlen würde.`,
  'why.in_packets': (p: P) => `Etwa ${of(p, 'packets')} Päckchen, je ${of(p, 'grams')} g.`,
  'why.beside_packets': () => 'Kommt zwischen die Päckchen, während sie einwirken; alles zusammen ausspülen.',
  'why.deepen_at_basin': () =>
    'Selten zu dunkel. Ist es am Becken zu hell, dort mit einer Tönung einen Ton tiefer nachdunkeln.',
  'why.nothing_wished': () => 'Jede Zone soll bleiben, wie sie ist.',
  'why.finish_with': (p: P) => `Das Abgewogene mit ${of(p, 'grams')} g ${of(p, 'product')} fertig machen.`,
  'why.weighed_is_lost': (p: P) =>
    `Schale ${of(p, 'bowl')}: was abgewogen ist (${of(p, 'grams')} g davon), lässt sich nicht gut fertig machen. Neu beginnen.`,
  'why.another_bowl': () => 'Eine andere Schale kommt näher als jede Änderung an dieser.',
  'why.packets_first': () => 'Päckchen zuerst: was dazwischen liegt, folgt.',
  'why.whitest_first': () => 'Das weißeste Haar zuerst: es braucht am längsten.',
  'why.resistant_first': () => 'Widerspenstiges Weiß zuerst: es braucht am längsten.',
  'why.crown_to_nape_then_sides': () => 'Vom Wirbel zum Nacken, dann die Seiten.',
  'problem.woven_takes_all': (p: P) =>
    `Die Päckchen nehmen alles Haar von ${of(p, 'area')}. Etwas dazwischen lassen.`,
  'problem.shared_for_stock': (p: P) =>
    `${of(p, 'product')}: nur ${of(p, 'grams')} g im Regal, also nicht für jede Schale.`,
  'problem.stock_short': (p: P) => `${of(p, 'product')}: nicht genug im Regal.`,
};
