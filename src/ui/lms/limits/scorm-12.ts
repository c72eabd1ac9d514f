import { both, type Model, read, write } from './model.ts';
import { both as all, type Check, decimal, matching, oneOf, upTo } from './value.ts';

/*
  SCORM 1.2 Run-Time Environment (ADL, October 2001), section 3.4: its data types (3.4.2.1) and, for each element, who
  may do what with it and which words it takes.
*/

/** The longest suspend data: CMIString4096. */
export const SUSPEND_12 = 4096;
/** The longest bookmark: CMIString255. */
export const LOCATION_12 = 255;

/** CMIIdentifier: 255 letters and digits; hyphen and underscore too, as the annotated lists of limits have it. */
const identifier = matching(/^[A-Za-z0-9_-]{1,255}$/, '1 to 255 letters, digits, hyphens and underscores');
/** CMIDecimal of a score: 0 to 100. */
const score = decimal(0, 100, 2);
/** CMITimespan: HHHH:MM:SS.SS. */
const timespan = matching(/^\d{2,4}:[0-5]\d:[0-5]\d(\.\d{1,2})?$/, 'a time span HHHH:MM:SS.SS');
/** CMITime: HH:MM:SS.SS. */
const clock = matching(/^([01]\d|2[0-3]):[0-5]\d:[0-5]\d(\.\d{1,2})?$/, 'a time of day HH:MM:SS.SS');
const types = [
  'true-false',
  'choice',
  'fill-in',
  'matching',
  'performance',
  'sequencing',
  'likert',
  'numeric',
] as const;

/** CMIFeedback of a type: 255 characters, and what the type asks for. */
export function response12(type: string): Check {
  const form: Readonly<Record<string, Check>> = {
    numeric: decimal(-1e9, 1e9, 6),
    'true-false': matching(/^[01tf]/, '0, 1, t or f'),
    choice: matching(/^\{?[a-z0-9](,[a-z0-9])*\}?$/, 'single letters or digits with commas between'),
    sequencing: matching(/^[a-z0-9](,[a-z0-9])*$/, 'single letters or digits with commas between'),
    matching: matching(/^\{?[a-z0-9]\.[a-z0-9](,[a-z0-9]\.[a-z0-9])*\}?$/, 'pairs such as a.1, with commas'),
  };
  const own = form[type];
  return own ? all(upTo(255), own) : upTo(255);
}

export const scorm12: Model = {
  'cmi.core.student_id': read,
  'cmi.core.student_name': read,
  'cmi.core.lesson_location': both(upTo(LOCATION_12)),
  'cmi.core.credit': read,
  // “not attempted” is the platform's word alone.
  'cmi.core.lesson_status': both(oneOf('passed', 'completed', 'failed', 'incomplete', 'browsed')),
  'cmi.core.entry': read,
  'cmi.core.score._children': read,
  'cmi.core.score.raw': both(score),
  'cmi.core.score.min': both(score),
  'cmi.core.score.max': both(score),
  'cmi.core.total_time': read,
  'cmi.core.lesson_mode': read,
  'cmi.core.exit': write(oneOf('time-out', 'suspend', 'logout', '')),
  'cmi.core.session_time': write(timespan),
  'cmi.suspend_data': both(upTo(SUSPEND_12)),
  'cmi.launch_data': read,
  'cmi.student_data.mastery_score': read,
  'cmi.interactions._children': read,
  'cmi.interactions._count': read,
  'cmi.interactions.n.id': write(identifier),
  'cmi.interactions.n.objectives.n.id': write(identifier),
  'cmi.interactions.n.time': write(clock),
  'cmi.interactions.n.type': write(oneOf(...types)),
  'cmi.interactions.n.student_response': write(upTo(255)),
  'cmi.interactions.n.result': write((value) =>
    /^-?\d+(\.\d+)?$/.test(value) ? undefined : oneOf('correct', 'wrong', 'unanticipated', 'neutral')(value),
  ),
  'cmi.interactions.n.latency': write(timespan),
};
