import type { BowlView } from '../../api/types';
import { money } from '../../i18n/format';
import { t } from '../../i18n/index.svelte';
import { scale } from '../../visit/scale.svelte';

/** What bowls cost; where the price of one part is not known, nobody knows what they cost. */
export function costWords(cost: number, currency: string, bowls: readonly Pick<BowlView, 'parts'>[]): string {
  const unknown = bowls.some((bowl) =>
    bowl.parts.some((part) => scale.shelf?.products.find((p) => p.id === part.product)?.price_per_g === 0),
  );
  return unknown ? t('shelf.no_price') : money(cost, currency);
}
