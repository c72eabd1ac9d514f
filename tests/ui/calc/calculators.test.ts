import { describe, expect, it } from 'vitest';
import { buildSearch, type SearchFile, searchEntries } from '../../../src/files/site/searchIndex.ts';
import { calculatorEntries } from '../../../src/ui/calc/entries.ts';
import { calculators } from '../../../src/ui/calc/index.ts';
import { outcomeOf } from '../../../src/ui/calc/outcome.ts';
import { queryOf, textsOf } from '../../../src/ui/calc/query.ts';
import { problemsOf, startTexts } from '../../../src/ui/calc/read.ts';
import { keepUnits } from '../../../src/ui/calc/units.ts';
import { finder } from '../../../src/ui/search/query.ts';

const named = (id: string) => {
  const found = calculators.find((one) => one.id === id);
  if (!found) throw new Error(`no calculator ${id}`);
  return found;
};
/** What the page says when the fields hold these texts, the others their start. */
const outcome = (id: string, texts: Record<string, string> = {}) =>
  outcomeOf(named(id), { ...startTexts(named(id)), ...texts });
const answer = (id: string, texts: Record<string, string> = {}) => {
  const found = outcome(id, texts);
  if (!('answer' in found)) throw new Error(JSON.stringify(found));
  return found.answer;
};

/** Reckons a sum as it is printed: + − × ÷ and brackets. */
function reckon(sum: string): number {
  expect(sum).toMatch(/^[\d.+−×÷() ]+$/);
  const signs: Record<string, string> = { '−': '-', '×': '*', '÷': '/' };
  return Number(new Function(`return ${sum.replace(/[−×÷]/g, (sign) => signs[sign] ?? sign)}`)());
}

describe.each(calculators)('the calculator “$title”', (calculator) => {
  it('opens with an answer, its working and its source', () => {
    const { lines, sources } = answer(calculator.id);
    expect(lines.length).toBeGreaterThan(1);
    for (const { what, rule, put, result } of lines) {
      for (const text of [what, rule, put, result]) expect(text).not.toMatch(/^$|NaN|undefined|Infinity/);
    }
    expect(sources.length).toBeGreaterThan(0);
  });

  it('has an answer for each of its examples, at an address that brings it back', () => {
    for (const { given } of calculator.examples) {
      const texts = { ...startTexts(calculator), ...given };
      expect(Object.keys(texts)).toEqual(Object.keys(startTexts(calculator)));
      expect(outcomeOf(calculator, texts)).toHaveProperty('answer');
      expect(textsOf(calculator, queryOf(calculator, texts))).toEqual(texts);
    }
  });

  it('shows a working that a pocket calculator confirms, to the last figure shown', () => {
    for (const given of [{}, ...calculator.examples.map((example) => example.given)]) {
      for (const { put, result, passes, lookedUp } of answer(calculator.id, given).lines) {
        if (passes !== undefined || lookedUp) continue;
        const shown = Number.parseFloat(result);
        const places = /^\d+\.(\d+)/.exec(result)?.[1]?.length ?? 0;
        const value = reckon(put) * (result.endsWith('%') ? 100 : 1);
        expect(Math.abs(value - shown), `${put} = ${result}`).toBeLessThanOrEqual(1.01 * 10 ** -places);
      }
    }
  });

  it('marks every number field left empty or typed as words, and says what it expects', () => {
    for (const field of calculator.fields) {
      if (field.kind !== 'number') continue;
      for (const [typed, seen] of [
        ['', 'nothing'],
        ['ten', '“ten”'],
        ['1e1', '“1e1”'],
        ['1,5', '“1,5”'],
      ]) {
        const problems = problemsOf(calculator, { ...startTexts(calculator), [field.id]: String(typed) });
        expect(Object.keys(problems)).toEqual([field.id]);
        expect(problems[field.id]).toMatch(/^Give a (whole )?number from /);
        expect(problems[field.id]).toContain(`not ${seen}.`);
      }
    }
  });

  it('works at both ends of every field, or says what does not go together', () => {
    for (const field of calculator.fields) {
      const ends =
        field.kind === 'number'
          ? [String(field.range.low), String(field.range.high)]
          : field.options.map(([value]) => value);
      for (const text of ends) {
        const found = outcome(calculator.id, { [field.id]: text });
        if ('answer' in found) expect(found.answer.says).not.toMatch(/NaN|undefined|Infinity/);
        else expect(found.together).toMatch(/, not .+\.$/);
      }
    }
  });
});

