import { n } from './count';

type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => (p[key] ?? '?').replace(/^(-?\d+)\.(\d+)$/, '$1,$2');

export const problems = {
  'problem.unknown': (code: string) => `Quelque chose ne va pas ici (${code}). Merci de signaler ce mot.`,
  'problem.out_of_range': (p: P) =>
    `${of(p, 'value')} est impossible : de ${of(p, 'min')} à ${of(p, 'max')}.`,
  'problem.level_out_of_range': (p: P) =>
    `La hauteur ${of(p, 'value')} n’existe pas : de ${p.min ?? '1'} à ${p.max ?? '10'}.`,
  'problem.share_out_of_range': (p: P) => `Une part de ${of(p, 'value')} est impossible : de 0 à 100 %.`,
  'problem.porosity_out_of_range': (p: P) => `Porosité ${of(p, 'value')} hors de l’échelle.`,
  'problem.resistance_out_of_range': (p: P) => `Résistance ${of(p, 'value')} hors de l’échelle.`,
  'problem.length_out_of_range': (p: P) => `Une longueur de ${of(p, 'value')} cm est impossible.`,
  'problem.density_out_of_range': (p: P) =>
    `Une densité de ${n.cheveux(of(p, 'value'))} par cm² est impossible.`,
  'problem.diameter_out_of_range': (p: P) => `Une épaisseur de ${of(p, 'value')} µm est impossible.`,
  'problem.scalp_area_out_of_range': (p: P) => `Une surface de ${of(p, 'value')} cm² est impossible.`,
  'problem.weeks_out_of_range': (p: P) => `Il y a ${n.semaines(of(p, 'value'))} : impossible.`,
  'problem.stretch_out_of_range': (p: P) => `Un étirement de ${of(p, 'value')} % est impossible.`,
  'problem.doubt_out_of_range': (p: P) => `Une incertitude de ${of(p, 'value')} est impossible.`,
  'problem.woven_share_out_of_range': (p: P) =>
    `Les papillotes ne peuvent pas prendre une part de ${of(p, 'value')} d’une zone (${of(p, 'min')} à ${of(p, 'max')}).`,
  'problem.woven_width_out_of_range': (p: P) => `Une papillote de ${of(p, 'value')} mm n’est pas possible.`,
  'problem.woven_from_no_area': (p: P) =>
    `${of(p, 'area')} : les papillotes se prennent dans une zone de cette tête qui n’est pas elle-même en papillotes.`,
  'problem.woven_takes_all': (p: P) =>
    `Les papillotes prennent tous les cheveux de ${of(p, 'area')}. En laisser entre elles.`,
  'problem.aim_twice': (p: P) => `Il y a deux objectifs pour ${of(p, 'zone')}. N’en garder qu’un.`,
  'problem.shares_do_not_add_up': (p: P) =>
    `Les parts des mèches font ${of(p, 'sum')} et non le tout. En changer une.`,
  'problem.spans_overlap': (p: P) =>
    `Une portion commence à ${of(p, 'from')} cm, avant la fin de la précédente (${of(p, 'before')} cm).`,
  'problem.span_has_no_length': () => 'Cette portion n’a pas de longueur. Déplacer sa fin.',
  'problem.zone_has_no_fibres': () => 'Le diagnostic de cette portion manque encore.',
  'problem.area_has_no_spans': (p: P) =>
    `${of(p, 'area')} n’a aucune portion. En ajouter une ou retirer la zone.`,
  'problem.head_has_no_areas': () => 'La tête n’a pas encore de zone. En ajouter une.',
  'problem.too_many_areas': (p: P) => `Trop de zones pour travailler (${of(p, 'max')}).`,
  'problem.head_too_fine': (p: P) =>
    `Trop de sortes de cheveux pour travailler (${of(p, 'max')}). Réunir les portions au même diagnostic.`,
  'problem.visit_handed_in': (p: P) =>
    `Elle a été clôturée le ${of(p, 'at').slice(0, 10)} et ne peut plus être modifiée. Ajouter l’erreur comme correction.`,
  'problem.visit_erased': () => 'Cette visite a été effacée avec la personne concernée.',
  'problem.client_not_found': () => 'Cette personne n’est plus là. En ouvrir une autre dans la liste.',
  'problem.client_same_name': (p: P) =>
    `Il y a déjà quelqu’un du nom de ${of(p, 'name')}. Dire si c’est la même personne.`,
  'problem.redo_unknown': () => 'La visite précédente n’est pas dans l’historique. En choisir une autre.',
  'problem.unknown_fact_kind': (p: P) => `« ${of(p, 'kind')} » ne peut pas être noté. Recharger la page.`,
  'problem.fact_version': () => 'Cette page est plus ancienne que le programme du salon. La recharger.',
  'problem.bad_instant': (p: P) => `« ${of(p, 'text')} » n’est pas une heure.`,
  'problem.left_empty': () => 'Il manque encore un texte ici.',
  'problem.not_signed': () => 'La signature manque encore. La dessiner ou la taper.',
  'problem.price_range': () => 'Le prix finit plus bas qu’il ne commence. Mettre le plus bas d’abord.',
  'problem.date_range': () => 'Les dates finissent avant de commencer. Mettre la première d’abord.',
  'problem.busy': () => 'Trop de calculs en même temps. Redemander dans un instant.',
  'problem.given_up': () => 'Le calcul a été abandonné. Redemander.',
  'problem.out_of_time': () =>
    'Pas de réponse dans le temps donné. Donner plus de temps ou réunir des zones.',
  'problem.too_many_scenarios': (p: P) =>
    `Trop de scénarios pour cette tête (${of(p, 'max')}). En demander moins ou réunir des portions.`,
  'problem.name_missing': () => 'Il manque un nom.',
  'problem.name_used_twice': (p: P) => `Le nom « ${of(p, 'name')} » sert deux fois. En changer un.`,
  'problem.bad_date': (p: P) => `« ${of(p, 'text')} » n’est pas un jour. Écrire jour, mois et année.`,
  'problem.too_long': (p: P) => `Ce texte est trop long (${n.lettres(of(p, 'max'))} au plus).`,
  'problem.control_character': () => 'Ce texte contient un caractère qui ne s’écrit pas.',
  'problem.aim_needs_one': () =>
    'Donner un objectif : une nuance, une hauteur avec son reflet, ou une couleur.',
  'problem.second_tone_needs_level': () =>
    'Un second reflet demande une hauteur. Indiquer hauteur et reflets ensemble.',
  'problem.shadow_needs_lengths': (p: P) =>
    `Il n’y a pas de cheveux sous ${of(p, 'zone')} à ombrer. Donnez-lui un objectif propre.`,
  'problem.aim_missing': (p: P) =>
    `Pas encore d’objectif pour ${of(p, 'zone')}. En choisir un, ou laisser tel quel.`,
  'problem.unknown_shade': (p: P) =>
    `La nuance ${of(p, 'shade')} n’est pas sur cette étagère. En choisir une autre.`,
  'problem.unknown_zone': (p: P) => `${of(p, 'zone')} n’est plus sur cette tête. Retirer son objectif.`,
  'problem.unknown_product': (p: P) =>
    `${of(p, 'product')} n’est pas sur cette étagère. Choisir autre chose.`,
  'problem.swatch_missing': (p: P) =>
    `${of(p, 'product')} est dite mesurée et n’a pas d’échantillon. Donner l’échantillon, ou le nom seul.`,
  'problem.swatch_besides_name': (p: P) =>
    `${of(p, 'product')} est dite connue par son seul nom et a un échantillon. Garder l’un des deux.`,
  'problem.swatch_hair_missing': (p: P) =>
    `${of(p, 'product')} a été mesurée sur des cheveux précisés, et ils ne le sont pas. Donner leur hauteur.`,
  'problem.swatch_hair_besides_white': (p: P) =>
    `${of(p, 'product')} est dite mesurée sur cheveux blancs et en précise d’autres. Garder l’un des deux.`,
  'problem.swatch_lighter_than_its_hair': (p: P) =>
    `L’échantillon de ${of(p, 'product')} est plus clair que ses cheveux ne le seraient sans couleur. Corriger les cheveux, le procédé ou l’échantillon.`,
  'problem.name_is_no_colour': (p: P) =>
    `${of(p, 'product')} n’a pas d’échantillon, et son nom ne dit pas de couleur. Donner une hauteur et un reflet, ou un échantillon.`,
  'problem.known_by_without_colour': (p: P) =>
    `${of(p, 'product')} ne donne pas de couleur à un bol. Enlever l’échantillon et ce qui la fait connaître.`,
  'problem.unknown_range': (p: P) => `La gamme ${of(p, 'range')} n’est pas sur cette étagère.`,
  'problem.unknown_bowl': (p: P) => `Le bol ${of(p, 'bowl')} ne fait pas partie de ce plan.`,
  'problem.lab_out_of_range': () => 'Cette couleur est hors de ce que des cheveux peuvent montrer.',
  'problem.grams_out_of_range': (p: P) => `${of(p, 'grams')} g ne se pèse pas.`,
  'problem.bowl_passes_rule': (p: P) =>
    `Le bol ${of(p, 'bowl')} enfreint une règle. Le changer ou y renoncer.`,
  'problem.unknown_rule': (p: P) =>
    `Il n’y a pas de règle « ${of(p, 'id')} ». La retirer des règles de la maison.`,
  'problem.rule_not_of_the_house': (p: P) =>
    `La règle « ${of(p, 'id')} » est une loi ou un minimum : une maison ne peut la changer. La retirer.`,
  'problem.rule_value_out_of_range': (p: P) =>
    `Règle « ${of(p, 'id')} » : une maison peut choisir de ${of(p, 'min')} à ${of(p, 'max')}.`,
  'problem.unknown_rule_figure': (p: P) =>
    `La règle « ${of(p, 'id')} » n’a pas de chiffre « ${of(p, 'figure')} ». Le retirer.`,
  'problem.empty_bowl': () => 'Il n’y a rien dans ce bol.',
  'problem.nothing_in_the_bowl': () => 'Il n’y a rien dans ce bol.',
  'problem.two_makers_in_one_bowl': (p: P) =>
    `${of(p, 'product')} vient d’un autre fabricant. Deux fabricants ne partagent jamais un bol.`,
  'problem.read_on_dry_hair': () => 'Diagnostic sur cheveux secs, à côté du nuancier du salon.',
  'problem.history_unknown_test_first': () =>
    'L’historique est inconnu : test aux sels métalliques et mèche d’essai avant tout oxydant.',
  'problem.failed_stretch': () =>
    'Mouillé, le cheveu ne revient pas : ici ni décolorant, ni super-éclaircissant, ni 6 % ou plus.',
  'problem.extension_strand_first': () =>
    'Extensions : rien n’est annoncé sans essai sur une de leurs mèches.',
  'problem.not_begun': () => 'La visite n’a pas commencé : il n’y a pas de minutage.',
  'problem.unknown_task': (p: P) => `Le minutage ne connaît pas cette tâche : ${of(p, 'task')}.`,
  'problem.already_on': (p: P) => `C’est déjà sur les cheveux : ${of(p, 'task')}.`,
  'problem.nobody_can': (p: P) =>
    `Personne dans l’équipe ne peut le faire : ${of(p, 'task')}. Ajouter quelqu’un.`,
  'problem.clock_breaks': (p: P) =>
    `Le minutage ne tient pas : ${p.zone ?? '?'} resterait ${p.minutes ?? '?'} min de trop. Une deuxième personne, des bols plus petits ou une pose plus courte aideraient.`,
  'problem.development_window_too_short': () => 'L’application dure plus que le temps de pose permis.',
  'problem.mix_life_too_short': () =>
    'L’application dure plus que le mélange ne tient. Prévoir des mélanges plus petits.',
  'problem.leaves_too_late': () => 'La visite finirait plus tard que convenu.',
  'problem.search_stopped': () => 'Tous les ordres de travail n’ont pas été comparés.',
  'problem.no_wish': () => 'Il n’y a aucun objectif pour juger ces bols.',
  'problem.range_gives_no_colour': () => 'Cette gamme ne donne pas de couleur à elle seule.',
  'problem.no_bowls': () => 'Il n’y a aucun bol à placer dans le minutage.',
  'problem.unknown_key': (p: P) => `La visite contient quelque chose d’inconnu : ${of(p, 'key')}.`,
  'problem.missing_key': (p: P) => `Il manque quelque chose : ${of(p, 'key')}.`,
  'problem.wrong_type': (p: P) => `Attendu ${of(p, 'expected')}, trouvé ${of(p, 'found')}.`,
  'problem.unknown_word': (p: P) => `« ${of(p, 'word')} » n’est pas un mot connu ici.`,
  'problem.unknown_name': (p: P) => `« ${of(p, 'name')} » n’est pas connu de ce salon.`,
  'problem.visit_not_found': () => 'Cette visite n’existe plus. En ouvrir une dans la liste.',
  'problem.visit_changed_elsewhere': () =>
    'Quelqu’un a enregistré cette visite entre-temps ; rien n’a été écrasé.',
  'problem.entry_id_taken': () => 'Autre chose a été enregistré sous cet identifiant ; rien n’a été écrasé.',
  'problem.not_an_id': () => 'Cet enregistrement n’a pas d’identifiant valable. Recharger la page.',
  'problem.store_unavailable': () =>
    'Le fichier du salon ne peut pas être écrit. Vérifier le disque ; rien n’est perdu pour l’instant.',
  'problem.store_moved': () =>
    'Le fichier du salon a été déplacé, effacé ou remplacé. Plus rien n’est enregistré : arrêter le serveur, remettre le fichier, relancer.',
  'problem.store_damaged': () =>
    'Le fichier du salon est abîmé. Arrêter le serveur et remettre la dernière copie.',
  'problem.store_foreign': () =>
    'Le fichier du salon n’a pas été écrit par Strandline. Arrêter le serveur et remettre la dernière copie.',
  'problem.entry_broken': () =>
    'Une entrée du fichier du salon a été modifiée après coup. Comparer avec une copie plus ancienne.',
  'problem.store_erased': () => 'Ceci a été effacé du salon ; rien ne peut y être ajouté.',
  'problem.store_newer': () => 'Le fichier du salon vient d’un programme plus récent. Lancer le plus récent.',
  'problem.percentages_unknown': (p: P) =>
    `Bol ${of(p, 'bowl')} : tous les pourcentages ne sont pas déclarés, le contrôle légal est incomplet.`,
  'problem.stock_short': (p: P) => `${of(p, 'product')} : pas assez sur l’étagère.`,
  'problem.band': (p: P) =>
    `Une barre : ${of(p, 'lighter')} sera plus clair que ${of(p, 'darker')} de ${n.tons(of(p, 'levels'))}, là où ils se touchent.`,
  'problem.band_wished': (p: P) =>
    `Comme voulu, ${of(p, 'lighter')} sera plus clair que ${of(p, 'darker')} de ${n.tons(of(p, 'levels'))}.`,
  'problem.shared_for_stock': (p: P) =>
    `${of(p, 'product')} : seulement ${of(p, 'grams')} g sur l’étagère, donc pas pour tous les bols.`,
  'problem.left_out_for_stock': (p: P) =>
    `${of(p, 'product')} est écarté : seulement ${of(p, 'grams')} g sur l’étagère.`,
  'problem.no_range_usable': () =>
    'Aucune gamme de cette étagère ne peut servir aujourd’hui sur ces cheveux. Tester ou soigner d’abord.',
  'problem.nothing_to_apply': () => 'Rien à mettre dans le minutage. Prévoir au moins un bol.',
  'problem.longer_than_a_day': () => 'Cela dure plus d’un jour. Corriger les minutes.',
  'problem.not_minutes': () => 'Les minutes doivent être 0 ou plus.',
  'problem.target_below_minimum': () =>
    'Le temps prévu est plus court que la pose la plus courte de la gamme.',
  'problem.too_many_applications': () =>
    'Trop d’applications pour un seul minutage. Réunir les zones qui reçoivent le même bol.',
  'problem.too_many': (p: P) => `Trop d’entrées ici (${of(p, 'max')} au plus).`,
  'problem.document_too_large': () =>
    'La visite est devenue trop grande pour être lue. Retirer des zones ou des portions.',
  'problem.unknown_schema': () =>
    'Le serveur attend une autre forme de visite. Charger la version plus récente de l’application.',
  'problem.host_not_allowed': () =>
    'Le serveur ne répond pas sous cette adresse. L’ouvrir sous celle qu’il indique.',
  'problem.origin_not_allowed': () => 'Cette page vient d’ailleurs ; le serveur refuse ses changements.',
  'problem.method_not_allowed': () =>
    'L’application et le serveur ne vont pas ensemble. Charger la version plus récente de l’application.',
  'problem.bad_request': () => 'Le serveur n’a pas pu lire la demande. Réessayer.',
  'problem.memory_short': () =>
    'Il n’y a pas assez de mémoire pour l’instant ; ce qui était enregistré l’est toujours. Fermer d’autres programmes, puis réessayer.',
  'problem.internal': () =>
    'Le serveur a échoué ; ce qui était enregistré l’est toujours. Voir son journal, puis réessayer.',
  'problem.zone_in_two_bowls': (p: P) =>
    `${of(p, 'zone')} est dans deux bols d’une même étape. La garder dans un seul, ou donner l’étape suivante au second.`,
  'problem.ratio_not_of_range': (p: P) =>
    `Bol ${of(p, 'bowl')} : la gamme ne permet pas la proportion 1 : ${of(p, 'ratio')}. Suivre sa notice.`,
  'problem.developer_not_of_range': (p: P) =>
    `Bol ${of(p, 'bowl')} : la gamme ne permet pas l’oxydant ${of(p, 'percent')} %. En prendre un qu’elle nomme.`,
  'problem.longer_than_range_allows': (p: P) =>
    `Bol ${of(p, 'bowl')} : ${of(p, 'minutes')} min dépassent ce que la gamme permet (${of(p, 'max')}).`,
  'problem.two_ranges_in_one_bowl': (p: P) =>
    `Bol ${of(p, 'bowl')} : ${of(p, 'product')} est d’une autre gamme. Ne mélanger des gammes que si la notice de leur fabricant le permet.`,
  'problem.developer_alone': (p: P) =>
    `Le bol ${of(p, 'bowl')} ne contient que de l’oxydant. Ajouter une nuance.`,
  'problem.weighed_out_of_range': (p: P) =>
    `Le bol ne peut pas déjà contenir ${of(p, 'value')} g : il en prend au plus ${of(p, 'most')} g.`,
  'problem.over_legal_limit': (p: P) =>
    `Le bol ${of(p, 'bowl')} dépasse une limite légale. Ne pas l’utiliser ; changer ses produits jusqu’à rester en dessous.`,
  'problem.not_permitted_use': (p: P) =>
    `Le bol ${of(p, 'bowl')} contient une substance non permise pour cet usage. Ne pas l’utiliser.`,
  'problem.minutes_out_of_range': (p: P) =>
    `${n.minutes(of(p, 'value'))} : impossible ; de ${of(p, 'min')} à ${of(p, 'max')}.`,
  'problem.shelf_is_empty': () => 'L’étagère ne contient aucun produit. Ajouter d’abord ceux du salon.',
  'problem.shelf_too_large': (p: P) => `L’étagère contient plus de ${n.produits(of(p, 'max'))}.`,
  'problem.not_an_amount': () => 'Une quantité est un nombre de 0 ou plus.',
  'problem.too_many_people': () => 'Trop de personnes pour une visite.',
  'problem.not_found': () => 'Ceci n’existe plus.',
  'problem.answer_not_json': () => 'Le serveur a répondu de façon illisible. Le relancer et réessayer.',
};
