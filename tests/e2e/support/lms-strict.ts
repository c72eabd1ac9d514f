/*
  The limits of the standards, put around the usual test double, which is laxer than they are (it takes 64,000
  characters of suspend data in SCORM 1.2, identifiers with any character, responses of any length). Written down here
  a second time, and on purpose not taken from the site's own lists.
  Sources: SCORM 1.2 Run-Time Environment (ADL, 2001) 3.4; SCORM 2004 4th Edition Run-Time Environment (ADL, 2009) 4.2.
*/

type Methods = Record<string, (...args: string[]) => unknown>;

/** A platform that keeps to its standard by the letter. */
export interface Strict {
  readonly api: Methods;
  /** Every breach, as `element: what was written`. */
  readonly breaches: string[];
  /** Every call, in order: `LMSSetValue cmi.core.exit suspend`. */
  readonly calls: string[];
}

/**
 * Wraps an API so that a breach is refused and written down. It is sent to the browser as text, so it uses nothing from
 * outside of itself.
 */
export function makeStrict(inner: unknown, standard: 'scorm-1.2' | 'scorm-2004'): Strict {
  const raw = inner as Methods;
  const is12 = standard === 'scorm-1.2';
  const breaches: string[] = [];
  const calls: string[] = [];
  const types = new Map<string, string>();
  let isBegun = false;
  let isOver = false;
  const text = (most: number) => new RegExp(`^[\\s\\S]{0,${most}}$`);
  const rules: [RegExp, RegExp][] = is12
    ? [
        [/^cmi\.core\.lesson_location$/, text(255)],
        [/^cmi\.core\.lesson_status$/, /^(passed|completed|failed|incomplete|browsed)$/],
        [/^cmi\.core\.score\.(raw|min|max)$/, /^(100(\.0+)?|\d{1,2}(\.\d+)?)$/],
        [/^cmi\.core\.exit$/, /^(time-out|suspend|logout|)$/],
        [/^cmi\.core\.session_time$/, /^\d{2,4}:\d\d:\d\d(\.\d{1,2})?$/],
        [/^cmi\.suspend_data$/, text(4096)],
        [/^cmi\.interactions\.\d+\.id$/, /^[A-Za-z0-9_-]{1,255}$/],
        [/^cmi\.interactions\.\d+\.objectives\.\d+\.id$/, /^[A-Za-z0-9_-]{1,255}$/],
        [/^cmi\.interactions\.\d+\.time$/, /^([01]\d|2[0-3]):[0-5]\d:[0-5]\d(\.\d{1,2})?$/],
        [
          /^cmi\.interactions\.\d+\.type$/,
          /^(true-false|choice|fill-in|matching|performance|sequencing|likert|numeric)$/,
        ],
        [/^cmi\.interactions\.\d+\.student_response$/, text(255)],
        [/^cmi\.interactions\.\d+\.result$/, /^(correct|wrong|unanticipated|neutral|-?\d+(\.\d+)?)$/],
        [/^cmi\.interactions\.\d+\.latency$/, /^\d{2,4}:\d\d:\d\d(\.\d{1,2})?$/],
      ]
    : [
        [/^cmi\.location$/, text(1000)],
        [/^cmi\.completion_status$/, /^(completed|incomplete|not attempted|unknown)$/],
        [/^cmi\.success_status$/, /^(passed|failed|unknown)$/],
        [/^cmi\.score\.scaled$/, /^-?(1(\.0{1,7})?|0(\.\d{1,7})?)$/],
        [/^cmi\.score\.(raw|min|max)$/, /^-?\d{1,10}(\.\d{1,7})?$/],
        [/^cmi\.progress_measure$/, /^(1(\.0{1,7})?|0(\.\d{1,7})?)$/],
        [/^cmi\.exit$/, /^(time-out|suspend|logout|normal|)$/],
        [/^cmi\.session_time$/, /^PT(\d+H)?(\d+M)?(\d+(\.\d{1,2})?S)?$/],
        [/^cmi\.suspend_data$/, text(64_000)],
        [/^cmi\.interactions\.\d+\.id$/, /^[\w()+.:=@;$!*'%/#-]{1,4000}$/],
        [/^cmi\.interactions\.\d+\.objectives\.\d+\.id$/, /^[\w()+.:=@;$!*'%/#-]{1,4000}$/],
        [
          /^cmi\.interactions\.\d+\.timestamp$/,
          /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,2}(Z|[+-]\d\d:\d\d)?)?$/,
        ],
        [
          /^cmi\.interactions\.\d+\.type$/,
          /^(true-false|choice|fill-in|long-fill-in|matching|performance|sequencing|likert|numeric|other)$/,
        ],
        [/^cmi\.interactions\.\d+\.learner_response$/, text(64_000)],
        [/^cmi\.interactions\.\d+\.result$/, /^(correct|incorrect|unanticipated|neutral|-?\d+(\.\d{1,7})?)$/],
        [/^cmi\.interactions\.\d+\.latency$/, /^PT(\d+H)?(\d+M)?(\d+(\.\d{1,2})?S)?$/],
        [/^cmi\.interactions\.\d+\.description$/, text(250)],
      ];
  /** What a response of a type looks like: RTE 1.2 3.4.7 (single letters), RTE 2004 4.2.9.1 (short identifiers). */
  const short = "[\\w()+.:=@;$!*'%/#-]{1,250}";
  const responses: Record<string, RegExp> = is12
    ? { choice: /^[a-z0-9](,[a-z0-9])*$/, sequencing: /^[a-z0-9](,[a-z0-9])*$/, numeric: /^-?\d+(\.\d+)?$/ }
    : {
        choice: new RegExp(`^(${short}(\\[,\\]${short}){0,35})?$`),
        sequencing: new RegExp(`^${short}(\\[,\\]${short}){0,35}$`),
        matching: new RegExp(`^${short}\\[\\.\\]${short}(\\[,\\]${short}\\[\\.\\]${short}){0,35}$`),
        performance: /^[^[\]]{0,250}\[\.\][^[\]]{0,250}(\[,\][^[\]]{0,250}\[\.\][^[\]]{0,250}){0,249}$/,
        numeric: /^-?\d+(\.\d{1,7})?$/,
        'fill-in': /^[\s\S]{0,250}$/,
      };
  const breach = (says: string) => {
    breaches.push(says);
    return 'false';
  };
  const [start, get, set, commit, end] = is12
    ? (['LMSInitialize', 'LMSGetValue', 'LMSSetValue', 'LMSCommit', 'LMSFinish'] as const)
    : (['Initialize', 'GetValue', 'SetValue', 'Commit', 'Terminate'] as const);
  const errors = is12
    ? (['LMSGetLastError', 'LMSGetErrorString'] as const)
    : (['GetLastError', 'GetErrorString'] as const);
  const pass =
    (name: string) =>
    (...args: string[]) => {
      calls.push([name, ...args].join(' ').trim());
      return raw[name]?.(...args);
    };
  const within =
    (name: string, does: (...args: string[]) => unknown) =>
    (...args: string[]) => {
      if (!isBegun || isOver) return breach(`${name} outside of the session`);
      return does(...args);
    };
  const api: Methods = {
    [start]: (...args) => {
      if (isBegun) return breach(`${start} a second time`);
      isBegun = true;
      return pass(start)(...args);
    },
    [get]: within(get, (element = '', ...rest) => {
      const isWriteOnly = is12
        ? /^cmi\.(core\.(exit|session_time)|interactions\.\d+\.)/.test(element)
        : /^cmi\.(exit|session_time)$/.test(element);
      return isWriteOnly ? breach(`${element}: read, and it is write-only`) : pass(get)(element, ...rest);
    }),
    [set]: within(set, (element = '', value = '') => {
      if (typeof value !== 'string') return breach(`${element}: not a string`);
      const rule = rules.find(([name]) => name.test(element));
      if (!rule) return breach(`${element}: not an element that may be written`);
      if (!rule[1].test(value))
        return breach(`${element}: ${value.length} characters, ${value.slice(0, 60)}`);
      const n = /^cmi\.interactions\.(\d+)\./.exec(element)?.[1] ?? '';
      if (element.endsWith('.type') && n) types.set(n, value);
      if (/_response$/.test(element)) {
        const form = responses[types.get(n) ?? ''];
        if (form && !form.test(value)) return breach(`${element} of ${types.get(n)}: ${value.slice(0, 60)}`);
      }
      return pass(set)(element, value);
    }),
    [commit]: within(commit, pass(commit)),
    [end]: within(end, (...args) => {
      isOver = true;
      return pass(end)(...args);
    }),
  };
  for (const name of errors) api[name] = (...args) => raw[name]?.(...args);
  return { api, breaches, calls };
}
