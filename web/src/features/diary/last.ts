import type { Booking } from '../../api/diary';
import { factsOf, openClient } from '../../api/facts';

const LONGEST_MIN = 720;

/** What the newest visit of a client took: minutes as they were agreed, products as they were mixed. */
export async function lastOf(
  person: string,
): Promise<{ minutes: number; take: NonNullable<Booking['take']> } | undefined> {
  const newest = (await openClient(person)).history[0];
  if (!newest) return undefined;
  const facts = await factsOf(newest.visit_id);
  const sums = new Map<string, { product: string; name: string; grams: number }>();
  let minutes = 0;
  for (const fact of facts) {
    if (fact.kind === 'agreed' && fact.body) minutes = fact.body.minutes;
    if (fact.kind !== 'mixed' || !fact.body) continue;
    fact.body.parts.forEach(({ product, grams }, i) => {
      const sum = sums.get(product) ?? { product, name: fact.body?.names?.[i] ?? product, grams: 0 };
      sums.set(product, { ...sum, grams: sum.grams + grams });
    });
  }
  if (!sums.size && !minutes) return undefined;
  return { minutes: Math.min(Math.ceil(minutes / 5) * 5, LONGEST_MIN), take: [...sums.values()] };
}
