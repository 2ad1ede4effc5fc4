import type { StripLayout } from './layout';
import { rnd } from './random';
import type { StrandPicture } from './types';

/** What one drawing of hair needs. */
export interface PaintRequest {
  readonly picture: StrandPicture;
  readonly layout: StripLayout;
  readonly seed: number;
  /** Device px per CSS px. */
  readonly dpr: number;
  /** 0 draws the body colours alone; 1, the default, is the picture. */
  readonly sheen?: number;
}

/** Phase (rad) along straight hair at which the first highlight lies; each strip has its own. */
export const sheenStart = (seed: number): number => 1.2 + 2.2 * rnd(seed, 9, 3);
