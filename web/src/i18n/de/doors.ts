import type { doors as en } from '../en/doors';
import type { Part } from '../types';

export const doors: Part<typeof en> = {
  'pair.title': 'Ein anderes Gerät im Salon',
  'pair.note':
    'Ein Tablet oder Telefon im eigenen Netz des Salons, verschlüsselt. Es bleibt auf der Liste, bis Sie es herunternehmen.',
  'pair.go': 'Ein Gerät hereinlassen',
  'pair.again': 'Neuer Code',
  'pair.address': 'Adresse dieses Rechners',
  'pair.trust': 'Dem Zertifikat des Salons vertrauen',
  'pair.trust_how':
    'Dies mit dem Gerät scannen, dieses eine Mal die Warnung übergehen und das Zertifikat in seinen Einstellungen installieren.',
  'pair.compare': 'Das Gerät zeigt einen SHA-256-Fingerabdruck. Nur weitermachen, wenn es dieser ist:',
  'pair.open': 'Koppeln',
  'pair.open_how': (n) => `Dann dies scannen. Es lässt ein einziges Gerät herein und gilt ${n} Minuten.`,
  'pair.lead':
    'Die Inhaberin oder der Inhaber lässt dieses Gerät herein. Unter diesem Namen steht es auf der Liste.',
  'pair.unpaired': 'Dieses Gerät ist nicht gekoppelt.',
  'pair.unpaired_how':
    'Die Inhaberin oder der Inhaber lässt es herein: am Rechner des Salons, auf der Seite „Wer im Salon arbeitet“.',
  'problem.invitation_gone': () =>
    'Dieser Code lässt niemanden mehr herein: Er wurde benutzt, ist abgelaufen, oder es gibt einen neueren. Um einen anderen bitten.',
  'problem.no_other_machines': () =>
    'Dieser Salon antwortet nur auf seinem eigenen Rechner. Für andere starten mit: strandline serve --listen 0.0.0.0',
  'rights.title': 'Was über diese Person gespeichert ist',
  'rights.note':
    'Alles, geöffnet: Antworten, Tests, Besuche, was gemischt wurde. Wer hineinsieht, wird vermerkt.',
  'rights.show': 'Alles zeigen',
  'rights.save': 'Als Datei speichern',
  'rights.draft': 'Besuch in Arbeit',
  'rights.erase': 'Endgültig löschen',
  'rights.erase_sure': (name) =>
    `${name} löschen zerstört den Schlüssel zu allem oben. Niemand kann es mehr lesen, auch in keiner älteren Kopie.`,
  'rights.type_name': 'Zum Löschen den Namen so eintippen, wie er oben steht',
  'rights.erased': 'Gelöscht.',
  'enter.runs': (minute) => `Eine Uhr läuft: Minute ${minute}.`,
  'enter.calls': (bowls) => `Sie ruft: Schale ${bowls}. Zum Ansehen entsperren.`,
  'problem.passphrase_needed': () => 'Nicht mit einer PIN. Mit der Passphrase anmelden.',
  'problem.another_name': () => 'So heißt diese Person nicht.',
};
