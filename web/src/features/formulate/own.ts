import type { Bowl, PlanAnswer, Visit } from '../../api/types';
import { ownBowl } from '../../visit/work.svelte';

/**
 * The bowls of a plan as they are in hand: the document's own where it has these. The plan may be an answer behind it, and
 * a gram must be put beside the last one, not beside the last answer.
 */
export function bowlsInHand({ bowls: own = [] }: Visit, { bowls }: PlanAnswer): Bowl[] {
  const these =
    own.length === bowls.length &&
    own.every(({ label, parts }, nth) => {
      const planned = bowls[nth]!;
      return (
        label === planned.label &&
        parts.length === planned.parts.length &&
        parts.every(({ product }, i) => product === planned.parts[i]!.product)
      );
    });
  return these ? own : bowls.map(ownBowl);
}

/** These bowls with one part of one of them weighed anew. */
export const weighed = (bowls: readonly Bowl[], label: string, part: number, grams: number): Bowl[] =>
  bowls.map((bowl) =>
    bowl.label === label
      ? { ...bowl, parts: bowl.parts.map((p, i) => (i === part ? { ...p, grams } : p)) }
      : bowl,
  );
