import type { ColourOrigin, Layers, ServiceKind, Texture, Tone } from '../api/types';

// The words of the API in the order in which screens show them.
export const tones: readonly Tone[] = ['natural', 'ash', 'violet', 'beige', 'gold', 'copper', 'red', 'green'];
export const origins: readonly ColourOrigin[] = ['natural', 'tinted', 'lightened', 'direct'];
export const textures: readonly Texture[] = ['straight', 'wavy', 'curly', 'coily'];
export const layers: readonly Layers[] = ['none', 'some', 'many'];
export const services: readonly ServiceKind[] = [
  'permed',
  'straightened_mild',
  'straightened_alkaline',
  'relaxed',
  'lightened',
  'home_colour',
  'plant_colour',
  'minerals',
];
export const wholeLevels = Array.from({ length: 10 }, (_, i) => i + 1);
