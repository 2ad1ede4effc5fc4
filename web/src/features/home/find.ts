import type { VisitLine } from '../../api/visits';

const plain = (s: string) => s.normalize('NFD').replace(/\p{M}/gu, '').toLocaleLowerCase();

/** The visits whose client holds this text; capitals and accents do not matter. */
export const visitsOf = (visits: readonly VisitLine[], text: string): VisitLine[] =>
  visits.filter((visit) => plain(visit.client).includes(plain(text.trim())));

/** How many earlier visits a new one offers to start from. */
const OFFERED = 5;

/**
 * Earlier visits that a new one may start from: those of the client whose name is being typed, or the latest where no
 * client has it; the chosen one is always among them.
 */
export function offered(visits: readonly VisitLine[], typed: string, chosen: string): VisitLine[] {
  const known = visitsOf(visits, typed);
  const first = (known.length ? known : visits).slice(0, OFFERED);
  const kept = visits.find((visit) => visit.id === chosen);
  return kept && !first.includes(kept) ? [kept, ...first.slice(0, OFFERED - 1)] : first;
}
