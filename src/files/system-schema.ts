import * as z from 'zod/mini';
import { aboutSchema } from './about-schema.ts';
import { id, landing, settings, wire } from './names.ts';
import { keys, list, map, pattern, text } from './shape.ts';

const port = pattern('a pipe end: part/port', /^[^/]+\/[^/]+$/);
const pipeSays = 'a pipe: a list of two pipe ends';
const optionSays = 'a number or text';

const litresSays = 'litres, more than 0';
const litres = z.number({ error: litresSays }).check(z.positive({ error: litresSays }));

const coreSays = 'brown, blue, green-yellow, black, grey, white or orange';
export const core = z.enum(['brown', 'blue', 'green-yellow', 'black', 'grey', 'white', 'orange'], {
  error: coreSays,
});

/** Settings that hold together, or a list of them of which one is enough. */
const whenSays = 'settings by input, or a list of such settings';
const when = z.union([settings, list('a list of settings', settings)], { error: whenSays });

const part = keys('a part: kind, name', {
  kind: text('a kind of part'),
  name: text('a name'),
  short: z.exactOptional(text('a short name')),
  inputs: z.exactOptional(map('inputs of the system by slot', id, id)),
  options: z.exactOptional(
    map('options of the kind', id, z.union([z.number(), z.string()], { error: optionSays })),
  ),
  cores: z.exactOptional(map('core colours by terminal', text('a terminal'), core)),
  sleeved: z.exactOptional(list('a list of terminals', text('a terminal'))),
  positions: z.exactOptional(map('words for each position', text('a position'), text('words for it'))),
});

const demand = keys('a demand: id, says, when, heats', {
  id,
  says: text('what is called, in words'),
  when,
  supply: z.exactOptional(id),
  yields: z.exactOptional(id),
  runs: z.exactOptional(list('a list of parts', id)),
  may: z.exactOptional(list('a list of parts', id)),
  heats: id,
  valve: z.exactOptional(id),
  coldWhenNotCalled: z.exactOptional(z.boolean({ error: 'true or false' })),
  slack: z.exactOptional(when),
  overheated: z.exactOptional(settings),
});

const heatSource = keys('a heat source: part, cutOuts', {
  part: id,
  thermostat: z.exactOptional(id),
  cutOuts: list('a list of the inputs of its cut-outs', id),
});

const refillSays = 'automatic or none';
const reliefSays = 'temperature, temperature and pressure or expansion';

const store = keys('a store: id, says, unvented, refill, heatSources, relief', {
  id,
  says: text('what people call it'),
  unvented: z.boolean({ error: 'true or false' }),
  litres: z.exactOptional(litres),
  refill: z.enum(['automatic', 'none'], { error: refillSays }),
  heatSources: list('a list of heat sources', heatSource),
  relief: list(
    'a list of relief valves',
    z.enum(['temperature', 'temperature and pressure', 'expansion'], { error: reliefSays }),
  ),
});

const reference = keys('a reference: id, title, says, wires', {
  id,
  title: text('a title'),
  says: text('how it differs from the others'),
  wires: landing,
});

const mistake = keys('a mistake: id, title, says, from, lift, land, breaks', {
  id,
  title: text('a title'),
  says: text('what was done'),
  from: id,
  lift: z._default(list('a list of wires to lift', wire), []),
  land: z._default(list('a list of wires to land', wire), []),
  breaks: list('a list of rule ids', id),
  advises: z._default(list('a list of advice rule ids', id), []),
});

export const systemSchema = keys('a system: id, title, parts, inputs, pipes, demands', {
  id,
  title: text('a title'),
  about: z.exactOptional(aboutSchema),
  parts: map('parts by id', id, part),
  inputs: map('inputs by id', id, keys('an input: label', { label: text('a label') })),
  pipes: list(
    'a list of pipes',
    z
      .tuple([port, port], { error: pipeSays })
      .check(z.meta({ description: pipeSays, minItems: 2, items: false })),
  ),
  demands: list('a list of demands', demand),
  stores: z.exactOptional(list('a list of stores', store)),
  references: z._default(list('a list of references', reference), []),
  mistakes: z._default(list('a list of mistakes', mistake), []),
}).check(z.meta({ title: 'System' }));
