/** What a platform hands over in the address of a launch (cmi5 8.1). */
export interface LaunchQuery {
  /** Of the record store, with a slash at its end. */
  readonly endpoint: string;
  /** Where the token is to be had, once. */
  readonly fetch: string;
  readonly actor: Actor;
  readonly registration: string;
  readonly activityId: string;
}

/** The learner, as the platform writes them (cmi5 9.2): sent back as it came. */
export interface Actor {
  readonly objectType?: 'Agent';
  readonly name?: string;
  readonly account?: { readonly homePage: string; readonly name: string };
}

/** What the platform has written down for this launch (cmi5 10). */
export interface LaunchData {
  readonly contextTemplate: ContextTemplate;
  readonly launchMode: 'Normal' | 'Browse' | 'Review';
  readonly masteryScore: number | undefined;
  readonly returnURL: string | undefined;
}

/** What the context of every statement is made from. */
export interface ContextTemplate {
  readonly contextActivities?: Readonly<Record<string, unknown>>;
  readonly extensions?: Readonly<Record<string, unknown>>;
  readonly [other: string]: unknown;
}

const isObject = (data: unknown): data is Readonly<Record<string, unknown>> =>
  typeof data === 'object' && data !== null && !Array.isArray(data);

/** An address of the web, or undefined: nothing else is ever fetched or gone to. */
export function webAddress(text: unknown): string | undefined {
  if (typeof text !== 'string') return undefined;
  try {
    const { protocol, href } = new URL(text);
    return protocol === 'https:' || protocol === 'http:' ? href : undefined;
  } catch {
    return undefined;
  }
}

/**
 * The launch in the address of this page.
 * @throws RangeError that names what is missing
 */
export function readLaunch(address: string): LaunchQuery {
  const said = new URL(address).searchParams;
  const need = (name: string): string => {
    const value = said.get(name);
    if (!value) throw new RangeError(`its launch does not say “${name}”`);
    return value;
  };
  const endpoint = webAddress(need('endpoint'));
  const token = webAddress(need('fetch'));
  if (!endpoint) throw new RangeError('its launch gives an “endpoint” that is no address');
  if (!token) throw new RangeError('its launch gives a “fetch” that is no address');
  let actor: unknown;
  try {
    actor = JSON.parse(need('actor'));
  } catch {
    throw new RangeError('its launch gives an “actor” that cannot be read');
  }
  if (!isObject(actor)) throw new RangeError('its launch gives an “actor” that cannot be read');
  return {
    endpoint: endpoint.endsWith('/') ? endpoint : `${endpoint}/`,
    fetch: token,
    actor: actor as Actor,
    registration: need('registration'),
    activityId: need('activityId'),
  };
}

/**
 * The launch data out of its document.
 * @throws RangeError that names what does not fit
 */
export function readLaunchData(data: unknown): LaunchData {
  if (!isObject(data) || !isObject(data.contextTemplate))
    throw new RangeError('its launch data has no “contextTemplate”');
  const { contextTemplate, launchMode, masteryScore, returnURL } = data;
  if (launchMode !== 'Normal' && launchMode !== 'Browse' && launchMode !== 'Review')
    throw new RangeError('its launch data has no “launchMode”');
  const isShare = typeof masteryScore === 'number' && masteryScore >= 0 && masteryScore <= 1;
  return {
    contextTemplate: contextTemplate as ContextTemplate,
    launchMode,
    masteryScore: isShare ? masteryScore : undefined,
    returnURL: webAddress(returnURL),
  };
}
