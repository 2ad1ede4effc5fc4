import type { why as english } from '../en/why';
import type { Part } from '../types';
import { n, of } from './count';

/** Warum eine Schale, eine Reihenfolge oder eine Ablehnung so ist. */
export const why: Part<typeof english> = {
  // Eine Schale.
  'why.natural_share_for_white': (p) =>
    `${of(p, 'share')} % Naturnuance, damit ${of(p, 'white')} % Weiß abgedeckt wird und nicht flach wirkt.`,
  'why.counter_tone': (p) => `${of(p, 'product')}, ${of(p, 'share')} %, neutralisiert die Wärme darunter.`,
  'why.developer_for_lift': (p) =>
    `Entwickler ${of(p, 'strength')}, weil das Ziel ${n.tonhöhen(of(p, 'levels'))} heller ist.`,
  'why.developer_for_white': (p) => `Entwickler ${of(p, 'strength')}, damit Weiß die Farbe annimmt.`,
  'why.developer_for_deposit': (p) =>
    `Entwickler ${of(p, 'strength')}: Farbe lagert sich an, kaum etwas hellt auf.`,
  'why.warmth_expected': (p) =>
    `Beim Aufhellen um ${n.tonhöhen(of(p, 'levels'))} kommt die Wärme darunter zum Vorschein.`,
  'why.deepen_at_basin': () =>
    'Wird kaum zu dunkel. Ist es am Becken zu hell, dort mit einer Intensivtönung vertiefen, die eine Tonhöhe dunkler ist.',
  'why.warming_tone': (p) =>
    `${of(p, 'product')}, ${of(p, 'share')} %, gibt die Wärme zurück, die fehlen würde.`,
  'why.in_packets': (p) => `Etwa ${n.päckchen(of(p, 'packets'))}, je ${of(p, 'grams')} g.`,
  'why.beside_packets': () => 'Kommt zwischen die Päckchen, während sie einwirken; alles zusammen ausspülen.',
  'why.one_bowl_serves': (p) => `Eine Schale genügt für ${n.zonen(of(p, 'zones'))}.`,
  'why.own_bowl': () => 'Diese Zone braucht eine eigene Schale.',
  'why.carries_tone': (p) => `${of(p, 'product')}, ${of(p, 'share')} %, bringt den Ton des Ziels.`,
  'why.natural_ground': (p) => `${of(p, 'product')}, ${of(p, 'share')} %, ist die natürliche Basis.`,
  'why.thins': (p) => `${of(p, 'product')}, ${of(p, 'share')} %, verdünnt die Farbe.`,
  'why.part_of_depth': (p) => `${of(p, 'product')}, ${of(p, 'share')} %, bestimmt die Farbtiefe.`,
  'why.one_bowl_fewer': (p) =>
    `Es ginge mit ${n.schalen(of(p, 'bowls'))}, dann aber ${n.tonhöhen(of(p, 'worse'))} weiter vom Ziel.`,
  'why.same_mix_later': (p) =>
    `Die Mischung von Schale ${of(p, 'bowl')} kommt ${n.minuten(of(p, 'minutes'))} vor dem Ausspülen auf die Längen.`,
  'why.fourth_shade_nearer': (p) =>
    `Eine vierte Nuance und feineres Abwiegen bringen es ${n.tonhöhen(of(p, 'levels'))} näher; versucht wurden nur Schritte, ausgehend von der besten Schale mit drei Nuancen in Achteln.`,
  'why.grams_nearer': (p) =>
    `Feineres Abwiegen bringt es ${n.tonhöhen(of(p, 'levels'))} näher; versucht wurden nur Schritte, ausgehend von der besten Schale in Achteln.`,
  'why.regrowth_to_lengths': (p) =>
    `Die Längen können nicht mit, darum geht der Ansatz zu ihnen. Wie gewünscht stünde er ${n.tonhöhen(of(p, 'levels'))} dagegen ab.`,
  'why.builds_up_on_lengths': (p) =>
    `Schale ${of(p, 'bowl')} ist nicht auch für die Längen: sie würden ${n.tonhöhen(of(p, 'levels'))} zu dunkel.`,
  'why.nothing_wished': () => 'Jede Zone soll bleiben, wie sie ist.',
  'why.no_bowl_may_serve': () =>
    'Keine Schale aus diesem Regal darf auf diese Zonen, daher wird nicht verglichen.',
  'why.comes_off_early': (p) =>
    `Schale ${of(p, 'bowl')} auf ${of(p, 'zone')}: nach der Uhr wirkt sie ${n.minuten(of(p, 'minutes'))} ein, nicht die verlangten ${of(p, 'planned')}. Eine zweite Person, weniger Bereiche auf einmal oder eine frische Mischung; die Vorhersage zählt, was die Uhr erlaubt.`,
  'why.stays_too_long': (p) =>
    `Schale ${of(p, 'bowl')} auf ${of(p, 'zone')}: sie bleibt ${n.minuten(of(p, 'minutes'))} nach dem letzten Auftrag; ihre Serie erlaubt ${of(p, 'longest')}. Eine zweite Person, weniger Bereiche auf einmal oder diese Zone später.`,
  'why.leave_as_it_is': () => 'Es bleibt, wie es ist: nichts im Regal bringt es dem Ziel näher.',
  // Was nicht zu haben ist.
  'why.colour_does_not_lift_colour': () =>
    'Farbe hellt Farbe nicht auf: Gefärbtes wird zuerst abgezogen oder blondiert.',
  'why.lift_limit': () => 'Das ist mehr Aufhellung, als dieses Regal auf diesem Haar auf einmal schafft.',
  'why.depth_out_of_reach': () => 'Keine Nuance dieses Regals wird hier so dunkel.',
  'why.needs_filler': () =>
    'Blondiertes Haar, das so viel dunkler wird, muss zuerst vorpigmentiert werden, sonst wirkt es flach.',
  'why.warmth_stays': () =>
    'Die Wärme, die beim Aufhellen zum Vorschein kommt, lässt sich nicht ganz neutralisieren.',
  'why.tone_between_words': () => 'Der Ton kommt nahe, nicht ganz hin.',
  'why.tone_out_of_reach': () => 'Der Ton ist mit diesen Nuancen nicht zu treffen.',
  'why.white_cover': (p) =>
    `Weiß bleibt ${n.tonhöhen(of(p, 'levels'))} heller als der Rest und wäre zu sehen.`,
  'why.base_too_dark_for_high_lift': () =>
    'Eine Hellerfärbung braucht eine hellere natürliche Tonhöhe als diese.',
  'why.high_lift_on_coloured': () =>
    'Eine Hellerfärbung gehört auf Naturhaar, nicht auf gefärbtes oder blondiertes Haar.',
  'why.lightened_is_toned': () =>
    'Blondiertes Haar wird mit schwachem Entwickler abmattiert, nicht mit permanenter Farbe noch einmal aufgehellt.',
  'why.condition_spent': () =>
    'Dieses Haar sollte heute nicht weiter aufgehellt werden. Pflegen und einen weiteren Besuch planen.',
  'why.minerals_first': () =>
    'Im Haar sind Mineralien aus dem Wasser: vor jedem Peroxid mit einer chelatbildenden Behandlung entfernen.',
  'why.metal_test_first': () =>
    'Nach der Vorgeschichte kann Metall im Haar sein: vor jedem Peroxid kommt ein Metalltest.',
  'why.range_not_on_scalp': () => 'Eine Serie bleibt weg: sie darf die Kopfhaut nicht berühren.',
  'why.straightened_lately': () => 'Dieses Haar wurde vor Kurzem geglättet: stärkere Entwickler bleiben weg.',
  'why.failed_stretch': () =>
    'Das Haar hat die Nassdehnung nicht bestanden: dort keine Blondierung, keine Hellerfärbung, nichts ab 6 %.',
  'why.law': () => 'Eine gesetzliche Grenze steht dagegen.',
  // Woher die Ungewissheit einer Vorhersage kommt.
  'why.doubt_from_level_reading': (p) =>
    `Die Ungewissheit der Farbtiefe kommt zu ${of(p, 'percent')} % von der beurteilten Tonhöhe.`,
  'why.doubt_from_white_share': (p) =>
    `Die Ungewissheit der Farbtiefe kommt zu ${of(p, 'percent')} % vom Weißanteil.`,
  'why.doubt_from_porosity': (p) =>
    `Die Ungewissheit der Farbtiefe kommt zu ${of(p, 'percent')} % von der Porosität.`,
  'why.doubt_from_white_look': (p) =>
    `Die Ungewissheit der Farbtiefe kommt zu ${of(p, 'percent')} % von der Farbe des weißen Haars, die hier nie gemessen wurde.`,
  'why.doubt_from_lightening': (p) =>
    `Die Ungewissheit der Farbtiefe kommt zu ${of(p, 'percent')} % daher, wie schnell dieser Kopf heller wird: ein Strähnentest zeigt es.`,
  'why.doubt_from_uptake': (p) =>
    `Die Ungewissheit der Farbtiefe kommt zu ${of(p, 'percent')} % daher, wie viel Farbe dieses Haar annimmt: ein Strähnentest zeigt es.`,
  'why.doubt_from_blend': (p) =>
    `Die Ungewissheit der Farbtiefe kommt zu ${of(p, 'percent')} % daher, wie weißes und pigmentiertes Haar zusammen aussehen.`,
  'why.doubt_from_shade_name': (p) =>
    `Die Ungewissheit der Farbtiefe kommt zu ${of(p, 'percent')} % daher, dass eine Nuance nur dem Namen nach bekannt ist: ein Farbmuster zeigt es.`,
  // Worauf vor dem Mischen zu zeigen ist.
  'why.finding_dark_band': (p) =>
    `${of(p, 'zone')}: ein Streifen, ${n.tonhöhen(of(p, 'levels'))} dunkler als das Haar davor und danach. Ihm eine eigene Schale geben; heute lieber heller, später vertiefen.`,
  'why.finding_light_band': (p) =>
    `${of(p, 'zone')}: ein Streifen, ${n.tonhöhen(of(p, 'levels'))} heller als das Haar davor und danach. Für sich vertiefen.`,
  'why.finding_hot_regrowth': (p) =>
    `${of(p, 'zone')}: gefärbter Ansatz, ${n.tonhöhen(of(p, 'levels'))} heller als die Längen. Mit deren Nuance und schwachem Entwickler vertiefen.`,
  'why.finding_uneven_ends': (p) =>
    `${of(p, 'zone')}: die Spitzen weichen um ${n.tonhöhen(of(p, 'levels'))} von den Längen ab. Ihnen eine eigene Schale oder eine eigene Zeit geben.`,
  'why.finding_green': (p) =>
    `${of(p, 'zone')}: es wirkt grün. Zuerst Mineralien und Metall ausschließen; dann neutralisiert etwas Rot oder Kupfer es.`,
  // Wege in mehr als einem Schritt.
  'why.later_bowl_decides': () => 'Ein späterer Schritt folgt hier: es zählt die Schale danach.',
  'why.route_chelate': (p) => `Die Mineralien entfernen: ${n.minuten(of(p, 'minutes'))}, dann gut ausspülen.`,
  'why.route_soften': (p) =>
    `Das resistente Weiß vorweichen: ${of(p, 'strength')}, ${n.minuten(of(p, 'minutes'))}.`,
  'why.route_fill': () => 'Vorpigmentieren, damit die Farbtiefe eine warme Basis hat.',
  'why.route_remove': (p) =>
    `Die alte Farbe abziehen: ${n.minuten(of(p, 'minutes'))}, dann so lange ausspülen, wie der Hersteller es sagt.`,
  'why.route_lighten': (p) =>
    `Mit ${of(p, 'strength')} blondieren, bis zu ${n.minuten(of(p, 'minutes'))}. Alle paar Minuten nachsehen; abbrechen, wenn es schmerzt, heiß wird oder das Haar sich dehnt.`,
  'why.route_needs_visits': (p) =>
    `Es braucht ${n.besuche(of(p, 'visits'))} im Abstand von mindestens ${n.wochen(of(p, 'weeks'))}. Vor jedem das Haar prüfen.`,
  'why.route_stays_short': () => 'Auch so wird das Ziel nicht ganz erreicht.',
  'why.route_strand_first': () =>
    'Mehr als ein Schritt macht es ungewisser: den ganzen Weg zuerst an einer Strähne testen.',
  // Ein zweiter Blick.
  'why.change_strength': (p) => `Entwickler ${of(p, 'strength')} nehmen.`,
  'why.change_ratio': (p) => `1 zu ${of(p, 'ratio')} mischen.`,
  'why.change_minutes': (p) => `${n.minuten(of(p, 'minutes'))} einwirken lassen.`,
  'why.swap_shade': (p) => `${of(p, 'by')} statt ${of(p, 'product')} nehmen.`,
  'why.add_shade': (p) => `${of(p, 'share')} % ${of(p, 'product')} dazugeben.`,
  'why.drop_shade': (p) => `${of(p, 'product')} weglassen.`,
  'why.shift_shares': (p) => `Mehr von ${of(p, 'product')} nehmen: ${of(p, 'share')} % der Farbe.`,
  'why.finish_with': (p) => `Das Abgewogene mit ${of(p, 'grams')} g ${of(p, 'product')} ergänzen.`,
  'why.weighed_is_lost': (p) =>
    `Schale ${of(p, 'bowl')}: was abgewogen ist (${of(p, 'grams')} g davon), lässt sich nicht gut ergänzen. Neu beginnen.`,
  'why.another_bowl': () => 'Eine andere Schale kommt näher als jede Änderung an dieser.',
  'why.rule_limit': () => 'Eine Grenze der Regeln für dieses Haar steht dagegen.',
  'why.stopped_by_rules': () => 'Eine Regel hält diesen Besuch an: heute wird nichts wie gewünscht gemischt.',
  'why.bowls_stopped_by_rules': () =>
    'Eine Schale verstößt gegen eine Regel: für sie gibt es keine Vorhersage.',
  'why.left_out_for_condition': () =>
    'Eine Schale bleibt weg: mit diesem Zeitplan würde sie das Haar zu sehr belasten.',
  'why.other_maker_skin_test': () =>
    'Farbe eines anderen Herstellers: zuerst ist ein neuer Hauttest fällig, wie der Hersteller es sagt.',
  'why.nothing_may_replace': () => 'Nichts im Regal darf auf diesem Haar an ihre Stelle treten.',
  'why.scalp_lightener_strength': () => 'Eine Blondierung dieser Stärke darf die Kopfhaut nicht berühren.',
  // Die Reihenfolge der Arbeit.
  'why.packets_first': () => 'Päckchen zuerst: was dazwischen kommt, folgt.',
  'why.whitest_first': () => 'Das weißeste Haar zuerst: es braucht am längsten.',
  'why.resistant_first': () => 'Resistentes Weiß zuerst: es braucht am längsten.',
  'why.after_the_whiter': () => 'Nach den weißeren Bereichen.',
  'why.areas_of_the_house': () => 'In der Reihenfolge der Bereiche dieses Hauses.',
  'why.hairline_last': () => 'Die Stirnkontur zuletzt.',
  'why.parting_by_parting': () => 'Passée für Passée.',
  'why.needs_longest': (p) => `Was am längsten braucht, zuerst: ${of(p, 'minutes')} Minuten.`,
  'why.needs_less': (p) => `Später, weil ${of(p, 'minutes')} Minuten genügen: ${of(p, 'zones')}.`,
  'why.porous_last': () => 'Das porösere Haar später: es nimmt schneller an.',
  'why.time_is_over': () => 'Die Einwirkzeit ist um.',
  'why.away_from_scalp_first': () =>
    'Zuerst abseits der Kopfhaut: die Wärme der Kopfhaut beschleunigt das Aufhellen.',
  'why.scalp_zone_later': () => 'Die Kopfhautzone später: die Wärme der Kopfhaut beschleunigt das Aufhellen.',
  'why.porous_ends_last': () => 'Poröse Spitzen zuletzt: sie nehmen am schnellsten an.',
  'why.lengths_after_regrowth': () => 'Die Längen nach dem Ansatz.',
  'why.small_mix': () => 'Eine kleine frische Mischung: die erste wäre zu alt.',
  'why.one_basin_time': () => 'Alles auf der Kopfhaut wird zusammen ausgespült.',
  // After the visit.
  'why.after_line_shows': (p) =>
    `Nach ${of(p, 'from')} bis ${of(p, 'until')} Wochen zeigt der Ansatz eine Linie.`,
  'why.after_short_hair_grows_out': (p) =>
    `So kurzes Haar ist nach ${of(p, 'from')} bis ${of(p, 'until')} Wochen herausgewachsen.`,
  'why.after_fades_softly': (p) =>
    `Es verblasst weich innerhalb von ${of(p, 'from')} bis ${of(p, 'until')} Wochen.`,
  'why.after_blended_not_covered': (p) =>
    `Weiß wird kaschiert, nicht abgedeckt; es verblasst weich innerhalb von ${of(p, 'from')} bis ${of(p, 'until')} Wochen.`,
  'why.after_red_fades_first': (p) =>
    `Rot verblasst zuerst: nach ${of(p, 'from')} bis ${of(p, 'until')} Wochen auffrischen.`,
  'why.after_copper_fades': (p) =>
    `Kupfer verblasst: nach ${of(p, 'from')} bis ${of(p, 'until')} Wochen eine Intensivtönung.`,
  'why.after_toner_lasts': (p) =>
    `Eine Abmattierung hält ${of(p, 'from')} bis ${of(p, 'until')} Wochen, nicht für immer.`,
  'why.after_shadow_fades': (p) =>
    `Der Schatten verblasst innerhalb von ${of(p, 'from')} bis ${of(p, 'until')} Wochen und wird warm.`,
  'why.after_direct_fades': (p) =>
    `Ein Direktzieher verblasst über acht bis zehn Wäschen, ${of(p, 'from')} bis ${of(p, 'until')} Wochen.`,
  'why.after_direct_stains': () =>
    'Er färbt auf Wäsche und Haut ab und lässt sich nur schwer wieder entfernen.',
  'why.after_ends_take_and_fade': () => 'Poröse Spitzen nehmen sofort mehr an und verblassen zuerst.',
  'why.after_lighter_needs_more': () => 'Wieder heller zu werden braucht einen Farbabzug oder Strähnen.',
  'why.after_growth_may_glow': () => 'Der Ansatz kann leuchtender wirken als die Längen.',
  'why.after_warmth_shows': () => 'Wo alte Farbe herauskommt, zeigt sich Wärme.',
  'why.after_darkens_back': () => 'Es kann binnen Tagen wieder nachdunkeln.',
  'why.after_half_way_is_good': () => 'Der halbe Weg ist heute ein gutes Ergebnis.',
  'why.after_warmth_stays': () => 'Etwas Wärme bleibt: Farbe allein hellt warm auf.',
  'why.after_curl_may_loosen': () => 'Die Locke kann etwas nachlassen.',
  'why.after_no_more_home_colour': () => 'Keine Farbe mehr zu Hause, bis das erledigt ist.',
  'why.after_metal_comes_back': () =>
    'Metall im Wasser kommt wieder: Haar vorher nass machen, Badekappe tragen und alle ein bis zwei Wochen chelatbildend waschen.',
  'why.after_violet_on_yellow_dulls': () =>
    'Reines Violett auf gelbem Haar wird stumpf: Rotviolett, oder erst heller.',
  'why.after_wash_and_wait': () =>
    'Nur wenig zu dunkel und frisch: tiefenreinigend waschen und in ein bis zwei Wochen wieder ansehen.',
  'why.after_signs_wash_off': () =>
    'Jucken, Rötung oder Schwellung an der Teststelle oder anderswo: abwaschen und ärztliche Hilfe holen. Es kann Tage später kommen.',
};
