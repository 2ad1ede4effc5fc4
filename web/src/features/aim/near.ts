import type { Lab, ReachCellView, TargetView } from '../../api/types';
import type { Light } from '../../shell/view.svelte';
import type { Wish } from '../../visit/aims';
import { lightKey } from '../../visit/picture';
import { wordsFor, type Place } from '../../visit/reach';
import { scale, swatchOf } from '../../visit/scale.svelte';
import { directionWords } from '../../visit/words';

/** A colour to be drawn: where it lies and how it looks under the light of the screen. */
export interface Shown {
  lab: Lab;
  hex: string;
}

/** The wished colour: a whole level's swatch, else what the server makes of the wish; a swatch while it is asked. */
export function wished(
  wish: Wish,
  place: Place,
  target: TargetView | undefined,
  light: Light,
): Shown | undefined {
  const swatch = swatchOf(place.level, place.tone);
  const found =
    wish.level === place.level && !wish.second_tone ? swatch : target && !target.leave ? target : swatch;
  return found && { lab: found.lab, hex: found.srgb[lightKey[light]].hex };
}

/** The nearest colour. The map knows daylight; under a lamp it looks like the swatch whose words it has. */
export function nearest(cell: ReachCellView, light: Light): Shown {
  const swatch = light === 'daylight' ? undefined : wordsFor(cell.nearest, scale.swatches);
  return { lab: cell.nearest, hex: swatch?.srgb[lightKey[light]].hex ?? cell.srgb.hex };
}

/** "1.5 levels darker, cooler": which way the nearest lies from the wish; empty where it hardly differs. */
export function awayWords(
  cell: ReachCellView,
  wish: Wish,
  target: TargetView | undefined,
  from: Lab | undefined,
): string {
  // The cell tells its distance from its own whole level.
  const above = (wish.level ?? target?.level ?? cell.level) - cell.level;
  const [warm, red] = from ? [cell.nearest.b - from.b, cell.nearest.a - from.a] : [0, 0];
  return directionWords(cell.level_error - above, warm, red).join(', ');
}
