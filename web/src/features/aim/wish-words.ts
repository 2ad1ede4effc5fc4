import { level, share } from '../../i18n/format';
import { t } from '../../i18n/index.svelte';
import type { Wish } from '../../visit/aims';
import { zoneWords } from '../../visit/words';

/** "as nape, lengths": a wish that speaks of the hair as it is today; nothing for one that names a colour. */
export function wishWords(wish: Wish | undefined): string[] {
  if (wish?.match !== undefined) return [t('wish.as_zone', zoneWords(wish.match))];
  if (wish?.brighter_by !== undefined) return [t('wish.brighter_by', level(wish.brighter_by))];
  if (wish?.blend !== undefined) return [t('wish.blended', share(wish.blend))];
  if (wish?.shadow !== undefined) return [t('wish.shadowed', level(wish.shadow))];
  return [];
}
