import type { doors as en } from '../en/doors';
import type { Part } from '../types';

export const doors: Part<typeof en> = {
  'pair.title': 'Otro dispositivo del salón',
  'pair.note':
    'Una tableta o un teléfono en la red del salón, con cifrado. Sigue en la lista hasta que usted lo quite.',
  'pair.go': 'Dejar entrar un dispositivo',
  'pair.again': 'Código nuevo',
  'pair.address': 'Dirección de este ordenador',
  'pair.trust': 'Confiar en el certificado del salón',
  'pair.trust_how':
    'Escanee esto con el dispositivo, pase el aviso por esta vez e instale el certificado en sus ajustes.',
  'pair.compare': 'El dispositivo muestra una huella SHA-256. Siga solo si es esta:',
  'pair.open': 'Vincular',
  'pair.open_how': (n) => `Después escanee esto. Deja entrar un solo dispositivo y vale ${n} minutos.`,
  'pair.lead':
    'La propietaria o el propietario deja entrar este dispositivo. Dele el nombre que tendrá en la lista.',
  'pair.unpaired': 'Este dispositivo no está vinculado.',
  'pair.unpaired_how':
    'Lo deja entrar la propietaria o el propietario: en el ordenador del salón, en la página «El equipo del salón».',
  'problem.invitation_gone': () =>
    'Este código ya no deja entrar a nadie: se usó, venció o hay otro más nuevo. Pida otro.',
  'problem.no_other_machines': () =>
    'Este salón solo responde en su propio ordenador. Inícielo con: strandline serve --listen 0.0.0.0',
  'rights.title': 'Lo que se guarda de esta persona',
  'rights.note': 'Todo, abierto: respuestas, pruebas, visitas, lo que se mezcló. Queda anotado quién mira.',
  'rights.show': 'Mostrarlo todo',
  'rights.save': 'Guardar en un archivo',
  'rights.draft': 'Visita en curso',
  'rights.erase': 'Borrar para siempre',
  'rights.erase_sure': (name) =>
    `Borrar a ${name} destruye la clave de todo lo de arriba. Nadie podrá leerlo más, tampoco en copias antiguas.`,
  'rights.type_name': 'Para borrar, escriba el nombre tal como está arriba',
  'rights.erased': 'Borrado.',
  'enter.runs': (minute) => `Hay un reloj en marcha: minuto ${minute}.`,
  'enter.calls': (bowls) => `Avisa: bol ${bowls}. Desbloquee para verlo.`,
  'problem.passphrase_needed': () => 'No con un PIN. Inicie sesión con la frase secreta.',
  'problem.another_name': () => 'Esa persona no se llama así.',
};
