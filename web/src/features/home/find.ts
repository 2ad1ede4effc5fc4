import { findClients } from '../../api/facts';
import { listVisits, type VisitLine } from '../../api/visits';

/** How many earlier visits a new one offers to start from. */
const OFFERED = 5;

/** Drafts, and the newest visit of each client that was handed in. */
async function both(find: string, signal?: AbortSignal): Promise<VisitLine[]> {
  const [drafts, clients] = await Promise.all([
    listVisits({ find, limit: OFFERED }, signal),
    findClients(find, OFFERED, signal),
  ]);
  const past = clients.map((one) => ({
    ...{ id: one.last_visit, seq: 0, client: one.name, date: one.last_date, person: one.id },
    ...{ opened_at: '', changed_at: one.last_date },
  }));
  return [...past, ...drafts.visits].slice(0, OFFERED);
}

/** The latest visits of the client whose name is being typed, or the latest of all where no client has it. */
export async function offers(typed: string, signal?: AbortSignal): Promise<VisitLine[]> {
  const find = typed.trim();
  const found = find ? await both(find, signal) : [];
  return found.length ? found : both('', signal);
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
