import { Away, Refused } from '../api/client';
import { signOut } from '../api/door';
import { shutOut } from './door.svelte';

/** Hides what is open, and signs this device out: loaded again, it opens nothing. */
export async function lock(): Promise<void> {
  shutOut();
  try {
    await signOut();
  } catch (error) {
    // A session that nobody could end ends by itself.
    if (!(error instanceof Away || error instanceof Refused)) throw error;
  }
}
