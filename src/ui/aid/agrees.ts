import type { Outcome, Test } from '../../engine/diagnose/evidence.ts';
import { BEEP_OHMS } from '../../engine/diagnose/instrument.ts';

/*
 * The engine's volts between nothing and mains, and its ohms of loads, rest on values that makers do not publish and
 * that differ from house to house. On a real visit only what does not hang on them may rule a fault out: a meter that
 * shows mains, next to nothing, or something between; a joint, a load, or no way through. So the true fault is never lost.
 */

/** Volts that still count as nothing, and volts that count as mains: the 230 V lamp of a tester lights from 195 V (common practice). */
const NEXT_TO_NOTHING = 15;
const MAINS = 195;
/** A floating core reads 20 to 110 V on a multimeter (common practice): what the engine has up to here may read nothing. */
const GHOST = 110;
/** A lamp or display of a two-pole tester up to here may be a core that only picks up volts (common practice). */
const FAINT_LAMP = 24;
/** What the engine shows short of mains by this little may be mains on site. */
const NEAR_MAINS = 150;

/** Fewer ohms than this are a joint and no load (assumption: leads and contacts have less, motors and coils more). */
const JOINT = 5;
/** More ohms than this count as no way through: meters end at about here (common practice). */
const OPEN = 10e6;

/** Whether what somebody found may be what the engine shows, within what a real house leaves open. */
export function mayBe(test: Test, found: Outcome, shown: Outcome): boolean {
  if (test.kind !== 'reads' || typeof found !== 'number' || typeof shown !== 'number') return found === shown;
  if (test.instrument === 'tester') return mayBeLamp(found, shown);
  return test.instrument === 'volts' ? mayBeVolts(found, shown) : mayBeOhms(found, shown);
}

function mayBeLamp(found: number, shown: number): boolean {
  if (found >= MAINS) return shown >= 120;
  if (found <= FAINT_LAMP) return shown <= FAINT_LAMP;
  return shown > 0 && shown < 230;
}

function mayBeVolts(found: number, shown: number): boolean {
  if (found >= MAINS) return shown >= NEAR_MAINS;
  if (found <= NEXT_TO_NOTHING) return shown <= GHOST;
  return shown > 0 && shown < MAINS;
}

function mayBeOhms(found: number, shown: number): boolean {
  if (found >= OPEN) return shown >= OPEN;
  if (shown >= OPEN) return false;
  if (found < JOINT) return shown < BEEP_OHMS;
  // A winding may have few ohms, an element very few: neither is a joint.
  return found < BEEP_OHMS || shown >= JOINT;
}

/** A name for all outcomes of a test that a real meter would not tell apart. */
export function siteClass(test: Test, outcome: Outcome): string {
  if (test.kind !== 'reads' || typeof outcome !== 'number') return String(outcome);
  const [low, high] =
    test.instrument === 'tester'
      ? [FAINT_LAMP, MAINS]
      : test.instrument === 'volts'
        ? [NEXT_TO_NOTHING, MAINS]
        : [BEEP_OHMS, OPEN];
  return outcome <= low ? 'low' : outcome < high ? 'between' : 'high';
}
