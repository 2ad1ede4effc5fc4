import type { learned as en } from '../en/learned';
import type { Part } from '../types';
import { n } from './count';

/** Parameters of a code as the server gives them; a missing one reads as "?". */
type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => p[key] ?? '?';

/** Was Ergebnisse lehrten, und gemessene Farbmuster. */
export const learned: Part<typeof en> = {
  'learned.here': 'Frühere Ergebnisse ändern diesen Plan',
  'learned.look': 'Ansehen oder ein Ergebnis herausnehmen',
  'learned.moved': (zone: string, before: string, now: string) =>
    `${zone}: ohne Ergebnisse Tonhöhe ${before}, mit ihnen ${now}`,
  'learned.title': 'Was Ergebnisse lehrten',
  'learned.lead':
    'Jedes Ergebnis ändert, was als Nächstes vorhergesagt wird: für eine Serie, für eine Person, für das Auge bei der Beurteilung.',
  'learned.words': 'Bisher gelernt',
  'learned.nothing': 'Noch nichts, das eindeutig genug und größer als eine Fünfteltonhöhe ist.',
  'learned.drift': 'Gesehen gegen vorhergesagt',
  'learned.drift_note':
    'Jeder Punkt ist eine Zone eines Ergebnisses: über der Linie wurde es heller als vorhergesagt, darunter dunkler, in Tonhöhen. Neun von zehn sollten im Band liegen. Offene Punkte lehrten nichts.',
  'learned.drift_said': (within: string, all: string) =>
    `${within} von ${all} Ergebnissen lagen im genannten Bereich.`,
  'learned.results': 'Ergebnisse, neueste zuerst',
  'learned.seen': (foreseen: string, seen: string) => `vorhergesagt Tonhöhe ${foreseen}, gesehen ${seen}`,
  'learned.set_aside': 'Zu weit daneben: angesehen, nicht daraus gelernt.',
  'learned.without': 'Herausgenommen: alles wurde ohne es neu gelernt.',
  'learned.take_out': 'Herausnehmen',
  'learned.take_in': 'Wieder hineinnehmen',
  'learned.more': 'Ältere Ergebnisse',
  'learned.failed': 'Was gelernt wurde, ließ sich nicht öffnen.',
  'learned.failed_kept': 'Jedes Ergebnis bleibt erhalten.',
  'learned.of_salon': 'In diesem Salon',
  'learned.of_range': (name: string) => `Serie ${name}`,
  'learned.of_person': 'Dieses Haar',
  'learned.of_colourist': 'Bei der Beurteilung',
  'learned.deeper': (levels: string) => `wird ${n.tonhöhen(levels)} dunkler als berechnet`,
  'learned.lighter': (levels: string) => `wird ${n.tonhöhen(levels)} heller als berechnet`,
  'learned.lifts_more': (levels: string) => `hellt ${n.tonhöhen(levels)} mehr auf als berechnet`,
  'learned.lifts_less': (levels: string) => `hellt ${n.tonhöhen(levels)} weniger auf als berechnet`,
  'learned.warmer': (levels: string) => `wird wärmer als berechnet (${levels})`,
  'learned.cooler': (levels: string) => `wird kühler als berechnet (${levels})`,
  'learned.reads_light': (levels: string) =>
    `ein Auge beurteilt ${n.tonhöhen(levels)} heller als die anderen`,
  'learned.reads_dark': (levels: string) =>
    `ein Auge beurteilt ${n.tonhöhen(levels)} dunkler als die anderen`,
  'reading.measured': (l: string, a: string, b: string) =>
    `zuletzt gemessen: L* ${l} · a* ${a} · b* ${b}; gilt, bis Tonhöhe oder Ton neu gelesen wird`,
  'swatches.title': 'Gemessene Farbmuster',
  'swatches.lead':
    'Auf weißem Haar, mit der üblichen Mischung dieser Serie. Ab drei gemessenen Mustern folgt der Rest der Serie ihnen.',
  'swatches.measured': (some: string, all: string) => `${some} von ${all} Nuancen gemessen`,
  'swatches.text': 'Die Datei eines Messgeräts, oder Code; L*; a*; b* Zeile für Zeile (D65, 10°)',
  'swatches.file': 'Datei öffnen',
  'swatches.look': 'Lesen',
  'swatches.next': 'Welche als Nächste messen?',
  'swatches.keep': (n: string) => `${n} speichern`,
  'swatches.matched': (n: string, names: string) => `${n} verstanden: ${names}`,
  'swatches.unmatched': (names: string) => `So heißt keine oder mehr als eine Nuance dieser Serie: ${names}`,
  'swatches.other_light':
    'Die Datei gibt L*a*b* für ein anderes Licht als D65 und 10° an. Sie werden genommen, wie sie sind; besser Spektren ausgeben, wo das Gerät es kann.',
  'swatches.measure_next': (names: string) => `Diese würden am meisten über die anderen sagen: ${names}`,
  'swatches.broken': (line: string) =>
    `Zeile ${line} lässt sich nicht als Messung lesen. Berichtigen oder die Datei neu ausgeben.`,
  'card.title': 'Mit einem Foto der gedruckten Karte',
  'card.lead':
    'Die Karte in ihrer Größe drucken und die Strähne so hinter ihr Fenster legen, dass sie es füllt. Von oben bei Tageslicht fotografieren, alle vier Ecken im Bild, ohne Schatten darauf.',
  'card.print': 'Karte zum Drucken öffnen',
  'card.patches': 'Die Felder der Karte, wie ein Messgerät sie gemessen hat (einmal je gedruckter Karte)',
  'card.patches_note': 'Ohne sie wird die Strähne nur mit den Feldern daneben verglichen.',
  'card.photo': 'Foto der Karte',
  'card.reading': 'Das Foto wird gelesen …',
  'card.level': (level: string) => `Tonhöhe ${level}`,
  'card.off': (amount: string) => `in neun von zehn Fällen um höchstens ΔE00 ${amount} daneben`,
  'card.lab_alone':
    'Die Datei der Karte hat nur L*a*b*: Was Tinte und Haar unter dieser Lampe unterscheidet, ist nicht herausgerechnet. Spektren sagen mehr.',
  'card.only_alike': (nearest: string, next: string) =>
    `Diese Karte hat niemand gemessen. Am ähnlichsten ist Feld ${nearest}, dann ${next}; in Zahlen nichts.`,
  'card.is_lighter': (patch: string) => `Sie ist heller als ${patch}.`,
  'card.is_darker': (patch: string) => `Sie ist dunkler als ${patch}.`,
  'card.of': 'Strähne von',
  'card.which': 'Welche Nuance?',
  'card.take': 'In die Liste',
  'problem.card_not_found': () =>
    'Die Karte ist nicht oder nicht ganz im Bild. Alle vier Eckmarken müssen scharf und ohne Schatten zu sehen sein.',
  'problem.card_small': () => 'Die Karte ist zu klein im Bild. Näher herangehen.',
  'problem.card_picture': () => 'Das Bild hat keine Bildpunkte. Noch einmal aufnehmen.',
  'problem.card_clipped': () =>
    'Das Weiß der Karte ist überstrahlt. Mit weniger Licht noch einmal aufnehmen.',
  'problem.card_dark': () => 'Die Karte ist zu dunkel. Mit mehr Licht noch einmal aufnehmen.',
  'problem.card_uneven': () => 'Das Licht fällt über die Karte ab. Zum Fenster drehen, weg von nahen Lampen.',
  'problem.card_strand_clipped': () =>
    'Die Strähne liegt am Rand dessen, was das Foto sagen kann. Bei Tageslicht mit mehr oder weniger Licht noch einmal aufnehmen.',
  'problem.card_patches_missing': (p: P) =>
    `${of(p, 'count')} Felder fehlen in der Datei der Karte: ${of(p, 'ids')} … Die Proben nach Zeile und Spalte der Karte nennen, A2 bis F8.`,
  'problem.picture_kind': () => 'Das ist kein lesbares Foto. Ein JPEG nehmen.',
  'problem.picture_large': () => 'Das Foto ist zu groß.',
  'problem.picture_small': () => 'Das Foto ist zu klein: mindestens 400 Bildpunkte je Seite.',
  'problem.picture_broken': () => 'Das Foto lässt sich nicht entpacken. Noch einmal von der Kamera kopieren.',
  'problem.measured_nothing': () =>
    'Darin sind weder Spektren noch L*a*b*. Spalten brauchen Wellenlängen von 400 bis 700 nm, oder L*, a* und b*.',
  'problem.measured_impossible': (p: P) =>
    `Zeile ${of(p, 'line')}: ${of(p, 'field')} kann nicht ${of(p, 'got')} sein.`,
  'problem.lab_typed': (p: P) => `„${of(p, 'got')}“ ist kein L*a*b*. Drei Zahlen schreiben: 54,2 8,1 19,6.`,
  'problem.result_not_found': () => 'Dieses Ergebnis gibt es nicht mehr. Die Seite neu laden.',
};
