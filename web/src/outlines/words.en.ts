import type { BaseArea, Cut, HeadArea, View } from './types';

const VIEW: Record<View, string> = {
  front: 'front',
  left: 'left',
  right: 'right',
  back: 'back',
  top: 'above',
};

/** English words for the outlines. */
export const outlineWordsEn = {
  views: 'Seen from',
  areas: 'Areas',
  view: VIEW,
  drawing: (view: View) =>
    view === 'left' || view === 'right'
      ? `Head from the ${view} side`
      : view === 'top'
        ? 'Head from above'
        : `Head from the ${view}`,
  split: {
    'front-back': 'part front | back',
    'left-right': 'part left | right',
    'upper-lower': 'part upper | lower',
  },
  merge: 'make one area',
  none: 'nothing chosen',
  chosen: (count: number) => `${count} chosen`,
};

const AREA: Record<BaseArea, string> = {
  hairline: 'front hairline',
  'temple-left': 'left temple',
  'temple-right': 'right temple',
  top: 'top',
  crown: 'crown',
  'side-left': 'left side',
  'side-right': 'right side',
  nape: 'nape',
};
export const areaNameEn = (base: BaseArea): string => AREA[base];

const PART: Record<Cut, readonly [string, string]> = {
  'front-back': ['front', 'back'],
  'left-right': ['left', 'right'],
  'upper-lower': ['upper', 'lower'],
};
export const partNameEn = (area: HeadArea, cut: Cut, index: number): string =>
  `${area.label} ${PART[cut][index] ?? ''}`;
