import { call } from './client';
import type { components } from './schema';

type S = components['schemas'];
export type Booking = S['Booking'];
export type Booked = S['Booked'];
export type DiaryAnswer = S['DiaryAnswer'];
export type DueTest = S['DueTest'];
export type DuePerson = S['DuePerson'];
export type FreeStart = S['FreeStart'];
export type NewClient = S['NewClient'];

/** Those of which a minute lies between two instants, and how the house plans. */
export const diary = (from: string, until: string, signal?: AbortSignal) =>
  call<DiaryAnswer>('GET', `diary?from=${from}&until=${until}`, undefined, signal);

export const freeStarts = (from: string, until: string, minutes: number, who: string, signal?: AbortSignal) =>
  call<S['FreeAnswer']>(
    'GET',
    `diary/free?from=${from}&until=${until}&minutes=${Math.round(minutes)}&with=${encodeURIComponent(who)}`,
    undefined,
    signal,
  ).then((answer) => answer.starts);

export const testsDue = (signal?: AbortSignal) =>
  call<S['TestsDue']>('GET', 'diary/tests', undefined, signal).then((answer) => answer.tests);

export const peopleDue = (day: string, signal?: AbortSignal) =>
  call<S['PeopleDue']>('GET', `diary/due?day=${day}`, undefined, signal).then((answer) => answer.people);

export const openBooking = (id: string, signal?: AbortSignal) =>
  call<S['SavedBooking']>('GET', `bookings/${encodeURIComponent(id)}`, undefined, signal);

/** `seq` is the newest version seen, 0 for a new line; under the same entry it is kept once. */
export const saveBooking = (asked: S['AskedBooking']) => call<S['SavedBooking']>('POST', 'bookings', asked);

/** Cards and lists that a salon brings along: all of them or none. */
export const addClients = (clients: readonly NewClient[]) =>
  call<S['AddedClients']>('POST', 'clients', { clients });
