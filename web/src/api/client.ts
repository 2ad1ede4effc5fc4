import { run } from '../back/back';
import { shutOut } from '../offline/door.svelte';
import { heard, lost } from '../offline/server.svelte';
import { unpack, type Kept } from './parcel';
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

const base = new URL('api/v1/', document.baseURI).href;

/** The zones of the last answer to each kind of question. */
const kept = new Map<string, Kept>();

/** One request to the salon's server. Throws Refused, Away, or the caller's own AbortError. */
export async function call<T>(
  method: 'GET' | 'POST' | 'PUT' | 'DELETE',
  path: string,
  body?: unknown,
  signal?: AbortSignal,
  more: Record<string, string> = {},
): Promise<T> {
  // The answer is packed for what the page has now; another one may come first.
  const has = kept.get(path);
  const reply = await run(
    'send',
    {
      method,
      kind: path,
      has: has?.nth,
      url: `${base}${path}`,
      headers: body === undefined ? more : { 'content-type': 'application/json', ...more },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    },
    signal,
  );
  if ('away' in reply) {
    lost();
    throw new Away();
  }
  heard();
  let answer: unknown;
  try {
    const read = unpack(reply.parcel, has);
    answer = read.answer;
    if (read.kept) kept.set(path, read.kept);
  } catch {
    throw new Refused(reply.status, [{ code: 'answer_not_json', path: '', params: {} }]);
  }
  if (reply.status >= 200 && reply.status <= 299) return answer as T;
  const problems = problemsIn(answer);
  // Nobody is in any more: as with a silent server, what is open waits and is handed in later.
  if (problems[0]?.code === 'not_signed_in') {
    shutOut();
    throw new Away();
  }
  throw new Refused(reply.status, problems);
}
