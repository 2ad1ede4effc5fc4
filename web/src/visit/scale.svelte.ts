import { Away, Refused } from '../api/client';
import type { ShelfAnswer, Tone, ToneSwatch } from '../api/types';
import * as api from '../api/visits';

/** What the whole app asks once: the level scale's swatches and the salon's shelf. */
export const scale = $state<{ swatches: ToneSwatch[]; shelf: ShelfAnswer | undefined; failed: boolean }>({
  swatches: [],
  shelf: undefined,
  failed: false,
});

let asked: Promise<void> | undefined;

/** Asks for them the first time; asks again after a failure. */
export function loadScale(): Promise<void> {
  asked ??= (async () => {
    try {
      const [levels, shelf] = await Promise.all([api.levels(), api.shelf()]);
      scale.swatches = levels.swatches;
      scale.shelf = shelf;
      scale.failed = false;
    } catch (error) {
      asked = undefined;
      scale.failed = true;
      if (!(error instanceof Away || error instanceof Refused)) throw error;
    }
  })();
  return asked;
}

/** The swatch of a level and tone word; undefined until the scale is loaded. */
export function swatchOf(level: number, tone: Tone): ToneSwatch | undefined {
  return scale.swatches.find((s) => s.level === level && s.tone === tone);
}
