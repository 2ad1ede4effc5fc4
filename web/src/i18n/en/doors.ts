export const doors = {
  'pair.title': 'A device elsewhere in the salon',
  'pair.note':
    'A tablet or telephone in the salon’s own network, encrypted. It stays on the list until you take it off.',
  'pair.go': 'Let a device in',
  'pair.again': 'New code',
  'pair.address': 'Address of this machine',
  'pair.trust': 'Trust the salon’s certificate',
  'pair.trust_how':
    'Scan this with the device, pass the warning this once, and install the certificate in its settings.',
  'pair.compare': 'The device shows a SHA-256 fingerprint. Go on only if it is this one:',
  'pair.open': 'Pair it',
  'pair.open_how': (n: number) => `Then scan this. It lets one device in and is good for ${n} minutes.`,
  'pair.lead': 'An owner lets this device in. Give it a name by which it is known on the list.',
  'pair.unpaired': 'This device is not paired.',
  'pair.unpaired_how': 'An owner lets it in: at the salon’s machine, on the page of its people.',
  'problem.invitation_gone': () =>
    'This code lets nobody in any more: it was used, is over, or a newer one was made. Ask an owner for another.',
  'problem.no_other_machines': () =>
    'This salon answers on its own machine only. Start it with: strandline serve --listen 0.0.0.0',
  'rights.title': 'What is kept of this person',
  'rights.note': 'All of it, opened: answers, tests, visits, what was mixed. Looking is written down.',
  'rights.show': 'Show all of it',
  'rights.save': 'Save as a file',
  'rights.draft': 'Visit that is still worked on',
  'rights.erase': 'Erase for good',
  'rights.erase_sure': (name: string) =>
    `Erasing ${name} destroys the key of everything above. Nobody can read it again, in no older copy either.`,
  'rights.type_name': 'To erase, type the name as it stands above',
  'rights.erased': 'Erased.',
  'enter.runs': (minute: number) => `A clock is running: minute ${minute}.`,
  'enter.calls': (bowls: string) => `It calls: bowl ${bowls}. Unlock to see.`,
  'problem.passphrase_needed': () => 'Not on a PIN. Sign in with the passphrase.',
  'problem.another_name': () => 'This is not the name of that person.',
} as const;
