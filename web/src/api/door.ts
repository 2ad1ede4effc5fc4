import { call } from './client';
import type { DoorAnswer, Invitation, PairedDevice, Role, SignedIn, TeamAnswer } from './types';

/** What is to be seen from outside: whether anybody signs in here, and who is in on this device. */
export const door = (signal?: AbortSignal) => call<DoorAnswer>('GET', 'door', undefined, signal);

/** The first owner, once. */
export interface Founding {
  name: string;
  passphrase: string;
  /** IANA name, "Europe/Vienna". */
  zone: string;
  shelf: 'invented' | 'empty';
  colours_hair?: 'yes';
  /** What an empty shelf is called. */
  shelf_title?: string;
}
export const found = (salon: Founding) => call<SignedIn>('POST', 'door/found', salon);

/** By name with the passphrase anywhere; by person with a PIN on a paired device only. */
export type SignIn = ({ name: string } | { person: string }) & ({ passphrase: string } | { pin: string });
export const signIn = (who: SignIn) => call<SignedIn>('POST', 'door/sign-in', who);
export const signOut = () => call('POST', 'door/sign-out', {});

export const changePassphrase = (now: string, next: string) => call('POST', 'door/passphrase', { now, next });
/** An empty PIN takes it away. */
export const changePin = (now: string, pin: string) => call('POST', 'door/pin', { now, pin });
export const pair = (name: string) => call<PairedDevice>('POST', 'door/pair', { name });
/** Lets one device that is elsewhere in, for some minutes. */
export const invite = () => call<Invitation>('POST', 'devices/invite', {});
/** On that device. */
export const redeem = (code: string, name: string) =>
  call<PairedDevice>('POST', 'door/redeem', { code, name });
export const recoveryWords = (passphrase: string) =>
  call<{ words: string }>('POST', 'door/recovery-words', { passphrase });

export const people = (signal?: AbortSignal) => call<TeamAnswer>('GET', 'people', undefined, signal);
const of = (id: string) => `people/${encodeURIComponent(id)}`;
export const addPerson = (name: string, roles: readonly Role[], passphrase: string) =>
  call<TeamAnswer>('POST', 'people', { name, roles: roles.join(','), passphrase });
export const setRoles = (id: string, roles: readonly Role[]) =>
  call<TeamAnswer>('POST', `${of(id)}/roles`, { roles: roles.join(',') });
export const resetPerson = (id: string, passphrase: string) =>
  call<TeamAnswer>('POST', `${of(id)}/reset`, { passphrase });
export const revokePerson = (id: string) => call<TeamAnswer>('POST', `${of(id)}/revoke`, {});
export const personLeaves = (id: string) => call<TeamAnswer>('POST', `${of(id)}/leave`, {});
export const unpair = (id: string) =>
  call<TeamAnswer>('POST', `devices/${encodeURIComponent(id)}/unpair`, {});
