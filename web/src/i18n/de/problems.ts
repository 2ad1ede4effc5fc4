import type { problems as english } from '../en/problems';
import type { Part } from '../types';
import { n, of } from './count';

/** Was nicht stimmt und was zu tun ist, für jeden Code, der auf einen Bildschirm kommen kann. */
export const problems: Part<typeof english> = {
  'problem.unknown': (code) => `Hier stimmt etwas nicht (${code}). Dieses Wort bitte melden.`,
  'problem.out_of_range': (p) =>
    `${of(p, 'value')} ist nicht möglich: nur ${of(p, 'min')} bis ${of(p, 'max')}.`,
  'problem.level_out_of_range': (p) =>
    `Tonhöhe ${of(p, 'value')} gibt es nicht: Tonhöhen gehen von ${p.min ?? '1'} bis ${p.max ?? '10'}.`,
  'problem.share_out_of_range': (p) => `Ein Anteil von ${of(p, 'value')} ist nicht möglich: nur 0 bis 100 %.`,
  'problem.porosity_out_of_range': (p) => `Porosität ${of(p, 'value')} gibt es auf der Skala nicht.`,
  'problem.resistance_out_of_range': (p) => `Resistenz ${of(p, 'value')} gibt es auf der Skala nicht.`,
  'problem.length_out_of_range': (p) => `Eine Länge von ${of(p, 'value')} cm ist nicht möglich.`,
  'problem.density_out_of_range': (p) =>
    `Eine Dichte von ${n.haaren(of(p, 'value'))} pro cm² ist nicht möglich.`,
  'problem.diameter_out_of_range': (p) => `Eine Haardicke von ${of(p, 'value')} µm ist nicht möglich.`,
  'problem.scalp_area_out_of_range': (p) =>
    `Eine Kopfhautfläche von ${of(p, 'value')} cm² ist nicht möglich.`,
  'problem.weeks_out_of_range': (p) => `„${n.wochen(of(p, 'value'))} her“ ist nicht möglich.`,
  'problem.stretch_out_of_range': (p) => `Eine Dehnung von ${of(p, 'value')} % ist nicht möglich.`,
  'problem.doubt_out_of_range': (p) => `Eine Ungewissheit von ${of(p, 'value')} ist nicht möglich.`,
  'problem.woven_share_out_of_range': (p) =>
    `Ein Anteil von ${of(p, 'value')} eines Bereichs passt nicht in Päckchen (nur ${of(p, 'min')} bis ${of(p, 'max')}).`,
  'problem.woven_width_out_of_range': (p) =>
    `Ein Päckchen von ${of(p, 'value')} mm Breite ist nicht möglich.`,
  'problem.woven_from_no_area': (p) =>
    `${of(p, 'area')}: Päckchen müssen aus einem Bereich dieses Kopfes kommen, der nicht selbst aus Päckchen besteht.`,
  'problem.woven_takes_all': (p) =>
    `Die Päckchen nehmen alles Haar von ${of(p, 'area')}. Etwas dazwischen lassen.`,
  'problem.aim_twice': (p) => `Für ${of(p, 'zone')} gibt es zwei Ziele. Nur eines behalten.`,
  'problem.shares_do_not_add_up': (p) =>
    `Die Anteile der Strähnen ergeben ${of(p, 'sum')}, nicht das Ganze. Einen davon ändern.`,
  'problem.spans_overlap': (p) =>
    `Ein Abschnitt beginnt bei ${of(p, 'from')} cm, bevor der darüber endet (${of(p, 'before')} cm).`,
  'problem.span_has_no_length': () => 'Dieser Abschnitt hat keine Länge. Sein Ende verschieben.',
  'problem.zone_has_no_fibres': () => 'Dieser Abschnitt hat noch keine Beurteilung.',
  'problem.area_has_no_spans': (p) =>
    `${of(p, 'area')} hat keinen Abschnitt. Einen hinzufügen oder den Bereich entfernen.`,
  'problem.head_has_no_areas': () => 'Der Kopf hat noch keinen Bereich. Einen hinzufügen.',
  'problem.too_many_areas': (p) => `Mehr Bereiche, als sich bearbeiten lassen (${of(p, 'max')}).`,
  'problem.head_too_fine': (p) =>
    `Mehr Haarsorten, als sich bearbeiten lassen (${of(p, 'max')}). Gleich beurteilte Abschnitte vereinen.`,
  'problem.visit_handed_in': (p) =>
    `Er wurde am ${of(p, 'at').slice(0, 10)} abgeschlossen und lässt sich nicht mehr ändern. Den Fehler als Berichtigung notieren.`,
  'problem.visit_erased': () => 'Dieser Besuch wurde zusammen mit der Kundin oder dem Kunden gelöscht.',
  'problem.client_not_found': () => 'Diese Person ist nicht mehr da. Eine andere aus der Liste öffnen.',
  'problem.client_same_name': (p) =>
    `Es gibt schon jemanden mit dem Namen ${of(p, 'name')}. Angeben, ob es dieselbe Person ist.`,
  'problem.redo_unknown': () => 'Der frühere Besuch steht nicht im Verlauf. Einen anderen wählen.',
  'problem.unknown_fact_kind': (p) => `„${of(p, 'kind')}“ kann nicht notiert werden. Die Seite neu laden.`,
  'problem.fact_version': () => 'Diese Seite ist älter als das Programm des Salons. Neu laden.',
  'problem.bad_instant': (p) => `„${of(p, 'text')}“ ist keine Uhrzeit.`,
  'problem.left_empty': () => 'Hier fehlt noch ein Text.',
  'problem.not_signed': () => 'Die Unterschrift fehlt noch. Zeichnen oder tippen.',
  'problem.price_range': () => 'Der Preis endet niedriger, als er beginnt. Den niedrigeren zuerst.',
  'problem.date_range': () => 'Die Tage enden, bevor sie beginnen. Den früheren zuerst.',
  'problem.busy': () => 'Gerade wird zu viel auf einmal gerechnet. Gleich noch einmal fragen.',
  'problem.given_up': () => 'Die Berechnung wurde abgebrochen. Noch einmal fragen.',
  'problem.out_of_time': () =>
    'In der vorgesehenen Zeit kam keine Antwort. Mehr Zeit geben oder Bereiche vereinen.',
  'problem.too_many_scenarios': (p) =>
    `Zu viele Szenarien für diesen Kopf (höchstens ${of(p, 'max')}). Weniger verlangen oder Abschnitte vereinen.`,
  'problem.name_missing': () => 'Ein Name fehlt.',
  'problem.name_used_twice': (p) => `Den Namen „${of(p, 'name')}“ gibt es zweimal. Einen davon ändern.`,
  'problem.bad_date': (p) => `„${of(p, 'text')}“ ist kein Tag. Tag, Monat und Jahr schreiben.`,
  'problem.too_long': (p) => `Dieser Text ist zu lang (höchstens ${n.zeichen(of(p, 'max'))}).`,
  'problem.control_character': () => 'Dieser Text enthält ein Zeichen, das sich nicht schreiben lässt.',
  'problem.aim_needs_one': () =>
    'Ein Ziel für diese Zone angeben: eine Nuance, eine Tonhöhe mit ihrem Ton oder eine Farbe.',
  'problem.second_tone_needs_level': () =>
    'Ein zweiter Ton braucht eine Tonhöhe. Tonhöhe und Töne zusammen angeben.',
  'problem.shadow_needs_lengths': (p) =>
    `Unter ${of(p, 'zone')} liegt kein Haar, gegen das es Schatten sein kann. Ein eigenes Ziel angeben.`,
  'problem.aim_missing': (p) => `Noch kein Ziel für ${of(p, 'zone')}. Eines wählen oder es so lassen.`,
  'problem.unknown_shade': (p) =>
    `Die Nuance ${of(p, 'shade')} ist nicht in diesem Regal. Eine andere wählen.`,
  'problem.unknown_zone': (p) =>
    `${of(p, 'zone')} gibt es an diesem Kopf nicht mehr. Das Ziel dafür entfernen.`,
  'problem.unknown_product': (p) => `${of(p, 'product')} ist nicht in diesem Regal. Etwas anderes wählen.`,
  'problem.swatch_missing': (p) =>
    `${of(p, 'product')} soll gemessen sein und hat kein Farbmuster. Das Muster angeben oder nur den Namen.`,
  'problem.swatch_besides_name': (p) =>
    `${of(p, 'product')} soll nur dem Namen nach bekannt sein und hat ein Farbmuster. Eines von beiden behalten.`,
  'problem.swatch_hair_missing': (p) =>
    `${of(p, 'product')} wurde an angegebenem Haar gemessen, und das Haar fehlt. Seine Tonhöhe angeben.`,
  'problem.swatch_hair_besides_white': (p) =>
    `${of(p, 'product')} soll an weißem Haar gemessen sein und gibt ein anderes an. Eines von beiden behalten.`,
  'problem.swatch_lighter_than_its_hair': (p) =>
    `Das Farbmuster von ${of(p, 'product')} ist heller, als sein Haar ohne Farbe wäre. Haar, Verfahren oder Muster berichtigen.`,
  'problem.name_is_no_colour': (p) =>
    `${of(p, 'product')} hat kein Farbmuster, und der Name sagt keine Farbe. Tonhöhe und Ton angeben oder ein Muster.`,
  'problem.known_by_without_colour': (p) =>
    `${of(p, 'product')} gibt einer Schale keine Farbe. Farbmuster und Herkunft weglassen.`,
  'problem.unknown_range': (p) => `Die Serie ${of(p, 'range')} ist nicht in diesem Regal.`,
  'problem.unknown_bowl': (p) => `Schale ${of(p, 'bowl')} gehört nicht zu diesem Plan.`,
  'problem.lab_out_of_range': () => 'Diese Farbe liegt außerhalb dessen, was Haar zeigen kann.',
  'problem.grams_out_of_range': (p) => `${of(p, 'grams')} g ist keine Menge, die sich abwiegen lässt.`,
  'problem.bowl_passes_rule': (p) =>
    `Schale ${of(p, 'bowl')} verstößt gegen eine Regel. Ändern oder weglassen.`,
  'problem.unknown_rule': (p) => `Eine Regel „${of(p, 'id')}“ gibt es nicht. Aus den Hausregeln nehmen.`,
  'problem.rule_not_of_the_house': (p) =>
    `Regel „${of(p, 'id')}“ ist Gesetz oder Mindestmaß: ein Haus kann sie nicht ändern. Herausnehmen.`,
  'problem.rule_value_out_of_range': (p) =>
    `Regel „${of(p, 'id')}“: ein Haus darf ${of(p, 'min')} bis ${of(p, 'max')} setzen.`,
  'problem.unknown_rule_figure': (p) =>
    `Regel „${of(p, 'id')}“ hat keine Zahl „${of(p, 'figure')}“. Herausnehmen.`,
  'problem.empty_bowl': () => 'In dieser Schale ist nichts.',
  'problem.nothing_in_the_bowl': () => 'In dieser Schale ist nichts.',
  'problem.not_begun': () => 'Der Besuch hat nicht begonnen: es läuft keine Uhr.',
  'problem.unknown_task': (p) => `Die Uhr kennt diese Aufgabe nicht: ${of(p, 'task')}.`,
  'problem.already_on': (p) => `Es ist schon auf dem Haar: ${of(p, 'task')}.`,
  'problem.nobody_can': (p) => `Im Team kann das niemand: ${of(p, 'task')}. Eine Person hinzufügen.`,
  'problem.clock_breaks': (p) =>
    `Der Zeitplan geht nicht auf: auf ${of(p, 'zone')} bliebe die Mischung ${of(p, 'minutes')} min zu lange. Eine zweite Person, kleinere Schalen oder eine kürzere Einwirkzeit würden helfen.`,
  'problem.development_window_too_short': () =>
    'Das Auftragen dauert länger, als das Produkt auf dem Haar bleiben darf.',
  'problem.mix_life_too_short': () =>
    'Das Auftragen dauert länger, als die Mischung hält. Kleinere Mischungen planen.',
  'problem.leaves_too_late': () => 'Der Besuch würde später enden als vereinbart.',
  'problem.search_stopped': () => 'Nicht jede Reihenfolge der Arbeit wurde verglichen.',
  'problem.no_wish': () => 'Es gibt kein Ziel, an dem diese Schalen zu messen wären.',
  'problem.range_gives_no_colour': () => 'Diese Serie gibt selbst keine Farbe.',
  'problem.no_bowls': () => 'Es gibt keine Schale für einen Zeitplan.',
  'problem.unknown_key': (p) => `Der Besuch enthält etwas Unbekanntes: ${of(p, 'key')}.`,
  'problem.missing_key': (p) => `Es fehlt etwas: ${of(p, 'key')}.`,
  'problem.wrong_type': (p) => `Erwartet: ${of(p, 'expected')}, gefunden: ${of(p, 'found')}.`,
  'problem.unknown_word': (p) => `„${of(p, 'word')}“ ist hier kein bekanntes Wort.`,
  'problem.unknown_name': (p) => `„${of(p, 'name')}“ ist in diesem Salon nicht bekannt.`,
  'problem.visit_not_found': () => 'Diesen Besuch gibt es nicht mehr. Einen aus der Liste öffnen.',
  'problem.visit_changed_elsewhere': () =>
    'Jemand hat diesen Besuch inzwischen gespeichert; nichts wurde überschrieben.',
  'problem.entry_id_taken': () =>
    'Unter dieser Kennung wurde etwas anderes gespeichert; nichts wurde überschrieben.',
  'problem.not_an_id': () => 'Diese Speicherung hat keine gültige Kennung. Die Seite neu laden.',
  'problem.store_unavailable': () =>
    'Die Salondatei lässt sich nicht schreiben. Die Festplatte prüfen; bisher ging nichts verloren.',
  'problem.store_moved': () =>
    'Die Salondatei wurde verschoben, gelöscht oder ersetzt. Es wird nichts mehr gespeichert: Server beenden, Datei zurücklegen, neu starten.',
  'problem.store_damaged': () =>
    'Die Salondatei ist beschädigt. Den Server beenden und die letzte Kopie an ihre Stelle legen.',
  'problem.store_foreign': () =>
    'Die Salondatei wurde nicht von Strandline geschrieben. Den Server beenden und die letzte Kopie an ihre Stelle legen.',
  'problem.entry_broken': () =>
    'Ein Eintrag der Salondatei wurde nachträglich verändert. Mit einer älteren Kopie vergleichen.',
  'problem.store_erased': () => 'Das wurde aus dem Salon gelöscht; es kann nichts mehr dazukommen.',
  'problem.store_newer': () => 'Die Salondatei braucht ein neueres Programm. Das neuere starten.',
  'problem.stock_short': (p) => `${of(p, 'product')}: nicht genug im Regal.`,
  'problem.band': (p) =>
    `Ein Streifen: ${of(p, 'lighter')} wird ${n.tonhöhen(of(p, 'levels'))} heller als ${of(p, 'darker')}, wo beide zusammentreffen.`,
  'problem.band_wished': (p) =>
    `Wie gewünscht wird ${of(p, 'lighter')} ${n.tonhöhen(of(p, 'levels'))} heller als ${of(p, 'darker')}.`,
  'problem.shared_for_stock': (p) =>
    `${of(p, 'product')}: nur ${of(p, 'grams')} g im Regal, also nicht für jede Schale.`,
  'problem.left_out_for_stock': (p) => `${of(p, 'product')} bleibt weg: nur ${of(p, 'grams')} g im Regal.`,
  'problem.nothing_to_apply': () => 'Für die Uhr gibt es nichts. Mindestens eine Schale planen.',
  'problem.longer_than_a_day': () => 'Das dauert länger als einen Tag. Die Minuten berichtigen.',
  'problem.not_minutes': () => 'Minuten müssen 0 oder mehr sein.',
  'problem.target_below_minimum': () =>
    'Die geplante Zeit ist kürzer als die kürzeste Einwirkzeit der Serie.',
  'problem.too_many_applications': () =>
    'Für eine Uhr ist zu oft aufzutragen. Zonen vereinen, die dieselbe Schale bekommen.',
  'problem.too_many': (p) => `Zu viele Einträge hier (höchstens ${of(p, 'max')}).`,
  'problem.document_too_large': () =>
    'Der Besuch ist zu groß zum Lesen geworden. Bereiche oder Abschnitte entfernen.',
  'problem.unknown_schema': () =>
    'Der Server erwartet eine andere Art von Besuch. Die neuere Fassung dieser App laden.',
  'problem.host_not_allowed': () =>
    'Unter dieser Adresse antwortet der Server nicht. Die Adresse nehmen, die er nennt.',
  'problem.origin_not_allowed': () => 'Diese Seite kommt von anderswo; der Server lehnt ihre Änderungen ab.',
  'problem.method_not_allowed': () =>
    'Diese App und der Server passen nicht zusammen. Die neuere Fassung dieser App laden.',
  'problem.bad_request': () => 'Der Server konnte die Anfrage nicht lesen. Noch einmal versuchen.',
  'problem.memory_short': () =>
    'Dafür reicht der Speicher gerade nicht; was gespeichert war, ist noch da. Andere Programme schließen, dann noch einmal versuchen.',
  'problem.internal': () =>
    'Der Server ist daran gescheitert; was gespeichert war, ist noch da. Sein Protokoll ansehen, dann noch einmal versuchen.',
  'problem.zone_in_two_bowls': (p) =>
    `${of(p, 'zone')} ist in zwei Schalen eines Schritts. In einer davon lassen oder der späteren Schale den nächsten Schritt geben.`,
  'problem.weighed_out_of_range': (p) =>
    `In der Schale können keine ${of(p, 'value')} g davon sein: sie nimmt höchstens ${of(p, 'most')} g davon.`,
  'problem.minutes_out_of_range': (p) =>
    `${n.minuten(of(p, 'value'))}: nicht möglich, nur ${of(p, 'min')} bis ${of(p, 'max')}.`,
  'problem.shelf_is_empty': () => 'Im Regal steht kein Produkt. Zuerst die Produkte des Salons hinzufügen.',
  'problem.shelf_too_large': (p) => `Im Regal stehen mehr als ${n.produkte(of(p, 'max'))}.`,
  'problem.not_an_amount': () => 'Eine Menge muss eine Zahl von 0 oder mehr sein.',
  'problem.too_many_people': () => 'Das sind zu viele Personen für einen Besuch.',
  'problem.not_found': () => 'Das gibt es nicht mehr.',
  'problem.answer_not_json': () =>
    'Die Antwort des Servers war nicht lesbar. Ihn neu starten, dann noch einmal versuchen.',
  // Was warnt oder anhält.
  'problem.read_on_dry_hair': () => 'Am trockenen Haar beurteilen, neben den eigenen Farbmustern des Salons.',
  'problem.history_unknown_test_first': () =>
    'Die Vorgeschichte ist unbekannt: vor jedem Peroxid Metall- und Strähnentest machen.',
  'problem.failed_stretch': () =>
    'Das nasse Haar federte nicht zurück: hier keine Blondierung, keine Hellerfärbung, nichts ab 6 %.',
  'problem.extension_strand_first': () =>
    'Haarverlängerung: ohne Test an einer ihrer Strähnen wird hier nichts vorhergesagt.',
  'problem.two_makers_in_one_bowl': (p) =>
    `${of(p, 'product')} kommt von einem anderen Hersteller. Zwei Hersteller nie in einer Schale.`,
  'problem.ratio_not_of_range': (p) =>
    `Schale ${of(p, 'bowl')}: die Serie erlaubt kein Verhältnis 1 : ${of(p, 'ratio')}. Nach der Gebrauchsanweisung mischen.`,
  'problem.developer_not_of_range': (p) =>
    `Schale ${of(p, 'bowl')}: die Serie erlaubt keinen Entwickler mit ${of(p, 'percent')} %. Eine von ihr genannte Stärke nehmen.`,
  'problem.longer_than_range_allows': (p) =>
    `Schale ${of(p, 'bowl')}: ${of(p, 'minutes')} min ist länger, als die Serie erlaubt (${of(p, 'max')}).`,
  'problem.two_ranges_in_one_bowl': (p) =>
    `Schale ${of(p, 'bowl')}: ${of(p, 'product')} ist aus einer anderen Serie. Serien nur mischen, wo die Gebrauchsanweisung ihres Herstellers es erlaubt.`,
  'problem.developer_alone': (p) => `Schale ${of(p, 'bowl')} enthält nur Entwickler. Eine Nuance dazugeben.`,
  'problem.over_legal_limit': (p) =>
    `Schale ${of(p, 'bowl')} liegt über einer gesetzlichen Grenze. Nicht verwenden; ihre Produkte ändern, bis sie darunter liegt.`,
  'problem.not_permitted_use': (p) =>
    `Schale ${of(p, 'bowl')} enthält einen Stoff, der dafür nicht zugelassen ist. Nicht verwenden.`,
  'problem.percentages_unknown': (p) =>
    `Schale ${of(p, 'bowl')}: nicht jeder Anteil ist angegeben, die gesetzliche Prüfung ist unvollständig.`,
  'problem.no_range_usable': () =>
    'Keine Serie dieses Regals darf heute auf dieses Haar. Zuerst testen oder pflegen.',
};
