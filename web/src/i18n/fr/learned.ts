import type { learned as en } from '../en/learned';
import type { Part } from '../types';
import { n } from './count';

/** Parameters of a code as the server gives them; a missing one reads as "?". */
type P = Readonly<Record<string, string>>;
const of = (p: P, key: string) => p[key] ?? '?';

/** Ce que les résultats ont appris, et les mèches mesurées. */
export const learned: Part<typeof en> = {
  'learned.here': 'Des résultats ont changé ce plan',
  'learned.look': 'Voir, ou retirer un résultat',
  'learned.moved': (zone: string, before: string, now: string) =>
    `${zone} : hauteur ${before} sans les résultats, ${now} avec eux`,
  'learned.title': 'Ce que les résultats ont appris',
  'learned.lead':
    'Chaque résultat change ce qui est prévu ensuite : pour une gamme, pour une personne, pour l’œil qui fait le diagnostic.',
  'learned.words': 'Appris jusqu’ici',
  'learned.nothing': 'Rien encore d’assez certain et de plus d’un cinquième de ton.',
  'learned.drift': 'Vu et prévu',
  'learned.drift_note':
    'Chaque point est une zone d’un résultat : au-dessus de la ligne, plus clair que prévu ; au-dessous, plus foncé, en tons. Neuf sur dix devraient être dans la bande. Les points creux n’ont rien appris.',
  'learned.drift_said': (within: string, all: string) =>
    `${within} résultats sur ${all} étaient dans l’intervalle annoncé.`,
  'learned.results': 'Résultats, du plus récent au plus ancien',
  'learned.seen': (foreseen: string, seen: string) => `prévu : hauteur ${foreseen}, vue : ${seen}`,
  'learned.set_aside': 'Trop loin : regardé, rien n’en est appris.',
  'learned.without': 'Retiré : tout a été réappris sans lui.',
  'learned.take_out': 'Retirer',
  'learned.take_in': 'Remettre',
  'learned.more': 'Résultats plus anciens',
  'learned.failed': 'Ce qui a été appris n’a pas pu être ouvert.',
  'learned.failed_kept': 'Chaque résultat est conservé.',
  'learned.of_salon': 'Dans ce salon',
  'learned.of_range': (name: string) => `Gamme ${name}`,
  'learned.of_person': 'Ces cheveux',
  'learned.of_colourist': 'Au diagnostic',
  'learned.deeper': (levels: string) => `plus foncé de ${n.tons(levels)} que calculé`,
  'learned.lighter': (levels: string) => `plus clair de ${n.tons(levels)} que calculé`,
  'learned.lifts_more': (levels: string) => `éclaircit de ${n.tons(levels)} de plus que calculé`,
  'learned.lifts_less': (levels: string) => `éclaircit de ${n.tons(levels)} de moins que calculé`,
  'learned.warmer': (levels: string) => `sort plus chaud que calculé (${levels})`,
  'learned.cooler': (levels: string) => `sort plus froid que calculé (${levels})`,
  'learned.reads_light': (levels: string) => `un œil voit plus clair de ${n.tons(levels)} que les autres`,
  'learned.reads_dark': (levels: string) => `un œil voit plus foncé de ${n.tons(levels)} que les autres`,
  'reading.measured': (l: string, a: string, b: string) =>
    `mesurée la dernière fois : L* ${l} · a* ${a} · b* ${b} ; elle compte jusqu’à une nouvelle lecture de la hauteur ou du reflet`,
  'swatches.title': 'Échantillons mesurés',
  'swatches.lead':
    'Sur cheveux blancs, avec le mélange habituel de la gamme. À partir de trois échantillons mesurés, le reste de la gamme les suit.',
  'swatches.measured': (some: string, all: string) => `${some} nuances mesurées sur ${all}`,
  'swatches.text': 'Le fichier d’un appareil, ou code ; L* ; a* ; b* ligne par ligne (D65, 10°)',
  'swatches.file': 'Ouvrir un fichier',
  'swatches.look': 'Lire',
  'swatches.next': 'Lesquelles mesurer ensuite ?',
  'swatches.keep': (n: string) => `Enregistrer (${n})`,
  'swatches.matched': (n: string, names: string) => `${n} comprises : ${names}`,
  'swatches.unmatched': (names: string) =>
    `Aucune nuance de cette gamme, ou plus d’une, ne s’appelle ainsi : ${names}`,
  'swatches.other_light':
    'Le fichier donne L*a*b* pour une autre lumière que D65 et 10°. Les valeurs sont prises telles quelles ; exporter des spectres si l’appareil le peut.',
  'swatches.measure_next': (names: string) => `Celles-ci en diraient le plus sur les autres : ${names}`,
  'swatches.broken': (line: string) =>
    `La ligne ${line} ne se lit pas comme une mesure. La corriger ou exporter de nouveau le fichier.`,
  'card.title': 'Par une photo de la carte imprimée',
  'card.lead':
    'Imprimer la carte à sa taille et placer la mèche derrière sa fenêtre, qu’elle doit remplir. Photographier d’en haut à la lumière du jour, les quatre coins dans l’image, sans ombre dessus.',
  'card.print': 'Ouvrir la carte pour l’imprimer',
  'card.patches': 'Les plages de la carte mesurées par un instrument (une fois par carte imprimée)',
  'card.patches_note': 'Sans elles, la mèche est seulement comparée aux plages voisines.',
  'card.photo': 'Photo de la carte',
  'card.reading': 'La photo est analysée …',
  'card.level': (level: string) => `hauteur ${level}`,
  'card.off': (amount: string) => `écart d’au plus ΔE00 ${amount}, neuf fois sur dix`,
  'card.lab_alone':
    'Le fichier de la carte ne contient que L*a*b* : ce qui distingue l’encre du cheveu sous cette lampe n’est pas retiré. Des spectres en disent plus.',
  'card.only_alike': (nearest: string, next: string) =>
    `Personne n’a mesuré cette carte. La plage la plus proche est ${nearest}, puis ${next} ; rien en chiffres.`,
  'card.is_lighter': (patch: string) => `Elle est plus claire que ${patch}.`,
  'card.is_darker': (patch: string) => `Elle est plus foncée que ${patch}.`,
  'card.of': 'Mèche de',
  'card.which': 'Quelle nuance ?',
  'card.take': 'Mettre dans la liste',
  'problem.card_not_found': () =>
    'La carte n’est pas dans l’image, ou pas entière. Les quatre repères des coins doivent être visibles, nets et sans ombre.',
  'problem.card_small': () => 'La carte est trop petite dans l’image. S’approcher.',
  'problem.card_picture': () => 'L’image n’a pas de pixels. La refaire.',
  'problem.card_clipped': () => 'Le blanc de la carte est saturé. Refaire la photo avec moins de lumière.',
  'problem.card_dark': () => 'La carte est trop sombre. Refaire la photo avec plus de lumière.',
  'problem.card_uneven': () =>
    'La lumière faiblit d’un bord à l’autre. Tourner la carte vers la fenêtre, loin des lampes proches.',
  'problem.card_strand_clipped': () =>
    'La mèche est à la limite de ce que la photo peut dire. La refaire à la lumière du jour, plus ou moins éclairée.',
  'problem.card_patches_missing': (p: P) =>
    `${of(p, 'count')} plages manquent dans le fichier de la carte : ${of(p, 'ids')} … Nommer les échantillons par ligne et colonne de la carte, A2 à F8.`,
  'problem.picture_kind': () => 'Ce n’est pas une photo lisible. Prendre un JPEG.',
  'problem.picture_large': () => 'La photo est trop grande.',
  'problem.picture_small': () => 'La photo est trop petite : au moins 400 pixels de côté.',
  'problem.picture_broken': () =>
    'La photo ne peut pas être décompressée. La copier à nouveau depuis l’appareil.',
  'problem.measured_nothing': () =>
    'Il n’y a ni spectres ni L*a*b*. Il faut des colonnes de longueurs d’onde de 400 à 700 nm, ou L*, a* et b*.',
  'problem.measured_impossible': (p: P) =>
    `Ligne ${of(p, 'line')} : ${of(p, 'field')} ne peut pas être ${of(p, 'got')}.`,
  'problem.lab_typed': (p: P) =>
    `« ${of(p, 'got')} » n’est pas L*a*b*. Écrire trois nombres : 54,2 8,1 19,6.`,
  'problem.result_not_found': () => 'Ce résultat n’est plus là. Recharger la page.',
};
