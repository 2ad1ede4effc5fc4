import { Away, Refused } from '../api/client';
import type { Problem } from '../api/types';

/** Why an answer is missing; `away` = the server is silent. */
export type Trouble = { away: true } | { away: false; problems: Problem[] };

/** What an error of a request means; anything else is thrown on. */
export const troubleOf = (error: unknown): Trouble => {
  if (error instanceof Refused) return { away: false, problems: error.problems };
  if (error instanceof Away) return { away: true };
  throw error;
};
