import type { System } from '../model/system.ts';

/** Something wrong with the colour of a core, whatever it is wired to. */
export interface CoreTrouble {
  readonly part: string;
  readonly terminal: string;
  readonly says: string;
  readonly source: string;
}

/**
 * Colours of cores that would mislead (BS 7671:2018, 514.3 and 514.4): green and yellow is for earth alone, and a blue
 * core on anything but neutral wears a brown sleeve at both ends. The leads of valves keep the trade's own colours.
 */
export const checkCores = ({ parts }: System): CoreTrouble[] =>
  parts.flatMap(({ id, kind }) =>
    kind.terminals.flatMap(({ id: terminal, core, duty, sleeve }): CoreTrouble[] => {
      const at = { part: id, terminal };
      if (core === 'green-yellow' && duty !== 'earth')
        return [
          { ...at, says: 'a green and yellow core that is not the earth', source: 'BS 7671:2018, 514.4.2' },
        ];
      if (duty === 'earth' && core !== 'green-yellow')
        return [{ ...at, says: `an earth in a ${core} core`, source: 'BS 7671:2018, 514.4.2' }];
      if (core === 'blue' && (duty === 'line' || duty === 'switched') && sleeve !== 'brown')
        return [
          { ...at, says: 'a blue core used as line with no brown sleeve', source: 'BS 7671:2018, 514.3' },
        ];
      return [];
    }),
  );
