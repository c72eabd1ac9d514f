import type { LaunchQuery } from './launch.ts';

/** The version of xAPI that is spoken (cmi5 1.0 rests on 1.0.3). */
const XAPI = '1.0.3';

/** A record store did not take a request. */
export class Refused extends Error {
  /** 0 where it could not be reached. */
  readonly status: number;
  constructor(what: string, status: number, why: string) {
    super(`${what} was refused${status > 0 ? ` (${status})` : ''}${why && `: ${why}`}`);
    this.status = status;
  }
}

/** The documents and statements of one launch. Every call rejects with `Refused`. */
export interface RecordStore {
  /** A state document of this learner, activity and registration; undefined where there is none. */
  readonly state: (id: string) => Promise<unknown>;
  readonly putState: (id: string, document: unknown) => Promise<void>;
  /** A document about the learner; undefined where there is none. */
  readonly profile: (id: string) => Promise<unknown>;
  readonly send: (statements: readonly unknown[]) => Promise<void>;
}

const whyOf = async (answer: Response): Promise<string> =>
  (await answer.text().catch(() => '')).slice(0, 160);

/** Never rejects but with `Refused`. */
async function request(what: string, address: string, init: RequestInit): Promise<Response> {
  try {
    return await fetch(address, { ...init, credentials: 'omit', referrerPolicy: 'no-referrer' });
  } catch (problem) {
    throw new Refused(what, 0, problem instanceof Error ? problem.message : String(problem));
  }
}

/**
 * Asks for the token of a launch: by POST, and once, for a second time there is none (cmi5 8.2).
 * @throws Refused with what the platform says
 */
export async function fetchToken(address: string): Promise<string> {
  const what = 'Asking for leave to report';
  const answer = await request(what, address, { method: 'POST' });
  const text = await answer.text();
  let data: Readonly<Record<string, unknown>> = {};
  try {
    data = JSON.parse(text) as typeof data;
  } catch {
    throw new Refused(what, answer.status, 'the answer cannot be read');
  }
  const token = data['auth-token'];
  if (answer.ok && typeof token === 'string' && token !== '') return token;
  throw new Refused(
    what,
    answer.status,
    String(data['error-text'] ?? 'there is no token in the answer').slice(0, 160),
  );
}

/** @param isLast whether the page may be going away: then the browser sends on by itself */
export function makeRecordStore(launch: LaunchQuery, token: string, isLast: () => boolean): RecordStore {
  const headers = { Authorization: `Basic ${token}`, 'X-Experience-API-Version': XAPI };
  const json = { ...headers, 'Content-Type': 'application/json' };
  const agent = JSON.stringify(launch.actor);
  const at = (path: string, query: Readonly<Record<string, string>> = {}) => {
    const address = new URL(path, launch.endpoint);
    for (const [name, value] of Object.entries(query)) address.searchParams.set(name, value);
    return address.href;
  };
  const stateAt = (stateId: string) => {
    const { activityId, registration } = launch;
    return at('activities/state', { activityId, agent, registration, stateId });
  };
  const read = async (what: string, address: string): Promise<unknown> => {
    const answer = await request(what, address, { headers, cache: 'no-store' });
    if (answer.status === 404) return undefined;
    if (!answer.ok) throw new Refused(what, answer.status, await whyOf(answer));
    try {
      return await answer.json();
    } catch {
      throw new Refused(what, answer.status, 'the answer cannot be read');
    }
  };
  const write = async (what: string, method: string, address: string, body: unknown) => {
    const answer = await request(what, address, {
      method,
      headers: json,
      body: JSON.stringify(body),
      keepalive: isLast(),
    });
    if (!answer.ok) throw new Refused(what, answer.status, await whyOf(answer));
  };
  return {
    state: (id) => read(`Reading “${id}”`, stateAt(id)),
    putState: (id, document) => write('Keeping your place', 'PUT', stateAt(id), document),
    profile: (profileId) => read(`Reading “${profileId}”`, at('agents/profile', { agent, profileId })),
    send: (statements) => write('Your result', 'POST', at('statements'), statements),
  };
}
