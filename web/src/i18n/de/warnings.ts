import type { Dictionary } from '../types';
import type { Warning } from '../warnings';
import { n } from './count';

type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => (p[key] ?? '?').replace(/\.0$/, '').replace('.', ',');

/** Was warnt oder anhält. */
export const warnings: Pick<Dictionary, Warning> = {
  'problem.read_on_dry_hair': () => 'Auf trockenem Haar lesen, neben den eigenen Farbmustern des Salons.',
  'problem.history_unknown_test_first': () =>
    'Die Vorgeschichte ist unbekannt: vor jedem Peroxid Metall- und Strähnentest machen.',
  'problem.failed_stretch': () =>
    'Die Nassdehnung ging nicht zurück: hier kein Aufheller, keine Hellerfärbung, nichts ab 6 %.',
  'problem.extension_strand_first': () =>
    'Haarverlängerung: ohne Test an einer Strähne davon wird hier nichts behauptet.',
  'problem.two_makers_in_one_bowl': (p) =>
    `${of(p, 'product')} kommt von einem anderen Hersteller. Zwei Hersteller nie in einer Schale.`,
  'problem.ratio_not_of_range': (p) =>
    `Schale ${of(p, 'bowl')}: die Serie erlaubt kein Verhältnis 1 : ${of(p, 'ratio')}. Nach ihrer Anleitung mischen.`,
  'problem.developer_not_of_range': (p) =>
    `Schale ${of(p, 'bowl')}: die Serie erlaubt keinen Entwickler mit ${of(p, 'percent')} %. Eine von ihr genannte Stärke nehmen.`,
  'problem.longer_than_range_allows': (p) =>
    `Schale ${of(p, 'bowl')}: ${of(p, 'minutes')} min ist länger, als die Serie erlaubt (${of(p, 'max')}).`,
  'problem.two_ranges_in_one_bowl': (p) =>
    `Schale ${of(p, 'bowl')}: ${of(p, 'product')} ist aus einer anderen Serie. Serien nur mischen, wo es der Hersteller erlaubt.`,
  'problem.developer_alone': (p) => `Schale ${of(p, 'bowl')} enthält nur Entwickler. Eine Nuance dazugeben.`,
  'problem.over_legal_limit': (p) =>
    `Schale ${of(p, 'bowl')} liegt über einer gesetzlichen Grenze. Nicht verwenden; ihre Teile ändern, bis sie darunter liegt.`,
  'problem.not_permitted_use': (p) =>
    `Schale ${of(p, 'bowl')} enthält einen Stoff, der dafür nicht zugelassen ist. Nicht verwenden.`,
  'problem.percentages_unknown': (p) =>
    `Schale ${of(p, 'bowl')}: nicht jeder Anteil ist angegeben, die gesetzliche Prüfung ist unvollständig.`,
  'problem.no_range_usable': () =>
    'Keine Serie dieses Regals darf heute auf dieses Haar. Zuerst testen oder pflegen.',
  'why.needs_filler': () =>
    'Aufgehelltes Haar, das so viel dunkler wird, braucht zuerst Vorpigment, sonst wird es fahl.',
  'why.condition_spent': () =>
    'Das Haar hat keine Kraft mehr für weiteres Aufhellen. Pflegen und einen weiteren Besuch planen.',
  'why.nothing_wished': () => 'Jede Zone soll bleiben, wie sie ist.',
  'why.no_bowl_may_serve': () =>
    'Keine Schale dieses Regals darf auf diese Zonen: sie wird nicht verglichen.',
  'why.comes_off_early': (p: P) =>
    `Schale ${of(p, 'bowl')} auf ${of(p, 'zone')}: die Uhr lässt ihr ${of(p, 'minutes')} Minuten, nicht die geplanten ${of(p, 'planned')}. Eine zweite Person, weniger Zonen auf einmal oder eine frische Mischung; sonst weniger erwarten.`,
  'why.later_bowl_decides': () => 'Ein späterer Schritt folgt hier: es zählt die Schale danach.',
  'why.route_chelate': (p: P) => `Die Mineralien lösen: ${of(p, 'minutes')} Minuten, dann gut spülen.`,
  'why.minerals_first': () =>
    'Im Haar sind Mineralien aus dem Wasser: vor jedem Oxidanten mit einer chelatbildenden Kur lösen.',
  'why.metal_test_first': () =>
    'Die Vorgeschichte kann Metall enthalten: vor jedem Peroxid kommt ein Metalltest.',
  'why.range_not_on_scalp': () => 'Eine Serie bleibt weg: sie darf die Kopfhaut nicht berühren.',
  'why.straightened_lately': () => 'Dieses Haar wurde kürzlich geglättet: stärkere Entwickler bleiben weg.',
  'why.failed_stretch': () =>
    'Die Nassdehnung ist misslungen: dort kein Aufheller, keine Hellerfärbung, nichts ab 6 %.',
  'why.law': () => 'Eine gesetzliche Grenze steht dagegen.',
  'why.other_maker_skin_test': () =>
    'Farbe eines anderen Herstellers: zuerst ist ein neuer Hauttest fällig, wie der Hersteller es sagt.',
  'why.nothing_may_replace': () => 'Nichts im Regal darf sie auf diesem Haar ersetzen.',
  'why.scalp_lightener_strength': () => 'Ein Aufheller dieser Stärke darf die Kopfhaut nicht berühren.',
  'why.route_strand_first': () =>
    'Mehr als ein Schritt macht es ungewisser: den ganzen Weg zuerst an einer Strähne probieren.',
  'why.route_stays_short': () => 'Auch so wird der Wunsch nicht ganz erreicht.',
  'why.route_needs_visits': (p) =>
    `Es braucht ${n.besuche(of(p, 'visits'))} im Abstand von mindestens ${n.wochen(of(p, 'weeks'))}. Vor jedem das Haar prüfen.`,
  'why.route_lighten': (p) =>
    `Mit ${of(p, 'percent')} % aufhellen, bis zu ${n.minuten(of(p, 'minutes'))}. Alle paar Minuten nachsehen; bei Schmerz, Hitze oder dehnendem Haar abbrechen.`,
  'why.finding_green': (p) =>
    `${of(p, 'zone')}: es wirkt grün. Zuerst Mineralien und Metall ausschließen; dann nimmt etwas Rot oder Kupfer es zurück.`,
};
