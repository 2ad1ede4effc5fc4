import type { ColourOrigin, Layers, ServiceKind, Texture, Tone } from '../api/types';

// The words of the API in the order in which screens show them: tones by hue, cool to warm.
export const tones: readonly Tone[] = ['violet', 'ash', 'green', 'natural', 'beige', 'gold', 'copper', 'red'];
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
  'straightened_heat',
  'straightened_unknown',
  'smoothed',
  'plant_compound',
  'restorer',
  'coloured',
];
export const wholeLevels = Array.from({ length: 10 }, (_, i) => i + 1);
