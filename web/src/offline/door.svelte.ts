import type { DoorAnswer, Role, TeamPerson } from '../api/types';

/** Who is in on this device. `shut` hides what is open until somebody signs in; it stays as it was left. */
export const door = $state<{
  /** What the server said of its door; nothing yet, or the server was silent from the start. */
  seen?: DoorAnswer;
  /** Who signed in last. */
  person?: TeamPerson;
  shut: boolean;
  /** Somebody wants to look around before the salon has an owner. */
  later: boolean;
}>({ shut: false, later: false });

/** The server wants to know who asks. */
export function shutOut(): void {
  door.shut = true;
}

/** Somebody came in. */
export function cameIn(person: TeamPerson): void {
  // What was open belongs to who opened it.
  if (door.person && door.person.id !== person.id) location.hash = '#/';
  door.person = person;
  if (door.seen) door.seen = { ...door.seen, people: true, fresh: false };
  door.shut = false;
}

/** What runs at this chair, told on the locked page too: when and what, nothing of whom. */
export const chair = $state<{ running?: { minute: number; calls: readonly string[] } }>({});

/** What somebody's role does; before the salon has people everybody does everything. */
const does = (...roles: readonly Role[]) =>
  !door.person || door.person.roles.some((role) => roles.includes(role));
export const mayBegin = () => does('colourist', 'apprentice', 'owner');
export const mayOrder = () => does('colourist', 'manager', 'owner');
export const opensHealth = () => does('colourist', 'assistant', 'apprentice', 'owner');
export const mayErase = () => does('owner');

const leads = ['manager', 'owner'];
export const isOwner = () => door.person?.roles.includes('owner') ?? false;
export const isLead = () => door.person?.roles.some((role) => leads.includes(role)) ?? false;
