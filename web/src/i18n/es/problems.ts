import type { problems as english } from '../en/problems';
import type { Part } from '../types';
import { n, of } from './count';

/** Qué está mal y qué hacer, para cada código que puede llegar a una pantalla. */
export const problems: Part<typeof english> = {
  'problem.unknown': (code) => `Aquí algo no está bien (${code}). Comunique esta palabra, por favor.`,
  'problem.out_of_range': (p) => `${of(p, 'value')} no es posible: de ${of(p, 'min')} a ${of(p, 'max')}.`,
  'problem.level_out_of_range': (p) =>
    `La altura ${of(p, 'value')} no existe: las alturas van de ${p.min ?? '1'} a ${p.max ?? '10'}.`,
  'problem.share_out_of_range': (p) => `Una parte de ${of(p, 'value')} no es posible: de 0 a 100 %.`,
  'problem.porosity_out_of_range': (p) => `La porosidad ${of(p, 'value')} no está en la escala.`,
  'problem.resistance_out_of_range': (p) => `La resistencia ${of(p, 'value')} no está en la escala.`,
  'problem.length_out_of_range': (p) => `Un largo de ${of(p, 'value')} cm no es posible.`,
  'problem.density_out_of_range': (p) =>
    `Una densidad de ${n.cabellos(of(p, 'value'))} por cm² no es posible.`,
  'problem.diameter_out_of_range': (p) => `Un grosor de cabello de ${of(p, 'value')} µm no es posible.`,
  'problem.scalp_area_out_of_range': (p) =>
    `Una superficie de cuero cabelludo de ${of(p, 'value')} cm² no es posible.`,
  'problem.weeks_out_of_range': (p) => `Hace ${n.semanas(of(p, 'value'))}: no es posible.`,
  'problem.stretch_out_of_range': (p) => `Un estiramiento de ${of(p, 'value')} % no es posible.`,
  'problem.doubt_out_of_range': (p) => `Una incertidumbre de ${of(p, 'value')} no es posible.`,
  'problem.woven_share_out_of_range': (p) =>
    `Las mechas en papel no pueden llevarse una parte de ${of(p, 'value')} de una zona (de ${of(p, 'min')} a ${of(p, 'max')}).`,
  'problem.woven_width_out_of_range': (p) =>
    `Una mecha en papel de ${of(p, 'value')} mm de ancho no es posible.`,
  'problem.woven_from_no_area': (p) =>
    `${of(p, 'area')}: las mechas en papel tienen que salir de una zona de esta cabeza que no sea ya de mechas.`,
  'problem.woven_takes_all': (p) =>
    `Las mechas en papel se llevan todo el cabello de ${of(p, 'area')}. Deje algo entre ellas.`,
  'problem.aim_twice': (p) => `Hay dos objetivos para ${of(p, 'zone')}. Deje solo uno.`,
  'problem.shares_do_not_add_up': (p) =>
    `Las partes de los mechones suman ${of(p, 'sum')}, no el total. Cambie una de ellas.`,
  'problem.spans_overlap': (p) =>
    `Un tramo empieza en ${of(p, 'from')} cm, antes de que acabe el anterior (${of(p, 'before')} cm).`,
  'problem.span_has_no_length': () => 'Este tramo no tiene largo. Mueva el punto donde acaba.',
  'problem.zone_has_no_fibres': () => 'Este tramo aún no tiene diagnóstico.',
  'problem.area_has_no_spans': (p) => `${of(p, 'area')} no tiene ningún tramo. Añada uno o quite la zona.`,
  'problem.head_has_no_areas': () => 'La cabeza aún no tiene ninguna zona. Añada una.',
  'problem.too_many_areas': (p) => `Son más zonas de las que se pueden manejar (${of(p, 'max')}).`,
  'problem.head_too_fine': (p) =>
    `Son más tipos de cabello de los que se pueden manejar (${of(p, 'max')}). Junte los tramos con el mismo diagnóstico.`,
  'problem.visit_handed_in': (p) =>
    `Se cerró el ${of(p, 'at').slice(0, 10)} y ya no se puede cambiar. Añada el error como corrección.`,
  'problem.visit_erased': () => 'Esta visita se borró junto con su clienta o cliente.',
  'problem.client_not_found': () => 'Esta persona ya no está. Abra otra de la lista.',
  'problem.client_same_name': (p) =>
    `Ya hay alguien con el nombre ${of(p, 'name')}. Diga si es la misma persona.`,
  'problem.redo_unknown': () => 'La visita anterior no está en el historial. Elija otra.',
  'problem.unknown_fact_kind': (p) => `«${of(p, 'kind')}» no se puede anotar. Cargue la página de nuevo.`,
  'problem.fact_version': () => 'Esta página es más antigua que el programa del salón. Cárguela de nuevo.',
  'problem.bad_instant': (p) => `«${of(p, 'text')}» no es una hora.`,
  'problem.left_empty': () => 'Aquí falta todavía un texto.',
  'problem.not_signed': () => 'Falta la firma. Dibújela o escríbala.',
  'problem.price_range': () => 'El precio termina por debajo de donde empieza. Ponga primero el más bajo.',
  'problem.date_range': () => 'Las fechas terminan antes de empezar. Ponga primero la más temprana.',
  'problem.busy': () => 'Se está calculando demasiado a la vez. Pregunte de nuevo en un momento.',
  'problem.given_up': () => 'El cálculo se abandonó. Pregunte de nuevo.',
  'problem.out_of_time': () => 'No hubo respuesta en el tiempo dado. Dé más tiempo o junte zonas.',
  'problem.too_many_scenarios': (p) =>
    `Son más escenarios de los que permite esta cabeza (${of(p, 'max')}). Pida menos o junte tramos.`,
  'problem.name_missing': () => 'Falta un nombre.',
  'problem.name_used_twice': (p) => `El nombre «${p.name ?? '?'}» se usa dos veces. Cambie uno de los dos.`,
  'problem.bad_date': (p) => `«${p.text ?? '?'}» no es un día. Escriba día, mes y año.`,
  'problem.too_long': (p) => `Este texto es demasiado largo (${n.letras(of(p, 'max'))} como mucho).`,
  'problem.control_character': () => 'Este texto contiene un carácter que no se puede escribir.',
  'problem.aim_needs_one': () =>
    'Dé un solo objetivo para esta zona: un tono, una altura con su reflejo o un color.',
  'problem.second_tone_needs_level': () =>
    'Un segundo reflejo necesita una altura. Indique altura y reflejos juntos.',
  'problem.shadow_needs_lengths': (p) =>
    `Debajo de ${of(p, 'zone')} no hay cabello con el que hacer sombra. Dé a esta zona su propio objetivo.`,
  'problem.aim_missing': (p) => `Aún sin objetivo para ${of(p, 'zone')}. Elija uno o déjelo como está.`,
  'problem.unknown_shade': (p) => `El tono ${of(p, 'shade')} no está en este estante. Elija otro.`,
  'problem.unknown_zone': (p) => `${of(p, 'zone')} ya no está en esta cabeza. Quite su objetivo.`,
  'problem.unknown_product': (p) => `${of(p, 'product')} no está en este estante. Elija otro producto.`,
  'problem.swatch_missing': (p) =>
    `${of(p, 'product')} figura como medido y no tiene muestra. Dé la muestra, o solo el nombre.`,
  'problem.swatch_besides_name': (p) =>
    `${of(p, 'product')} figura como conocido solo por su nombre y tiene una muestra. Deje uno de los dos.`,
  'problem.swatch_hair_missing': (p) =>
    `${of(p, 'product')} se midió en un cabello indicado, y falta indicarlo. Dé su altura.`,
  'problem.swatch_hair_besides_white': (p) =>
    `${of(p, 'product')} figura como medido en cabello blanco e indica otro. Deje uno de los dos.`,
  'problem.swatch_lighter_than_its_hair': (p) =>
    `La muestra de ${of(p, 'product')} es más clara de lo que sería su cabello sin color. Corrija el cabello, el proceso o la muestra.`,
  'problem.name_is_no_colour': (p) =>
    `${of(p, 'product')} no tiene muestra, y su nombre no dice ningún color. Dé una altura y un reflejo, o una muestra.`,
  'problem.known_by_without_colour': (p) =>
    `${of(p, 'product')} no da color a un bol. Quite la muestra y lo que dice de ella.`,
  'problem.unknown_range': (p) => `La gama ${of(p, 'range')} no está en este estante.`,
  'problem.unknown_bowl': (p) => `El bol ${of(p, 'bowl')} no es parte de este plan.`,
  'problem.lab_out_of_range': () => 'Este color queda fuera de lo que el cabello puede mostrar.',
  'problem.grams_out_of_range': (p) => `${of(p, 'grams')} g no es una cantidad que se pueda pesar.`,
  'problem.empty_bowl': () => 'No hay nada en este bol.',
  'problem.nothing_in_the_bowl': () => 'No hay nada en este bol.',
  'problem.bowl_passes_rule': (p) => `El bol ${of(p, 'bowl')} incumple una regla. Cámbielo o déjelo.`,
  'problem.unknown_rule': (p) => `No hay ninguna regla «${of(p, 'id')}». Quítela de las reglas de la casa.`,
  'problem.rule_not_of_the_house': (p) =>
    `La regla «${of(p, 'id')}» es ley o mínimo: una casa no puede cambiarla. Quítela.`,
  'problem.rule_value_out_of_range': (p) =>
    `Regla «${of(p, 'id')}»: una casa puede fijar de ${of(p, 'min')} a ${of(p, 'max')}.`,
  'problem.unknown_rule_figure': (p) =>
    `La regla «${of(p, 'id')}» no tiene la cifra «${of(p, 'figure')}». Quítela.`,
  'problem.not_begun': () => 'La visita no ha empezado: no hay reloj.',
  'problem.unknown_task': (p) => `El reloj no conoce esta tarea: ${of(p, 'task')}.`,
  'problem.already_on': (p) => `Ya está en el cabello: ${of(p, 'task')}.`,
  'problem.nobody_can': (p) => `Nadie del equipo puede hacer esto: ${of(p, 'task')}. Añada a otra persona.`,
  'problem.clock_breaks': (p) =>
    `El reloj no cuadra: ${of(p, 'zone')} llevaría el producto ${of(p, 'minutes')} min de más. Ayudaría otra persona, boles más pequeños o que actúe menos tiempo.`,
  'problem.development_window_too_short': () =>
    'Aplicar lleva más tiempo del que el producto puede quedar puesto.',
  'problem.mix_life_too_short': () =>
    'Aplicar lleva más tiempo del que dura la mezcla. Planifique mezclas más pequeñas.',
  'problem.leaves_too_late': () => 'La visita acabaría más tarde de lo acordado.',
  'problem.search_stopped': () => 'No se compararon todos los órdenes de trabajo.',
  'problem.no_wish': () => 'No hay ningún objetivo con el que juzgar estos boles.',
  'problem.range_gives_no_colour': () => 'Esa gama no da color por sí sola.',
  'problem.no_bowls': () => 'No hay ningún bol para el que planificar el tiempo.',
  'problem.unknown_key': (p) => `La visita contiene algo desconocido: ${of(p, 'key')}.`,
  'problem.missing_key': (p) => `Falta algo: ${of(p, 'key')}.`,
  'problem.wrong_type': (p) => `Se esperaba ${of(p, 'expected')}, se encontró ${of(p, 'found')}.`,
  'problem.unknown_word': (p) => `«${p.word ?? '?'}» no es una palabra conocida aquí.`,
  'problem.unknown_name': (p) => `Este salón no conoce «${p.name ?? '?'}».`,
  'problem.visit_not_found': () => 'Esta visita ya no está. Abra una de la lista.',
  'problem.visit_changed_elsewhere': () =>
    'Entretanto alguien guardó esta visita; no se ha sobrescrito nada.',
  'problem.entry_id_taken': () => 'Con este identificador se guardó otra cosa; no se ha sobrescrito nada.',
  'problem.not_an_id': () => 'Este guardado no tiene un identificador válido. Cargue la página de nuevo.',
  'problem.store_unavailable': () =>
    'El archivo del salón no se puede escribir. Mire el disco; hasta ahora no se ha perdido nada.',
  'problem.store_moved': () =>
    'El archivo del salón se movió, se borró o se cambió. Ya no se guarda nada: pare el servidor, devuelva el archivo y empiece de nuevo.',
  'problem.store_damaged': () =>
    'El archivo del salón está dañado. Pare el servidor y ponga la última copia en su lugar.',
  'problem.store_foreign': () =>
    'El archivo del salón no es de los que escribe Strandline. Pare el servidor y ponga la última copia en su lugar.',
  'problem.entry_broken': () =>
    'Una entrada del archivo del salón se cambió después de escribirse. Compare con una copia anterior.',
  'problem.store_erased': () => 'Esto se borró del salón; no se le puede añadir nada.',
  'problem.store_newer': () =>
    'El archivo del salón lo escribió un programa más nuevo. Arranque ese programa.',
  'problem.stock_short': (p) => `${of(p, 'product')}: no hay bastante en el estante.`,
  'problem.band': (p) =>
    `Una banda: ${of(p, 'lighter')} queda ${n.alturas(of(p, 'levels'))} más claro que ${of(p, 'darker')}, donde se juntan.`,
  'problem.band_wished': (p) =>
    `Como se quiere, ${of(p, 'lighter')} queda ${n.alturas(of(p, 'levels'))} más claro que ${of(p, 'darker')}.`,
  'problem.shared_for_stock': (p) =>
    `${of(p, 'product')}: solo ${of(p, 'grams')} g en el estante, así que no todos los boles lo llevan.`,
  'problem.left_out_for_stock': (p) =>
    `${of(p, 'product')} queda fuera: solo ${of(p, 'grams')} g en el estante.`,
  'problem.nothing_to_apply': () => 'No hay nada que poner en el reloj. Planifique al menos un bol.',
  'problem.longer_than_a_day': () => 'Esto dura más de un día. Corrija los minutos.',
  'problem.not_minutes': () => 'Los minutos deben ser 0 o más.',
  'problem.target_below_minimum': () =>
    'El tiempo previsto es más corto que el tiempo mínimo de exposición de la gama.',
  'problem.too_many_applications': () =>
    'Demasiadas aplicaciones para un solo reloj. Una las zonas que llevan el mismo bol.',
  'problem.too_many': (p) => `Demasiadas entradas aquí (${of(p, 'max')} como mucho).`,
  'problem.document_too_large': () =>
    'La visita ha crecido más de lo que se puede leer. Quite zonas o tramos.',
  'problem.unknown_schema': () =>
    'El servidor espera otro tipo de visita. Cargue la versión más nueva de esta aplicación.',
  'problem.host_not_allowed': () => 'El servidor no responde en esta dirección. Ábralo en la que él indica.',
  'problem.origin_not_allowed': () => 'Esta página viene de otro sitio; el servidor rechaza sus cambios.',
  'problem.method_not_allowed': () =>
    'Esta aplicación y el servidor no encajan. Cargue la versión más nueva de esta aplicación.',
  'problem.bad_request': () => 'El servidor no pudo leer la petición. Pruebe de nuevo.',
  'problem.memory_short': () =>
    'Ahora no hay memoria bastante para esto; lo guardado sigue ahí. Cierre otros programas y pruebe de nuevo.',
  'problem.internal': () =>
    'El servidor falló en esto; lo guardado sigue ahí. Mire su registro y pruebe de nuevo.',
  'problem.zone_in_two_bowls': (p) =>
    `${of(p, 'zone')} está en dos boles de un mismo paso. Déjela en uno de ellos o pase al paso siguiente el bol que va después.`,
  'problem.weighed_out_of_range': (p) =>
    `No puede haber ${of(p, 'value')} g en el bol: lleva como mucho ${of(p, 'most')} g de esto.`,
  'problem.minutes_out_of_range': (p) =>
    `${n.minutos(of(p, 'value'))} no puede ser: de ${of(p, 'min')} a ${of(p, 'max')}.`,
  'problem.shelf_is_empty': () => 'El estante no tiene productos. Añada primero los del salón.',
  'problem.shelf_too_large': (p) => `El estante tiene más de ${n.productos(of(p, 'max'))}.`,
  'problem.not_an_amount': () => 'Una cantidad debe ser un número de 0 o más.',
  'problem.too_many_people': () => 'Son demasiadas personas para una visita.',
  'problem.not_found': () => 'Esto ya no está.',
  'problem.answer_not_json': () =>
    'El servidor respondió con algo ilegible. Arránquelo de nuevo y vuelva a probar.',
  // Lo que avisa o detiene.
  'problem.read_on_dry_hair': () => 'Diagnóstico en cabello seco, junto a las muestras del salón.',
  'problem.history_unknown_test_first': () =>
    'El historial es desconocido: haga las pruebas de metales y de mechón antes de cualquier peróxido.',
  'problem.failed_stretch': () =>
    'Mojado, el cabello no recuperó: aquí ni decolorante, ni superaclarante, ni nada de 6 % o más.',
  'problem.extension_strand_first': () =>
    'Extensiones: aquí no se afirma nada sin una prueba en uno de sus mechones.',
  'problem.two_makers_in_one_bowl': (p) =>
    `${of(p, 'product')} es de otro fabricante. Nunca dos fabricantes en un bol.`,
  'problem.ratio_not_of_range': (p) =>
    `Bol ${of(p, 'bowl')}: la gama no permite la proporción 1 : ${of(p, 'ratio')}. Mezcle como dicen sus instrucciones.`,
  'problem.developer_not_of_range': (p) =>
    `Bol ${of(p, 'bowl')}: la gama no permite oxidante de ${of(p, 'percent')} %. Use una concentración que ella indique.`,
  'problem.longer_than_range_allows': (p) =>
    `Bol ${of(p, 'bowl')}: ${of(p, 'minutes')} min es más de lo que la gama permite (${of(p, 'max')}).`,
  'problem.two_ranges_in_one_bowl': (p) =>
    `Bol ${of(p, 'bowl')}: ${of(p, 'product')} es de otra gama. Mezcle gamas solo donde las instrucciones del fabricante lo permitan.`,
  'problem.developer_alone': (p) => `El bol ${of(p, 'bowl')} solo tiene oxidante. Añada un tono.`,
  'problem.over_legal_limit': (p) =>
    `El bol ${of(p, 'bowl')} pasa de un límite legal. No lo use; cambie sus productos hasta que esté dentro.`,
  'problem.not_permitted_use': (p) =>
    `El bol ${of(p, 'bowl')} contiene una sustancia no permitida para este uso. No lo use.`,
  'problem.percentages_unknown': (p) =>
    `Bol ${of(p, 'bowl')}: no se declaran todos los porcentajes, así que la comprobación legal está incompleta.`,
  'problem.no_range_usable': () =>
    'Ninguna gama de este estante puede usarse hoy en este cabello. Antes, probar o tratar.',
};