describe('an answer', () => {
  it('names D2 for the worked example of Approved Document G', () => {
    // Source: Approved Document G, 2015 edition with 2016 amendments, worked example: 28 mm.
    expect(answer('discharge-pipe', { run: '7', elbows: '4' })).toMatchObject({
      says: 'D1 15 mm, D2 28 mm or larger.',
      passes: true,
    });
  });

  it('does not pass a D1 longer than 600 mm', () => {
    // Source: Approved Document G, 2015 edition with 2016 amendments, 3.54.
    expect(answer('discharge-pipe', { d1: '750' })).toMatchObject({ passes: false });
  });

  it('says so when no size of the table will do', () => {
    expect(answer('discharge-pipe', { run: '40' }).says).toBe('No size in the table is enough for this run.');
  });

  it('sizes the vessel of a 210 litre store', () => {
    // Source: form of BS 7074-1, absolute pressures: 10.7 L (derived); 12 L is the next size sold (common practice).
    expect(answer('expansion-vessel').says).toBe('At least 10.7 L: the next size sold is 12 L.');
  });

  it('heats 210 litres in 36.6 minutes with 20 kW, at 14.3 L/min', () => {
    // Source: IAPWS-95, no losses (derived); flow 20 × 60 ÷ (4.186 × 20) = 14.3 (derived).
    const results = answer('reheat').lines.map(({ result }) => result);
    expect(results).toContain('36.6 min');
    expect(results).toContain('14.3 L/min');
  });

  it('sums the usual controls to 217 W', () => {
    // Source: 140 + 60 + 2 × 6 + 5 W (derived).
    expect(answer('fuse-sum').says).toBe('217 W, 0.94 A. A 3 A fuse carries it.');
  });

  it('loses 0.52 V in 10 m of 0.75 mm² flex at 1 A', () => {
    // Source: IEC 60228 class 5, 20 °C (derived).
    expect(answer('volt-drop').says).toBe('0.52 V lost with the flex cool, 0.62 V at 70 °C.');
  });

  it('does not pass an overloaded flex whose volt drop is small', () => {
    // Source: BS 7671 Table 4F3A, 0.5 mm² 3 A (secondary).
    expect(answer('volt-drop', { wiring: 'flex 0.5', metres: '1', amps: '4' })).toMatchObject({
      passes: false,
    });
  });

  it('warns of a loop that is inside the limit but not by enough', () => {
    expect(answer('loop-resistance', { spur: '14' })).toMatchObject({ passes: false });
    expect(answer('loop-resistance', { spur: '14' }).says).toContain('above the 80 % rule of thumb');
  });

  it('is refused, with reasons, where values do not go together', () => {
    expect(outcome('reheat', { from: '60', to: '60' })).toEqual({
      fields: {},
      together: 'Hot water: above the cold water, 60 °C, not 60.',
    });
    expect(outcome('loop-resistance', { kind: 'flex', line: '2.5' })).toMatchObject({
      together: 'Cross-section of a flex: one of 0.5, 0.75, 1, 1.5 mm², not 2.5.',
    });
  });
});

describe('a number and its unit', () => {
  it('stay on one line, and words stay apart', () => {
    expect(keepUnits('2 mm² at 5 % of 230 V, 0.6 Ω. 4 Valves')).toBe(
      '2\u00a0mm² at 5\u00a0% of 230\u00a0V, 0.6\u00a0Ω. 4 Valves',
    );
  });
});

describe('an address', () => {
  it('brings values, keeps what it does not name, and drops what no field knows', () => {
    const texts = textsOf(named('discharge-pipe'), '?run=12&colour=red');
    expect(texts).toEqual({ ...startTexts(named('discharge-pipe')), run: '12' });
  });

  it('is plain for the values a page opens with', () => {
    expect(queryOf(named('reheat'), startTexts(named('reheat')))).toBe('');
  });

  it('with a choice that does not exist is refused by name', () => {
    const { outlet } = problemsOf(named('discharge-pipe'), textsOf(named('discharge-pipe'), '?outlet=G+2'));
    expect(outlet).toBe('Pick one of G 1/2, G 3/4, G 1, not “G 2”.');
  });
});

describe('the search', () => {
  const all = [...searchEntries(), ...calculatorEntries()];
  const find = finder(JSON.parse(JSON.stringify(buildSearch(all))) as SearchFile);

  it.each([
    ['voltage drop', 'Volt drop of a flex run'],
    ['Zs', 'Loop resistance'],
    ['D2', 'Discharge pipe, D1 and D2'],
  ])('finds the calculator for “%s”', (words, title) => {
    expect(find(words).map(({ entry }) => entry.title)).toContain(title);
  });
});
