import type { doors as en } from '../en/doors';
import type { Part } from '../types';

export const doors: Part<typeof en> = {
  'pair.title': 'Un autre appareil du salon',
  'pair.note':
    'Une tablette ou un téléphone sur le réseau du salon, en liaison chiffrée. Il reste sur la liste jusqu’à ce qu’on l’en ôte.',
  'pair.go': 'Laisser entrer un appareil',
  'pair.again': 'Nouveau code',
  'pair.address': 'Adresse de cet ordinateur',
  'pair.trust': 'Faire confiance au certificat du salon',
  'pair.trust_how':
    'Scanner ceci avec l’appareil, passer l’avertissement cette seule fois et installer le certificat dans ses réglages.',
  'pair.compare': 'L’appareil montre une empreinte SHA-256. Ne continuer que si c’est celle-ci :',
  'pair.open': 'Associer',
  'pair.open_how': (n) =>
    `Scanner ensuite ceci. Ce code laisse entrer un seul appareil et vaut ${n} minutes.`,
  'pair.lead': 'La ou le propriétaire laisse entrer cet appareil. Il aura ce nom sur la liste.',
  'pair.unpaired': 'Cet appareil n’est pas associé.',
  'pair.unpaired_how':
    'La ou le propriétaire le laisse entrer : sur l’ordinateur du salon, à la page « L’équipe du salon ».',
  'problem.invitation_gone': () =>
    'Ce code ne laisse plus entrer personne : il a servi, il a expiré, ou un plus récent l’a remplacé. En demander un autre.',
  'problem.no_other_machines': () =>
    'Ce salon ne répond que sur son propre ordinateur. Pour d’autres, le démarrer avec : strandline serve --listen 0.0.0.0',
  'rights.title': 'Ce qui est gardé sur cette personne',
  'rights.note': 'Tout, en clair : réponses, tests, visites, mélanges. La consultation est notée.',
  'rights.show': 'Tout montrer',
  'rights.save': 'Enregistrer dans un fichier',
  'rights.draft': 'Visite en cours',
  'rights.erase': 'Effacer pour toujours',
  'rights.erase_sure': (name) =>
    `Effacer ${name} détruit la clé de tout ce qui est ci-dessus. Personne ne pourra plus le lire, dans aucune copie ancienne non plus.`,
  'rights.type_name': 'Pour effacer, écrire le nom tel qu’il figure ci-dessus',
  'rights.erased': 'Effacé.',
  'enter.runs': (minute) => `Le minutage est en cours : minute ${minute}.`,
  'enter.calls': (bowls) => `Il appelle : bol ${bowls}. Déverrouiller pour voir.`,
  'problem.passphrase_needed': () => 'Pas avec un code PIN. Se connecter avec la phrase secrète.',
  'problem.another_name': () => 'Ce n’est pas le nom de cette personne.',
};
