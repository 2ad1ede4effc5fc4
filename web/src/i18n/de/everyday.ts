import type { Part } from '../types';
import type { everyday as english } from '../en/everyday';

/** Tests, looks, enquiries and cards. */
export const everyday: Part<typeof english> = {
  'diary.as_last': 'Wie beim letzten Mal',
  'clients.card': 'Eine Karteikarte oder eine Liste',
  'clients.card_name': 'Name auf der Karte',
  'clients.card_date': 'Datum des letzten Eintrags',
  'clients.card_text': 'Was darauf steht',
  'clients.card_keep': 'Karte aufnehmen',
  'clients.list':
    'Eine Liste als CSV mit Kopfzeile: Name, Kontakt, Text, Datum; andere Spalten kommen zum Text',
  'clients.list_choose': 'Liste wählen',
  'clients.list_none': 'Keine Überschrift dieser Liste heißt „Name“.',
  'clients.cards': 'Von Karten und Listen',
  'home.cut': 'Seitdem abgeschnitten',
  'clients.list_keep': 'Liste aufnehmen',
  'bundle.batches': 'Chargen aus den Schalen',
  'bundle.head': 'Der Besuch, wie er geschrieben wurde',
  'bundle.failed': 'Die Datei konnte nicht erstellt werden.',
  'bundle.make': 'Für Versicherung oder Hersteller: alles in einer Datei',
  'bundle.title': 'Alles, was von einem Besuch aufgehoben ist',
  'clients.list_nameless': (count: number) => `Ohne Namen, nicht dabei: ${count}`,
  'clients.list_read': (count: number) =>
    count === 1 ? '1 Person steht darin. Aufnehmen?' : `${count} Personen stehen darin. Aufnehmen?`,
  'clients.added': (count: number) => `Aufgenommen: ${count}`,
};
