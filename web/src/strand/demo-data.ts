import type { Packets, Population, Rgb, StrandPicture } from './types';

/** Invented hair for the demonstration page and the tests; the colours are guesses, not predictions. */

export const hex = (code: string): Rgb => [
  parseInt(code.slice(0, 2), 16) / 255,
  parseInt(code.slice(2, 4), 16) / 255,
  parseInt(code.slice(4, 6), 16) / 255,
];

export const SHADES = {
  white: hex('c9c4b9'),
  black: hex('241f1e'),
  darkBrown: hex('3a2a21'),
  brown: hex('5a4030'),
  lightBrown: hex('775740'),
  blonde: hex('c6a471'),
  paleBlonde: hex('dcc594'),
  copper: hex('8f4a26'),
  goldBrown: hex('6b4a2f'),
  ash: hex('6d6358'),
  beige: hex('b59a74'),
  red: hex('6e1f22'),
  covered: hex('54402f'),
} as const;

type Shade = keyof typeof SHADES;

export const pop = (name: string, share: number, shade: Shade, packets?: Packets): Population => ({
  name,
  share,
  srgb: SHADES[shade],
  outOfGamut: false,
  ...(packets ? { packets } : {}),
});

const lights: Packets = { widthMm: 3, everyMm: 9 };
const darker = (c: Rgb, k: number): Rgb => [c[0] * k, c[1] * k, c[2] * k];
const fan = (shade: Shade, d = 0.1) => ({
  p10: darker(SHADES[shade], 1 - d),
  p50: SHADES[shade],
  p90: darker(SHADES[shade], Math.min(1 + d, 1.2)),
});

function brunette(lengthCm: number, white: number): StrandPicture {
  const base = (share: number) => [
    pop('pale lights', 1 - share, 'blonde', lights),
    pop('warm brown', share, 'lightBrown'),
  ];
  return {
    lengthCm,
    hair: { texture: 'straight', diameterUm: 72 },
    spans: [
      {
        id: 'regrowth',
        label: 'Regrowth',
        fromCm: 0,
        toCm: 2.8,
        bowls: ['A'],
        today: [pop('white', white, 'white'), pop('natural brown', 1 - white, 'brown')],
        planned: [
          pop('lights', 0.34, 'blonde', lights),
          pop('covered white', white * 0.66, 'lightBrown'),
          pop('brown', 0.66 * (1 - white), 'goldBrown'),
        ],
        fan: fan('goldBrown', 0.14),
      },
      {
        id: 'lengths',
        label: 'Lengths',
        fromCm: 2.8,
        toCm: lengthCm,
        bowls: ['C'],
        today: base(0.62),
        planned: [pop('toned lights', 0.36, 'paleBlonde', lights), pop('brown', 0.64, 'lightBrown')],
        fan: fan('beige', 0.08),
      },
    ],
  };
}

export interface DemoStrip {
  readonly id: string;
  readonly title: string;
  readonly note: string;
  readonly picture: StrandPicture;
}

const oneSpan = (
  lengthCm: number,
  texture: StrandPicture['hair']['texture'],
  diameterUm: number,
  today: Population[],
  planned: Population[],
): StrandPicture => ({
  lengthCm,
  hair: { texture, diameterUm },
  spans: [
    { id: 'new', label: 'Regrowth', fromCm: 0, toCm: 1.5, today, planned, bowls: ['A'] },
    {
      id: 'rest',
      label: 'Lengths',
      fromCm: 1.5,
      toCm: lengthCm,
      today: today.slice(-1).map((p) => ({ ...p, share: 1 })),
      planned,
    },
  ],
});

export const AREAS: readonly DemoStrip[] = [
  { id: 'hairline', title: 'front hairline', note: '60 % white · level 5', picture: brunette(22, 0.6) },
  { id: 'top', title: 'top', note: '25 % white · level 5', picture: brunette(32, 0.25) },
  { id: 'sides', title: 'sides', note: '20 % white · level 5', picture: brunette(26, 0.2) },
  { id: 'crown', title: 'crown', note: '15 % white · level 5', picture: brunette(34, 0.15) },
  {
    id: 'nape',
    title: 'nape',
    note: '5 % white · level 4',
    picture: oneSpan(
      24,
      'straight',
      75,
      [pop('white', 0.05, 'white'), pop('dark brown', 0.95, 'darkBrown')],
      [pop('brown', 1, 'brown')],
    ),
  },
];

export const KINDS: readonly DemoStrip[] = [
  {
    id: 'black',
    title: 'very dark',
    note: 'straight · 85 µm · 8 % white',
    picture: oneSpan(
      30,
      'straight',
      85,
      [pop('white', 0.08, 'white'), pop('black', 0.92, 'black')],
      [pop('black', 1, 'black')],
    ),
  },
  {
    id: 'wavy',
    title: 'wavy',
    note: 'copper over light brown',
    picture: oneSpan(30, 'wavy', 68, [pop('light brown', 1, 'lightBrown')], [pop('copper', 1, 'copper')]),
  },
  {
    id: 'curly',
    title: 'curly',
    note: 'packets over dark brown',
    picture: oneSpan(
      28,
      'curly',
      70,
      [pop('white', 0.2, 'white'), pop('dark brown', 0.8, 'darkBrown')],
      [pop('lights', 0.3, 'blonde', { widthMm: 5, everyMm: 14 }), pop('brown', 0.7, 'brown')],
    ),
  },
  {
    id: 'coily',
    title: 'tightly curled',
    note: 'measured stretched',
    picture: oneSpan(
      24,
      'coily',
      66,
      [pop('white', 0.15, 'white'), pop('black', 0.85, 'black')],
      [pop('dark brown', 1, 'darkBrown')],
    ),
  },
  {
    id: 'white',
    title: 'all white',
    note: 'fine · 55 µm',
    picture: oneSpan(20, 'straight', 55, [pop('white', 1, 'white')], [pop('toned', 1, 'paleBlonde')]),
  },
  {
    id: 'crop',
    title: 'cropped',
    note: 'all scalp · outside the screen',
    picture: {
      lengthCm: 3,
      hair: { texture: 'straight', diameterUm: 80 },
      spans: [
        {
          id: 'all',
          label: 'All',
          fromCm: 0,
          toCm: 3,
          bowls: ['A'],
          today: [pop('white', 0.3, 'white'), pop('brown', 0.7, 'brown')],
          planned: [{ name: 'red', share: 1, srgb: SHADES.red, outOfGamut: true }],
          fan: fan('red', 0.2),
        },
      ],
    },
  },
];
