import type { DoorAnswer, TeamPerson } from '../api/types';

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

const leads = ['manager', 'owner'];
export const isOwner = () => door.person?.roles.includes('owner') ?? false;
export const isLead = () => door.person?.roles.some((role) => leads.includes(role)) ?? false;
