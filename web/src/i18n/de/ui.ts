import type { ui as english } from '../en/ui';
import type { Part } from '../types';

export const ui: Part<typeof english> = {
  'ui.less': (what) => `Weniger: ${what}`,
  'ui.more': (what) => `Mehr: ${what}`,
  'ui.close': 'Schließen',
  'ui.undo': 'Rückgängig',
  'ui.cancel': 'Abbrechen',
  'ui.retry': 'Noch einmal',
  'ui.busy': 'Rechnet',
  'ui.clipped': 'außerhalb dessen, was dieser Bildschirm zeigen kann',
  'ui.stop': 'Halt',
  'ui.caution': 'Achtung',
  'ui.failed': 'Nicht ausgeführt',
  'ui.kept': 'Bleibt erhalten',
  'ui.todo': 'Zu tun',
  'ui.part': 'Produkt',
  'ui.amount': 'Menge',
  'ui.total': 'Zusammen',
  'ui.as_list': 'Als Liste',
  'ui.latest': (time) => `spätestens um ${time} ausspülen`,
  'ui.most_here': (what, more) =>
    `${what} (weniger stark auf ${more} ${more === 1 ? 'weiteren Zone' : 'weiteren Zonen'})`,
  'ui.said': (what, words) => `${what}: ${words}`,
  'unit.g': 'g',
  'unit.oz': 'oz',
  'unit.cm': 'cm',
  'unit.mm': 'mm',
  'unit.min': 'min',
  'unit.volumes': 'vol',
  'unit.percent': '%',
};
