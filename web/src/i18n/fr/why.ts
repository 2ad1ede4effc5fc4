import { n } from './count';

type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) =>
  (p[key] ?? '?').replace(/^(-?\d+)\.0$/, '$1').replace(/^(-?\d+)\.(\d+)$/, '$1,$2');

export const why = {
  'why.natural_share_for_white': (p: P) =>
    `${of(p, 'share')} % de naturel, pour couvrir ${of(p, 'white')} % de blancs sans effet terne.`,
  'why.counter_tone': (p: P) =>
    `${of(p, 'product')}, ${of(p, 'share')} %, neutralise le fond d’éclaircissement.`,
  'why.developer_for_lift': (p: P) =>
    `Oxydant ${of(p, 'strength')}, car l’objectif est plus clair de ${n.tons(of(p, 'levels'))}.`,
  'why.developer_for_white': (p: P) => `Oxydant ${of(p, 'strength')}, pour que les blancs prennent.`,
  'why.developer_for_deposit': (p: P) =>
    `Oxydant ${of(p, 'strength')} : la couleur se dépose, presque rien n’éclaircit.`,
  'why.warmth_expected': (p: P) =>
    `Éclaircir de ${n.tons(of(p, 'levels'))} fait apparaître un fond d’éclaircissement chaud.`,
  'why.one_bowl_serves': (p: P) => `Un seul bol suffit pour ${n.zones(of(p, 'zones'))}.`,
  'why.deepen_at_basin': () =>
    'Rarement trop foncé. Si c’est trop clair au bac, y foncer avec un ton sur ton plus foncé d’un ton.',
  'why.warming_tone': (p: P) =>
    `${of(p, 'product')}, ${of(p, 'share')} %, redonne les reflets chauds qui manqueraient.`,
  'why.in_packets': (p: P) => `Environ ${n.papillotes(of(p, 'packets'))}, ${of(p, 'grams')} g dans chacune.`,
  'why.beside_packets': () =>
    'Se pose entre les papillotes pendant leur temps de pose ; tout rincer ensemble.',
  'why.own_bowl': () => 'Cette zone demande son propre bol.',
  'why.carries_tone': (p: P) => `${of(p, 'product')}, ${of(p, 'share')} %, donne le reflet de l’objectif.`,
  'why.natural_ground': (p: P) => `${of(p, 'product')}, ${of(p, 'share')} %, sert de base naturelle.`,
  'why.thins': (p: P) => `${of(p, 'product')}, ${of(p, 'share')} %, dilue la couleur.`,
  'why.part_of_depth': (p: P) => `${of(p, 'product')}, ${of(p, 'share')} %, règle la hauteur de ton.`,
  'why.one_bowl_fewer': (p: P) =>
    `Possible avec ${n.bols(of(p, 'bowls'))}, mais plus loin de l’objectif de ${n.tons(of(p, 'worse'))}.`,
  'why.same_mix_later': (p: P) =>
    `Le mélange du bol ${of(p, 'bowl')} passe sur les longueurs pendant les ${of(p, 'minutes')} dernières minutes.`,
  'why.fourth_shade_nearer': (p: P) =>
    `Une quatrième nuance et une pesée plus fine rapprochent de ${n.tons(of(p, 'levels'))} ; seuls des pas depuis le meilleur bol à trois nuances en huitièmes ont été essayés.`,
  'why.grams_nearer': (p: P) =>
    `Une pesée plus fine rapproche de ${n.tons(of(p, 'levels'))} ; seuls des pas depuis le meilleur bol en huitièmes ont été essayés.`,
  'why.regrowth_to_lengths': (p: P) =>
    `Les longueurs ne peuvent pas suivre : la repousse va donc vers elles. Selon l’objectif, l’écart serait de ${n.tons(of(p, 'levels'))}.`,
  'why.builds_up_on_lengths': (p: P) =>
    `Le bol ${of(p, 'bowl')} ne convient pas aux longueurs : elles seraient trop foncées de ${n.tons(of(p, 'levels'))}.`,
  'why.nothing_wished': () => 'Chaque zone doit rester comme elle est.',
  'why.no_bowl_may_serve': () =>
    'Aucun bol de cette étagère ne peut aller sur ces zones : pas de comparaison.',
  'why.comes_off_early': (p: P) =>
    `Bol ${of(p, 'bowl')} sur ${of(p, 'zone')} : le minutage lui laisse ${n.minutes(of(p, 'minutes'))}, pas les ${of(p, 'planned')} demandées. Une deuxième personne, moins de zones à la fois ou un mélange frais ; la prévision compte ce que le minutage permet.`,
  'why.stays_too_long': (p: P) =>
    `Bol ${of(p, 'bowl')} sur ${of(p, 'zone')} : il reste ${n.minutes(of(p, 'minutes'))} après la fin de l’application ; sa gamme permet ${of(p, 'longest')}. Une deuxième personne, moins de zones à la fois, ou cette zone plus tard.`,
  'why.leave_as_it_is': () => 'À laisser tel quel : rien sur l’étagère n’en rapproche.',
  'why.colour_does_not_lift_colour': () =>
    'La couleur n’éclaircit pas la couleur : ce qui est coloré est d’abord décapé ou décoloré.',
  'why.lift_limit': () =>
    'C’est plus d’éclaircissement que cette étagère n’en donne en une fois sur ces cheveux.',
  'why.depth_out_of_reach': () => 'Aucune nuance de cette étagère ne va si foncé ici.',
  'why.needs_filler': () =>
    'Pour foncer autant des cheveux décolorés, il faut d’abord une prépigmentation, sinon la couleur est terne.',
  'why.warmth_stays': () =>
    'Les reflets chauds que l’éclaircissement fait apparaître ne se neutralisent pas entièrement.',
  'why.tone_between_words': () => 'Le reflet s’approche sans y arriver tout à fait.',
  'why.tone_out_of_reach': () => 'Ce reflet ne s’obtient pas avec ces nuances.',
  'why.white_cover': (p: P) =>
    `Les blancs restent plus clairs que le reste de ${n.tons(of(p, 'levels'))} et se verraient.`,
  'why.base_too_dark_for_high_lift': () => 'Le super-éclaircissant demande une base naturelle plus claire.',
  'why.high_lift_on_coloured': () =>
    'Le super-éclaircissant va sur cheveux naturels, pas sur des cheveux colorés ou décolorés.',
  'why.lightened_is_toned': () =>
    'Des cheveux décolorés se patinent avec un oxydant faible : une coloration ne les éclaircit pas davantage.',
  'why.condition_spent': () =>
    'Ces cheveux ne devraient plus être éclaircis aujourd’hui. Les soigner et prévoir une autre visite.',
  'why.minerals_first': () =>
    'Des minéraux de l’eau sont dans ces cheveux : les éliminer par un soin chélateur avant tout oxydant.',
  'why.metal_test_first': () =>
    'Vu l’historique, il peut y avoir du métal : un test aux sels métalliques passe avant tout oxydant.',
  'why.range_not_on_scalp': () => 'Une gamme est écartée : elle ne doit pas toucher le cuir chevelu.',
  'why.straightened_lately': () =>
    'Ces cheveux ont été lissés récemment : les oxydants plus forts sont écartés.',
  'why.failed_stretch': () =>
    'Le test d’élasticité a échoué : ni décolorant, ni super-éclaircissant, rien à 6 % ou plus ici.',
  'why.law': () => 'Une limite légale s’y oppose.',
  // D’où vient le doute d’une prévision.
  'why.doubt_from_level_reading': (p: P) =>
    `${of(p, 'percent')} % de l’incertitude sur la hauteur vient de la hauteur de ton relevée.`,
  'why.doubt_from_white_share': (p: P) =>
    `${of(p, 'percent')} % de l’incertitude sur la hauteur vient de la part de cheveux blancs.`,
  'why.doubt_from_porosity': (p: P) =>
    `${of(p, 'percent')} % de l’incertitude sur la hauteur vient de la porosité.`,
  'why.doubt_from_white_look': (p: P) =>
    `${of(p, 'percent')} % de l’incertitude sur la hauteur vient de la couleur des cheveux blancs, jamais mesurée ici.`,
  'why.doubt_from_lightening': (p: P) =>
    `${of(p, 'percent')} % de l’incertitude sur la hauteur vient de la vitesse d’éclaircissement de cette tête : une mèche d’essai le dit.`,
  'why.doubt_from_uptake': (p: P) =>
    `${of(p, 'percent')} % de l’incertitude sur la hauteur vient de la couleur que ces cheveux prennent : une mèche d’essai le dit.`,
  'why.doubt_from_blend': (p: P) =>
    `${of(p, 'percent')} % de l’incertitude sur la hauteur vient de l’aspect d’ensemble des cheveux blancs et pigmentés.`,
  'why.doubt_from_shade_name': (p: P) =>
    `${of(p, 'percent')} % de l’incertitude sur la hauteur vient d’une nuance connue par son seul nom : un échantillon le dit.`,
  'why.packets_first': () => 'Les papillotes d’abord : le reste se pose entre elles.',
  'why.whitest_first': () => 'Le plus blanc d’abord : il demande le plus de temps.',
  'why.resistant_first': () => 'Les blancs résistants d’abord : ils demandent le plus de temps.',
  'why.after_the_whiter': () => 'Après les zones plus blanches.',
  'why.areas_of_the_house': () => 'Dans l’ordre des zones de la maison.',
  'why.hairline_last': () => 'Le contour en dernier.',
  'why.parting_by_parting': () => 'Raie par raie.',
  'why.needs_longest': (p: P) => `D’abord ce qui demande le plus de temps : ${of(p, 'minutes')} minutes.`,
  'why.needs_less': (p: P) => `Plus tard, car ${of(p, 'minutes')} minutes suffisent : ${of(p, 'zones')}.`,
  'why.porous_last': () => 'Les cheveux plus poreux après : ils prennent plus vite.',
  'why.time_is_over': () => 'Le temps est écoulé.',
  'why.away_from_scalp_first': () => 'Loin du cuir chevelu d’abord : sa chaleur accélère l’éclaircissement.',
  'why.scalp_zone_later': () =>
    'La racine plus tard : la chaleur du cuir chevelu accélère l’éclaircissement.',
  'why.porous_ends_last': () => 'Les pointes poreuses en dernier : elles prennent le plus vite.',
  'why.lengths_after_regrowth': () => 'Les longueurs après la repousse.',
  'why.small_mix': () => 'Un petit mélange frais : le premier serait trop vieux.',
  'why.one_basin_time': () => 'Tout ce qui touche le cuir chevelu se rince ensemble.',
  // À remarquer avant de mélanger.
  'why.finding_dark_band': (p: P) =>
    `${of(p, 'zone')} : une barre plus foncée de ${n.tons(of(p, 'levels'))} que de chaque côté. Lui donner son bol ; plutôt plus clair aujourd’hui, foncer ensuite.`,
  'why.finding_light_band': (p: P) =>
    `${of(p, 'zone')} : une barre plus claire de ${n.tons(of(p, 'levels'))} que de chaque côté. La foncer à part.`,
  'why.finding_hot_regrowth': (p: P) =>
    `${of(p, 'zone')} : repousse colorée plus claire de ${n.tons(of(p, 'levels'))} que les longueurs. La foncer avec leur nuance et un oxydant faible.`,
  'why.finding_uneven_ends': (p: P) =>
    `${of(p, 'zone')} : pointes à ${n.tons(of(p, 'levels'))} des longueurs. Leur donner un bol ou un temps à elles.`,
  'why.finding_green': (p: P) =>
    `${of(p, 'zone')} : un reflet vert. Écarter d’abord minéraux et métaux ; puis un peu de rouge ou de cuivré le neutralise.`,
  // Chemins en plusieurs étapes.
  'why.later_bowl_decides': () => 'Une étape suit ici : c’est le bol d’après qui compte.',
  'why.route_chelate': (p: P) => `Éliminer les minéraux : ${n.minutes(of(p, 'minutes'))}, puis bien rincer.`,
  'why.route_soften': (p: P) =>
    `Mordancer les blancs résistants : ${of(p, 'strength')}, ${n.minutes(of(p, 'minutes'))}.`,
  'why.route_fill': () => 'Prépigmenter, pour donner un fond chaud à la couleur.',
  'why.route_remove': (p: P) =>
    `Décaper l’ancienne couleur : ${n.minutes(of(p, 'minutes'))}, puis rincer aussi longtemps que le fabricant le dit.`,
  'why.route_lighten': (p: P) =>
    `Décolorer à ${of(p, 'strength')}, jusqu’à ${n.minutes(of(p, 'minutes'))}. Regarder à intervalles de quelques minutes ; arrêter si cela fait mal, chauffe ou si le cheveu s’étire.`,
  'why.route_needs_visits': (p: P) =>
    `Il faut ${n.visites(of(p, 'visits'))}, à au moins ${n.semaines(of(p, 'weeks'))}. Vérifier le cheveu avant chacune.`,
  'why.route_stays_short': () => 'Même ainsi l’objectif n’est pas tout à fait atteint.',
  'why.route_strand_first': () =>
    'Plusieurs étapes ajoutent de l’incertitude : essayer d’abord tout le parcours sur une mèche.',
  // Un second regard.
  'why.change_strength': (p: P) => `Prendre un oxydant à ${of(p, 'strength')}.`,
  'why.change_ratio': (p: P) => `Mélanger 1 pour ${of(p, 'ratio')}.`,
  'why.change_minutes': (p: P) => `Laisser ${n.minutes(of(p, 'minutes'))}.`,
  'why.swap_shade': (p: P) => `Prendre ${of(p, 'by')} au lieu de ${of(p, 'product')}.`,
  'why.add_shade': (p: P) => `Ajouter ${of(p, 'share')} % de ${of(p, 'product')}.`,
  'why.drop_shade': (p: P) => `Enlever ${of(p, 'product')}.`,
  'why.shift_shares': (p: P) => `Plus de ${of(p, 'product')} : ${of(p, 'share')} % de la couleur.`,
  'why.finish_with': (p: P) => `Compléter ce qui est pesé avec ${of(p, 'grams')} g de ${of(p, 'product')}.`,
  'why.weighed_is_lost': (p: P) =>
    `Bol ${of(p, 'bowl')} : ce qui est pesé (${of(p, 'grams')} g) ne peut pas bien se compléter. Le recommencer.`,
  'why.another_bowl': () => 'Un autre bol s’approche plus de l’objectif que tout changement de celui-ci.',
  'why.rule_limit': () => 'Une limite des règles pour ces cheveux s’y oppose.',
  'why.stopped_by_rules': () =>
    'Une règle arrête cette visite : rien ne se mélange aujourd’hui comme demandé.',
  'why.bowls_stopped_by_rules': () => 'Un bol enfreint une règle : pas de prévision pour lui.',
  'why.left_out_for_condition': () =>
    'Un bol est laissé de côté : avec ce minutage, il abîmerait trop les cheveux.',
  'why.other_maker_skin_test': () =>
    'Couleur d’un autre fabricant : un nouveau test cutané d’abord, comme ce fabricant le dit.',
  'why.nothing_may_replace': () => 'Rien sur l’étagère ne peut le remplacer sur ces cheveux.',
  'why.scalp_lightener_strength': () =>
    'Un décolorant de cette concentration ne doit pas toucher le cuir chevelu.',
  // After the visit.
  'why.after_line_shows': (p: P) =>
    `La repousse marque une démarcation après ${of(p, 'from')} à ${of(p, 'until')} semaines.`,
  'why.after_short_hair_grows_out': (p: P) =>
    `Des cheveux si courts sont renouvelés après ${of(p, 'from')} à ${of(p, 'until')} semaines.`,
  'why.after_fades_softly': (p: P) =>
    `Cela s’estompe doucement en ${of(p, 'from')} à ${of(p, 'until')} semaines.`,
  'why.after_blended_not_covered': (p: P) =>
    `Les blancs sont fondus, pas couverts ; cela s’estompe doucement en ${of(p, 'from')} à ${of(p, 'until')} semaines.`,
  'why.after_red_fades_first': (p: P) =>
    `Le rouge part en premier : à raviver après ${of(p, 'from')} à ${of(p, 'until')} semaines.`,
  'why.after_copper_fades': (p: P) =>
    `Le cuivré pâlit : un ton sur ton après ${of(p, 'from')} à ${of(p, 'until')} semaines.`,
  'why.after_toner_lasts': (p: P) =>
    `Une patine tient ${of(p, 'from')} à ${of(p, 'until')} semaines, pas pour toujours.`,
  'why.after_shadow_fades': (p: P) =>
    `L’ombre s’estompe en ${of(p, 'from')} à ${of(p, 'until')} semaines et devient chaude.`,
  'why.after_direct_fades': (p: P) =>
    `La coloration directe part en huit à dix lavages, ${of(p, 'from')} à ${of(p, 'until')} semaines.`,
  'why.after_direct_stains': () => 'Elle tache le linge et la peau, et se retire difficilement.',
  'why.after_ends_take_and_fade': () =>
    'Les pointes poreuses prennent davantage d’un coup et pâlissent en premier.',
  'why.after_lighter_needs_more': () => 'Revenir plus clair demandera un décapage ou des mèches.',
  'why.after_growth_may_glow': () => 'La repousse peut paraître plus vive que les longueurs.',
  'why.after_warmth_shows': () => 'Des reflets chauds se verront là où l’ancienne couleur part.',
  'why.after_darkens_back': () => 'Cela peut refoncer en quelques jours.',
  'why.after_half_way_is_good': () => 'Arriver à mi-chemin est déjà un bon résultat aujourd’hui.',
  'why.after_warmth_stays': () => 'Il reste des reflets chauds : la couleur seule éclaircit chaud.',
  'why.after_curl_may_loosen': () => 'La boucle peut se détendre un peu.',
  'why.after_no_more_home_colour': () => 'Plus de couleur à la maison tant que ce n’est pas fini.',
  'why.after_metal_comes_back': () =>
    'Le métal de l’eau revient : mouiller d’abord les cheveux, porter un bonnet et faire un lavage chélateur toutes les une à deux semaines.',
  'why.after_violet_on_yellow_dulls': () =>
    'Le violet pur sur cheveux jaunes ternit : violet rouge, ou éclaircir d’abord.',
  'why.after_wash_and_wait': () =>
    'Un peu trop foncé seulement, et récent : lavages clarifiants, puis revoir dans une à deux semaines.',
  'why.after_signs_wash_off': () =>
    'Démangeaison, rougeur ou gonflement au point du test ou ailleurs : rincer et consulter un médecin. Cela peut venir des jours plus tard.',
};
