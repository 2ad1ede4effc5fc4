import type { Running, Visit } from '../api/types';
import { sameDocument } from '../offline/drafts';

type Told = 'leave_by' | 'stopped_at' | 'ended_at';
const LISTS = ['marks', 'additions', 'leftovers'] as const;
const TOLD: readonly Told[] = ['leave_by', 'stopped_at', 'ended_at'];

/** Theirs with what was added to mine and without what was taken from it. */
function list<T>(base: readonly T[] = [], mine: readonly T[] = [], theirs: readonly T[] = []): T[] {
  const has = (all: readonly T[], one: T) => all.some((other) => sameDocument(one, other));
  return [
    ...theirs.filter((one) => has(mine, one) || !has(base, one)),
    ...mine.filter((one) => !has(base, one) && !has(theirs, one)),
  ];
}

function runs(base: Running | undefined, mine: Running | undefined, theirs: Running | undefined) {
  if (sameDocument(base, mine)) return { running: theirs };
  if (sameDocument(base, theirs)) return { running: mine };
  if (!mine || !theirs || mine.since !== theirs.since) return undefined;
  const running: Running = { ...theirs };
  for (const key of LISTS)
    Object.assign(running, { [key]: list<unknown>(base?.[key], mine[key], theirs[key]) });
  for (const key of TOLD) {
    if (mine[key] === base?.[key]) continue;
    if (theirs[key] !== base?.[key] && theirs[key] !== mine[key]) {
      // Whoever stopped first has stopped; all else a person decides.
      if (key !== 'stopped_at' || mine[key] === undefined || theirs[key] === undefined) return undefined;
      running[key] = Math.min(mine[key], theirs[key]);
    } else if (mine[key] === undefined) delete running[key];
    else running[key] = mine[key];
  }
  return { running };
}

/**
 * What two devices made of `base`: marks and grams of both. Undefined where that is for a person to decide: this device
 * changed more than the running visit, or both said another thing of the same.
 */
export function together(base: Visit, mine: Visit, theirs: Visit): Visit | undefined {
  const rest = ({ running: _, ...visit }: Visit) => visit;
  if (!sameDocument(rest(base), rest(mine))) return undefined;
  const found = runs(base.running, mine.running, theirs.running);
  return found && { ...theirs, running: found.running };
}
