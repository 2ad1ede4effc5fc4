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

let levels: Promise<void> | undefined;
let asked: Promise<void> | undefined;
/** The shelf that is looked at: that of the open visit; "" = the one new visits plan on. */
let wanted = '';

/** Asks for them the first time; asks again after a failure. */
export function loadScale(): Promise<void> {
  asked ??= (async () => {
    try {
      levels ??= api.levels().then((answer) => {
        scale.swatches = answer.swatches;
      });
      const name = wanted;
      const [shelf] = await Promise.all([api.shelf(name), levels]);
      if (name === wanted) scale.shelf = shelf;
      scale.failed = false;
    } catch (error) {
      asked = levels = undefined;
      scale.failed = true;
      if (!(error instanceof Away || error instanceof Refused)) throw error;
    }
  })();
  return asked;
}

/** From now on this shelf, by the name that a visit gives it. */
export function wantShelf(name: string): void {
  if (name === wanted) return;
  wanted = name;
  asked = undefined;
}

/** Asks for it again: somebody changed it. */
export function forgetShelf(): void {
  asked = undefined;
}

/** The swatch of a level and tone word; undefined until the scale is loaded. */
export function swatchOf(level: number, tone: Tone): ToneSwatch | undefined {
  return scale.swatch(level, tone);
}
