import { Away, Refused } from '../api/client';
import type { ShelfAnswer, Tone, ToneSwatch } from '../api/types';
import * as api from '../api/visits';

/** What the whole app asks once: the level scale's swatches and the salon's shelf. */
class Scale {
  swatches = $state.raw<readonly ToneSwatch[]>([]);
  shelf = $state.raw<ShelfAnswer>();
  failed = $state(false);
  readonly #byName = $derived(new Map(this.swatches.map((s) => [`${s.level} ${s.tone}`, s])));

  swatch(level: number, tone: Tone): ToneSwatch | undefined {
    return this.#byName.get(`${level} ${tone}`);
  }
}
export const scale = new Scale();

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
  return scale.swatch(level, tone);
}
