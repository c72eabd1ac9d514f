import { beforeEach, describe, expect, test } from 'vitest';
import { freshDevice, HOUR, NOW, openTab, trial, until } from './support.ts';

beforeEach(freshDevice);

describe('what a learner does is kept', () => {
  test('answers, in the order of time, over a reload', async () => {
    const tab = await openTab();
    const log = [trial({ at: NOW }), trial({ at: NOW + 5 }), trial({ at: NOW + 9, objective: 'other' })];
    await tab.add(...log.slice(0, 2));
    await tab.add(...log.slice(2));
    tab.close();
    const again = await openTab();
    expect(await again.trials()).toEqual(log);
    expect(await again.trialsOf('other')).toEqual(log.slice(2));
    expect(again.troubles()).toEqual([]);
  });

  test('choices, each by itself, until they are taken back', async () => {
    const tab = await openTab();
    await tab.choose({ route: 'unvented' });
    await tab.choose({ assessment: '2027-03-31', help: 'off' });
    await tab.choose({ route: 'wiring' });
    expect(await tab.choices()).toEqual({ route: 'wiring', assessment: '2027-03-31', help: 'off' });
    await tab.forget('help', 'route');
    tab.close();
    expect(await (await openTab()).choices()).toEqual({ assessment: '2027-03-31' });
  });

  test('answers begun, by their place, until they are given', async () => {
    const tab = await openTab();
    const draft = { place: 'a', item: 'x/y/1/1', answer: { kind: 'mark', marked: ['strip/1'] }, at: NOW };
    await tab.keepDraft(draft);
    await tab.keepDraft({ ...draft, place: 'b' });
    await tab.dropDraft('b');
    tab.close();
    const again = await openTab();
    expect(await again.draft('a')).toEqual(draft);
    expect(await again.draft('b')).toBeUndefined();
  });

  test('an answer that a page has wrapped in its own way', async () => {
    const tab = await openTab();
    const wrapped = new Proxy({ kind: 'mark', marked: ['strip/1'] }, {});
    await tab.keepDraft({ place: 'a', item: 'x/y/1/1', answer: wrapped, at: NOW });
    expect(tab.troubles()).toEqual([]);
    tab.close();
    expect((await (await openTab()).draft('a'))?.answer).toEqual({ kind: 'mark', marked: ['strip/1'] });
  });

  test('nothing, once it has been cleared', async () => {
    const tab = await openTab();
    await tab.add(trial());
    await tab.choose({ help: 'off' });
    await tab.keepDraft({ place: 'a', item: 'x', answer: 1, at: NOW });
    await tab.clear();
    tab.close();
    const again = await openTab();
    expect([await again.trials(), await again.choices(), await again.drafts()]).toEqual([[], {}, []]);
  });
});

test('Two tabs add answers at the same time: both have all, and each hears of the other’s', async () => {
  const [one, two] = [await openTab(), await openTab()];
  let heard = 0;
  two.onChange(() => heard++);
  await Promise.all([one.add(trial(), trial()), two.add(trial()), one.add(trial())]);
  await until(async () => (await one.trials()).length === 4 && (await two.trials()).length === 4);
  const before = heard;
  await one.choose({ route: 'unvented' });
  await until(() => heard > before);
  expect(await two.choices()).toEqual({ route: 'unvented' });
});

test('A listener that has left hears nothing more', async () => {
  const tab = await openTab();
  let heard = 0;
  const stop = tab.onChange(() => heard++);
  await tab.add(trial());
  expect(heard).toBeGreaterThan(0);
  const before = heard;
  stop();
  await tab.add(trial());
  expect(heard).toBe(before);
});

describe('a clock that has been set back', () => {
  test('is told, and answers stay in the order in which they were given', async () => {
    let clock = NOW;
    const tab = await openTab({ clock: () => clock });
    const first = trial({ at: tab.now() });
    await tab.add(first);
    clock = NOW - 30 * 24 * HOUR;
    expect(tab.now()).toBe(NOW);
    expect(tab.troubles().map(({ kind }) => kind)).toEqual(['clock']);
    const second = trial({ at: clock });
    const third = trial({ at: clock + 5 });
    await tab.add(second, third);
    const log = await tab.trials();
    expect(log.map(({ item }) => item)).toEqual([first.item, second.item, third.item]);
    expect(log.every(({ at }, k) => k === 0 || at > (log[k - 1]?.at ?? 0))).toBe(true);
    clock = NOW + HOUR;
    expect(tab.troubles()).toEqual([]);
  });

  test('is noticed when the page opens', async () => {
    const tab = await openTab();
    await tab.add(trial());
    tab.close();
    const again = await openTab({ clock: () => NOW - 2 * HOUR });
    expect(again.troubles().map(({ kind }) => kind)).toEqual(['clock']);
    expect(again.now()).toBe(NOW);
  });

  test('by some minutes, as two devices differ, is no trouble', async () => {
    const tab = await openTab({ clock: () => NOW - HOUR / 4 });
    await tab.add(trial());
    expect(tab.troubles()).toEqual([]);
  });
});

describe('the browser is asked not to clear the data', () => {
  const asking = (granted: boolean) => {
    const asked: string[] = [];
    const storage = {
      persisted: async () => granted,
      persist: async () => asked.push('persist') > 0,
    } as unknown as StorageManager;
    return { asked, storage };
  };

  test('once, after some progress, and not again after a reload', async () => {
    const { asked, storage } = asking(false);
    const tab = await openTab({ storage });
    for (let k = 0; k < 9; k++) await tab.add(trial());
    expect(asked).toEqual([]);
    for (let k = 0; k < 5; k++) await tab.add(trial());
    expect(asked).toEqual(['persist']);
    tab.close();
    await (await openTab({ storage })).add(trial());
    expect(asked).toEqual(['persist']);
  });

  test('not when it has promised so already', async () => {
    const { asked, storage } = asking(true);
    const tab = await openTab({ storage });
    for (let k = 0; k < 12; k++) await tab.add(trial());
    expect(asked).toEqual([]);
  });
});
