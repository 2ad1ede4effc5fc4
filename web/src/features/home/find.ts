import { listVisits, type VisitLine } from '../../api/visits';

/** How many earlier visits a new one offers to start from. */
const OFFERED = 5;

/** The latest visits of the client whose name is being typed, or the latest of all where no client has it. */
export async function offers(typed: string, signal?: AbortSignal): Promise<VisitLine[]> {
  const find = typed.trim();
  const found = find ? (await listVisits({ find, limit: OFFERED }, signal)).visits : [];
  return found.length ? found : (await listVisits({ limit: OFFERED }, signal)).visits;
}

/** The chosen visit stays offered, whatever is typed after it. */
export function withChosen(offered: readonly VisitLine[], chosen?: VisitLine): VisitLine[] {
  return chosen && !offered.some((visit) => visit.id === chosen.id)
    ? [chosen, ...offered.slice(0, OFFERED - 1)]
    : [...offered];
}

const plain = (s: string) => s.normalize('NFKD').replace(/\p{M}/gu, '').toLocaleLowerCase();

/** Whether what was typed is a part of this name; capitals and accents do not matter, as on the server. */
export const isPart = (typed: string, name: string): boolean => plain(name).includes(plain(typed.trim()));
