import { heard, lost } from '../offline/server.svelte';
import type { Problem } from './types';

/** The server answered that the input cannot be worked with: codes, places, parameters. */
export class Refused extends Error {
  constructor(
    readonly status: number,
    readonly problems: Problem[],
  ) {
    super(problems.map((p) => p.code).join(', ') || `status ${status}`);
  }
}

/** The server did not answer. */
export class Away extends Error {}

function problemsIn(body: unknown): Problem[] {
  const list = (body as { problems?: unknown } | null)?.problems;
  return Array.isArray(list) ? (list as Problem[]) : [];
}

/** One request to the salon's server. Throws Refused, Away, or the caller's own AbortError. */
export async function call<T>(
  method: 'GET' | 'POST' | 'PUT' | 'DELETE',
  path: string,
  body?: unknown,
  signal?: AbortSignal,
  more: Record<string, string> = {},
): Promise<T> {
  let response: Response;
  try {
    response = await fetch(`api/v1/${path}`, {
      method,
      headers: body === undefined ? more : { 'content-type': 'application/json', ...more },
      body: body === undefined ? undefined : JSON.stringify(body),
      signal,
      cache: 'no-store',
    });
  } catch (error) {
    if (signal?.aborted) throw error;
    lost();
    throw new Away();
  }
  heard();
  const text = await response.text();
  let answer: unknown;
  try {
    answer = text ? JSON.parse(text) : undefined;
  } catch {
    throw new Refused(response.status, [{ code: 'answer_not_json', path: '', params: {} }]);
  }
  if (!response.ok) throw new Refused(response.status, problemsIn(answer));
  return answer as T;
}
