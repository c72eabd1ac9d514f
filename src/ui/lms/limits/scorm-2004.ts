import { both, type Model, read, write } from './model.ts';
import { both as all, type Check, decimal, matching, oneOf, upTo } from './value.ts';

/*
  SCORM 2004 4th Edition Run-Time Environment (ADL, 2009), section 4.2: least lengths that every platform must take
  (SPM), words and formats of each element. Formats are IEEE 1484.11.1's.
*/

/** The longest suspend data: SPM 64,000. */
export const SUSPEND_2004 = 64_000;
/** The longest bookmark: SPM 1,000. */
export const LOCATION_2004 = 1000;

/** long_identifier_type: SPM 4,000, characters of a URI. */
const longId = all(
  upTo(4000),
  matching(/^[A-Za-z0-9()+.:=@;$_!*'%/#-]+$/, 'letters, digits and the marks that a URI may have'),
);
const SHORT = /^[A-Za-z0-9()+.:=@;$_!*'%/#-]{1,250}$/;
/** timeinterval(second,10,2) and time(second,10,0). */
const interval = matching(
  /^P(?=.)(\d+Y)?(\d+M)?(\d+D)?(T(?=.)(\d+H)?(\d+M)?(\d+(\.\d{1,2})?S)?)?$/,
  'an ISO 8601 duration with at most hundredths of a second',
);
const moment = matching(
  /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d{1,2}(Z|[+-]\d\d:\d\d)?)?$/,
  'an ISO 8601 date and time with at most hundredths of a second',
);
/** real(10,7). */
const real = (least: number, most: number) => decimal(least, most, 7);

const parts = (value: string, most: number, fits: (part: string) => boolean): boolean => {
  const list = value.split('[,]');
  return list.length <= most && list.every(fits);
};
const responses: Readonly<Record<string, Check>> = {
  choice: (value) =>
    value === '' || parts(value, 36, (part) => SHORT.test(part)) ? undefined : 'at most 36 short names',
  sequencing: (value) =>
    parts(value, 36, (part) => SHORT.test(part)) ? undefined : 'at most 36 short names',
  matching: (value) =>
    parts(
      value,
      36,
      (part) => part.split('[.]').length === 2 && part.split('[.]').every((id) => SHORT.test(id)),
    )
      ? undefined
      : 'at most 36 pairs of short names',
  performance: (value) =>
    parts(value, 250, (part) => {
      const [name = '', answer, ...more] = part.split('[.]');
      return (
        more.length === 0 && answer !== undefined && answer.length <= 250 && (name === '' || SHORT.test(name))
      );
    })
      ? undefined
      : 'at most 250 steps, each a short name and an answer of at most 250 characters',
  numeric: real(-1e9, 1e9),
  'fill-in': upTo(250),
  'long-fill-in': upTo(4000),
  'true-false': oneOf('true', 'false'),
  likert: matching(SHORT, 'a short name'),
  other: upTo(4000),
};

/** What a learner's response of a type must look like (RTE 4.2.9.1). */
export const response2004 = (type: string): Check => responses[type] ?? (() => 'a type of the standard');

export const scorm2004: Model = {
  'cmi.completion_status': both(oneOf('completed', 'incomplete', 'not attempted', 'unknown')),
  'cmi.completion_threshold': read,
  'cmi.credit': read,
  'cmi.entry': read,
  'cmi.exit': write(oneOf('time-out', 'suspend', 'logout', 'normal', '')),
  'cmi.interactions._count': read,
  'cmi.interactions.n.id': both(longId),
  'cmi.interactions.n.type': both(oneOf(...Object.keys(responses))),
  'cmi.interactions.n.objectives.n.id': both(longId),
  'cmi.interactions.n.timestamp': both(moment),
  'cmi.interactions.n.learner_response': both(() => undefined),
  'cmi.interactions.n.result': both((value) =>
    /^-?\d+(\.\d{1,7})?$/.test(value)
      ? undefined
      : oneOf('correct', 'incorrect', 'unanticipated', 'neutral')(value),
  ),
  'cmi.interactions.n.latency': both(interval),
  'cmi.interactions.n.description': both(upTo(250)),
  'cmi.launch_data': read,
  'cmi.learner_id': read,
  'cmi.learner_name': read,
  'cmi.location': both(upTo(LOCATION_2004)),
  'cmi.mode': read,
  'cmi.progress_measure': both(real(0, 1)),
  'cmi.scaled_passing_score': read,
  'cmi.score.scaled': both(real(-1, 1)),
  'cmi.score.raw': both(real(-1e9, 1e9)),
  'cmi.score.min': both(real(-1e9, 1e9)),
  'cmi.score.max': both(real(-1e9, 1e9)),
  'cmi.session_time': write(interval),
  'cmi.success_status': both(oneOf('passed', 'failed', 'unknown')),
  'cmi.suspend_data': both(upTo(SUSPEND_2004)),
  'cmi.total_time': read,
};
