import type { why as english } from '../en/why';
import type { Part } from '../types';
import { n, of } from './count';

/** Por qué un bol, un orden o un rechazo es como es. */
export const why: Part<typeof english> = {
  // Un bol.
  'why.natural_share_for_white': (p) =>
    `${of(p, 'share')} % de natural, para cubrir el ${of(p, 'white')} % de canas sin que quede plano.`,
  'why.counter_tone': (p) => `${of(p, 'product')}, ${of(p, 'share')} %, neutraliza el fondo cálido.`,
  'why.developer_for_lift': (p) =>
    `Oxidante de ${of(p, 'strength')}, porque el objetivo es ${n.alturas(of(p, 'levels'))} más claro.`,
  'why.developer_for_white': (p) => `Oxidante de ${of(p, 'strength')}, para que las canas tomen el color.`,
  'why.developer_for_deposit': (p) =>
    `Oxidante de ${of(p, 'strength')}: el color se deposita y casi nada aclara.`,
  'why.warmth_expected': (p) => `Aclarar ${n.alturas(of(p, 'levels'))} deja ver el fondo cálido.`,
  'why.deepen_at_basin': () =>
    'Pocas veces queda demasiado oscuro. Si en el lavacabezas se ve demasiado claro, oscurecerlo allí con un tono sobre tono una altura más oscuro.',
  'why.warming_tone': (p) => `${of(p, 'product')}, ${of(p, 'share')} %, devuelve la calidez que faltaría.`,
  'why.in_packets': (p) => `Alrededor de ${n.mechas(of(p, 'packets'))}, con ${of(p, 'grams')} g en cada una.`,
  'why.beside_packets': () => 'Va entre las mechas en papel mientras actúan; enjuagar todo junto.',
  'why.one_bowl_serves': (p) => `Un solo bol sirve para ${n.zonas(of(p, 'zones'))}.`,
  'why.own_bowl': () => 'Esta zona pide su propio bol.',
  'why.carries_tone': (p) => `${of(p, 'product')}, ${of(p, 'share')} %, da el reflejo del objetivo.`,
  'why.natural_ground': (p) => `${of(p, 'product')}, ${of(p, 'share')} %, es la base natural.`,
  'why.thins': (p) => `${of(p, 'product')}, ${of(p, 'share')} %, diluye el color.`,
  'why.part_of_depth': (p) => `${of(p, 'product')}, ${of(p, 'share')} %, fija la altura.`,
  'why.one_bowl_fewer': (p) =>
    `Bastaría con ${n.boles(of(p, 'bowls'))}, pero quedaría ${n.alturas(of(p, 'worse'))} más lejos del objetivo.`,
  'why.same_mix_later': (p) =>
    `La mezcla del bol ${of(p, 'bowl')} se pone en los largos cuando faltan ${n.minutos(of(p, 'minutes'))}.`,
  'why.fourth_shade_nearer': (p) =>
    `Un cuarto tono y un pesado más fino lo dejan ${n.alturas(of(p, 'levels'))} más cerca; solo se probaron pasos desde el mejor bol de tres tonos en octavos.`,
  'why.grams_nearer': (p) =>
    `Un pesado más fino lo deja ${n.alturas(of(p, 'levels'))} más cerca; solo se probaron pasos desde el mejor bol en octavos.`,
  'why.regrowth_to_lengths': (p) =>
    `Los largos no pueden seguir, así que el crecimiento va hacia ellos. Según el objetivo habría ${n.alturas(of(p, 'levels'))} de diferencia.`,
  'why.builds_up_on_lengths': (p) =>
    `El bol ${of(p, 'bowl')} no va también en los largos: quedarían ${n.alturas(of(p, 'levels'))} demasiado oscuros.`,
  'why.nothing_wished': () => 'Todas las zonas deben quedar como están.',
  'why.no_bowl_may_serve': () => 'Ningún bol de este estante puede ir en sus zonas, así que no se compara.',
  'why.comes_off_early': (p) =>
    `Bol ${of(p, 'bowl')} en ${of(p, 'zone')}: el reloj lo deja actuar ${n.minutos(of(p, 'minutes'))}, no los ${of(p, 'planned')} pedidos. Otra persona, menos zonas a la vez o una mezcla fresca; la previsión cuenta lo que el reloj permite.`,
  'why.stays_too_long': (p) =>
    `Bol ${of(p, 'bowl')} en ${of(p, 'zone')}: se queda ${n.minutos(of(p, 'minutes'))} tras el último toque; su gama permite ${of(p, 'longest')}. Otra persona, menos zonas a la vez, o esta zona más tarde.`,
  'why.leave_as_it_is': () => 'Se queda como está: nada del estante lo acerca al objetivo.',
  // Lo que no se alcanza.
  'why.colour_does_not_lift_colour': () =>
    'El tinte no aclara el tinte: lo teñido primero se decapa o se decolora.',
  'why.lift_limit': () => 'Pide aclarar más de lo que este estante da de una vez en este cabello.',
  'why.depth_out_of_reach': () => 'Ningún tono de este estante oscurece tanto aquí.',
  'why.needs_filler': () =>
    'El cabello decolorado que se oscurece tanto necesita antes una prepigmentación, o queda apagado.',
  'why.warmth_stays': () => 'El fondo cálido que deja ver el aclarado no se puede neutralizar del todo.',
  'why.tone_between_words': () => 'El reflejo se acerca, no llega del todo.',
  'why.tone_out_of_reach': () => 'Este reflejo no se consigue con estos tonos.',
  'why.white_cover': (p) =>
    `Las canas quedan ${n.alturas(of(p, 'levels'))} más claras que el resto y se notarían.`,
  'why.base_too_dark_for_high_lift': () => 'El superaclarante pide una altura natural más clara que esta.',
  'why.high_lift_on_coloured': () =>
    'El superaclarante es para cabello natural, no para cabello teñido ni decolorado.',
  'why.lightened_is_toned': () =>
    'El cabello decolorado se matiza con un oxidante bajo; no se vuelve a aclarar con un tinte.',
  'why.condition_spent': () => 'Este cabello no debería aclararse más hoy. Trátelo y planifique otra visita.',
  'why.minerals_first': () =>
    'Hay minerales del agua en este cabello: quitarlos con un tratamiento quelante antes de cualquier peróxido.',
  'why.metal_test_first': () =>
    'Por su historial puede haber metal: antes de cualquier peróxido va una prueba de metales.',
  'why.range_not_on_scalp': () => 'Una gama queda fuera: no puede tocar el cuero cabelludo.',
  'why.straightened_lately': () => 'Este cabello se alisó hace poco: los oxidantes más altos quedan fuera.',
  'why.failed_stretch': () =>
    'La prueba de elasticidad falló: ahí ni decolorante, ni superaclarante, ni nada de 6 % o más.',
  'why.law': () => 'Un límite legal lo impide.',
  // De dónde viene la duda de una previsión.
  'why.doubt_from_level_reading': (p) =>
    `El ${of(p, 'percent')} % de la incertidumbre en la altura viene de la altura diagnosticada.`,
  'why.doubt_from_white_share': (p) =>
    `El ${of(p, 'percent')} % de la incertidumbre en la altura viene de la parte de canas.`,
  'why.doubt_from_porosity': (p) =>
    `El ${of(p, 'percent')} % de la incertidumbre en la altura viene de la porosidad.`,
  'why.doubt_from_white_look': (p) =>
    `El ${of(p, 'percent')} % de la incertidumbre en la altura viene del color de las canas, que aquí nunca se midió.`,
  'why.doubt_from_lightening': (p) =>
    `El ${of(p, 'percent')} % de la incertidumbre en la altura viene de lo rápido que aclara esta cabeza: lo dice una prueba de mechón.`,
  'why.doubt_from_uptake': (p) =>
    `El ${of(p, 'percent')} % de la incertidumbre en la altura viene de cuánto color toma este cabello: lo dice una prueba de mechón.`,
  'why.doubt_from_blend': (p) =>
    `El ${of(p, 'percent')} % de la incertidumbre en la altura viene de cómo se ven juntos el cabello blanco y el pigmentado.`,
  'why.doubt_from_shade_name': (p) =>
    `El ${of(p, 'percent')} % de la incertidumbre en la altura viene de un tono conocido solo por su nombre: lo dice una muestra.`,
  // Lo que hay que señalar antes de mezclar.
  'why.finding_dark_band': (p) =>
    `${of(p, 'zone')}: una banda ${n.alturas(of(p, 'levels'))} más oscura que lo que la rodea. Dele su propio bol; hoy, mejor dejarla más clara y oscurecerla después.`,
  'why.finding_light_band': (p) =>
    `${of(p, 'zone')}: una banda ${n.alturas(of(p, 'levels'))} más clara que lo que la rodea. Oscurézcala aparte.`,
  'why.finding_hot_regrowth': (p) =>
    `${of(p, 'zone')}: raíz teñida ${n.alturas(of(p, 'levels'))} más clara que los largos. Oscurézcala con el tono de los largos y un oxidante bajo.`,
  'why.finding_uneven_ends': (p) =>
    `${of(p, 'zone')}: puntas que se apartan ${n.alturas(of(p, 'levels'))} de los largos. Deles un bol o un tiempo propios.`,
  'why.finding_green': (p) =>
    `${of(p, 'zone')}: se ve verde. Descarte primero minerales y metal; después un poco de rojo o cobrizo lo neutraliza.`,
  // Caminos en varios pasos.
  'why.later_bowl_decides': () => 'Aquí sigue otro paso: lo que cuenta es el bol de después.',
  'why.route_chelate': (p) => `Quitar los minerales: ${n.minutos(of(p, 'minutes'))}, luego enjuagar bien.`,
  'why.route_soften': (p) =>
    `Mordiente en las canas resistentes: ${of(p, 'strength')}, ${n.minutos(of(p, 'minutes'))}.`,
  'why.route_fill': () => 'Prepigmentar, para que el color tenga un fondo cálido.',
  'why.route_remove': (p) =>
    `Decapar el color viejo: ${n.minutos(of(p, 'minutes'))}, luego enjuagar todo el tiempo que diga el fabricante.`,
  'why.route_lighten': (p) =>
    `Decolorar con ${of(p, 'strength')}, hasta ${n.minutos(of(p, 'minutes'))}. Mirar cada pocos minutos; parar con dolor, calor o si el cabello se estira.`,
  'why.route_needs_visits': (p) =>
    `Lleva ${n.visitas(of(p, 'visits'))}, con ${n.semanas(of(p, 'weeks'))} o más entre una y otra. Revise el cabello antes de cada una.`,
  'why.route_stays_short': () => 'Aun así no se alcanza del todo el objetivo.',
  'why.route_strand_first': () =>
    'Más de un paso añade incertidumbre: pruebe antes todo el camino en un mechón.',
  // Una segunda mirada.
  'why.change_strength': (p) => `Tomar oxidante de ${of(p, 'strength')}.`,
  'why.change_ratio': (p) => `Mezclar 1 : ${of(p, 'ratio')}.`,
  'why.change_minutes': (p) => `Dejarlo ${n.minutos(of(p, 'minutes'))}.`,
  'why.swap_shade': (p) => `Tomar ${of(p, 'by')} en vez de ${of(p, 'product')}.`,
  'why.add_shade': (p) => `Añadir ${of(p, 'share')} % de ${of(p, 'product')}.`,
  'why.drop_shade': (p) => `No poner ${of(p, 'product')}.`,
  'why.shift_shares': (p) => `Poner más de ${of(p, 'product')}: ${of(p, 'share')} % del color.`,
  'why.finish_with': (p) => `Completar lo pesado con ${of(p, 'grams')} g de ${of(p, 'product')}.`,
  'why.weighed_is_lost': (p) =>
    `Bol ${of(p, 'bowl')}: lo pesado (${of(p, 'grams')} g) no se puede completar bien. Empezarlo de nuevo.`,
  'why.another_bowl': () => 'Otro bol se acerca más que cualquier cambio de este.',
  'why.rule_limit': () => 'Un límite de las reglas para este cabello lo impide.',
  'why.stopped_by_rules': () => 'Una regla detiene esta visita: hoy no se mezcla nada de lo pedido.',
  'why.bowls_stopped_by_rules': () => 'Un bol incumple una regla: no hay previsión para él.',
  'why.left_out_for_condition': () => 'Un bol queda fuera: con este reloj dañaría demasiado el cabello.',
  'why.other_maker_skin_test': () =>
    'Color de otro fabricante: antes hace falta una nueva prueba cutánea, como diga el fabricante.',
  'why.nothing_may_replace': () => 'Nada del estante puede ocupar su lugar en este cabello.',
  'why.scalp_lightener_strength': () =>
    'Un decolorante de esta concentración no puede tocar el cuero cabelludo.',
  // El orden del trabajo.
  'why.packets_first': () => 'Primero las mechas en papel: lo de en medio va después.',
  'why.whitest_first': () => 'Primero el cabello más blanco: es el que más tarda.',
  'why.resistant_first': () => 'Primero las canas resistentes: son las que más tardan.',
  'why.after_the_whiter': () => 'Después de las zonas más canosas.',
  'why.areas_of_the_house': () => 'En el orden de zonas de la casa.',
  'why.hairline_last': () => 'El contorno al final.',
  'why.parting_by_parting': () => 'Partición por partición.',
  'why.needs_longest': (p) => `Primero lo que más tarda: ${of(p, 'minutes')} minutos.`,
  'why.needs_less': (p) => `Después, porque bastan ${of(p, 'minutes')} minutos: ${of(p, 'zones')}.`,
  'why.porous_last': () => 'El cabello más poroso después: toma antes el color.',
  'why.time_is_over': () => 'Se cumplió su tiempo.',
  'why.away_from_scalp_first': () =>
    'Primero lo que está lejos del cuero cabelludo: su calor acelera el aclarado.',
  'why.scalp_zone_later': () => 'La zona del cuero cabelludo, más tarde: su calor acelera el aclarado.',
  'why.porous_ends_last': () => 'Las puntas porosas al final: son las que antes toman el color.',
  'why.lengths_after_regrowth': () => 'Los largos después de la raíz.',
  'why.small_mix': () => 'Una mezcla pequeña y fresca: la primera ya estaría pasada.',
  'why.one_basin_time': () => 'Todo lo que toca el cuero cabelludo se enjuaga a la vez.',
  // After the visit.
  'why.after_line_shows': (p) => `La raíz marca una línea tras ${of(p, 'from')} a ${of(p, 'until')} semanas.`,
  'why.after_short_hair_grows_out': (p) =>
    `Un cabello tan corto ya ha crecido tras ${of(p, 'from')} a ${of(p, 'until')} semanas.`,
  'why.after_fades_softly': (p) => `Se desvanece suavemente en ${of(p, 'from')} a ${of(p, 'until')} semanas.`,
  'why.after_blended_not_covered': (p) =>
    `Las canas se difuminan, no se cubren; se desvanece suavemente en ${of(p, 'from')} a ${of(p, 'until')} semanas.`,
  'why.after_red_fades_first': (p) =>
    `El rojo se va primero: refrescar tras ${of(p, 'from')} a ${of(p, 'until')} semanas.`,
  'why.after_copper_fades': (p) =>
    `El cobrizo se apaga: un tono sobre tono tras ${of(p, 'from')} a ${of(p, 'until')} semanas.`,
  'why.after_toner_lasts': (p) =>
    `Un matiz dura de ${of(p, 'from')} a ${of(p, 'until')} semanas, no para siempre.`,
  'why.after_shadow_fades': (p) =>
    `La sombra se desvanece en ${of(p, 'from')} a ${of(p, 'until')} semanas y se vuelve cálida.`,
  'why.after_direct_fades': (p) =>
    `El color directo se va en ocho a diez lavados, de ${of(p, 'from')} a ${of(p, 'until')} semanas.`,
  'why.after_direct_stains': () => 'Mancha la ropa y la piel, y cuesta volver a quitarlo.',
  'why.after_ends_take_and_fade': () => 'Las puntas porosas toman más de golpe y se apagan antes.',
  'why.after_lighter_needs_more': () => 'Volver a aclarar pedirá un decapado o mechas.',
  'why.after_growth_may_glow': () => 'La raíz puede verse más viva que los largos.',
  'why.after_warmth_shows': () => 'Donde sale el color viejo se verá el fondo cálido.',
  'why.after_darkens_back': () => 'Puede volver a oscurecer en unos días.',
  'why.after_half_way_is_good': () => 'Llegar a la mitad ya es un buen resultado hoy.',
  'why.after_warmth_stays': () => 'Queda algo de calidez: el color solo aclara en cálido.',
  'why.after_curl_may_loosen': () => 'El rizo puede aflojarse un poco.',
  'why.after_no_more_home_colour': () => 'Nada de color en casa hasta terminar esto.',
  'why.after_metal_comes_back': () =>
    'El metal del agua vuelve: mojar antes el cabello, llevar gorro y un lavado quelante cada una o dos semanas.',
  'why.after_violet_on_yellow_dulls': () =>
    'El violeta puro sobre cabello amarillo queda apagado: violeta rojizo, o aclarar antes.',
  'why.after_wash_and_wait': () =>
    'Solo un poco oscuro y reciente: lavados clarificantes y mirar de nuevo en una o dos semanas.',
  'why.after_signs_wash_off': () =>
    'Picor, rojez o hinchazón en el punto de prueba o en otro sitio: lavar y buscar ayuda médica. Puede aparecer días después.',
};
