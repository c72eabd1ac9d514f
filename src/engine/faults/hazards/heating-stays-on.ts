import { alternatives, type Settings, type System, type When } from '../../model/system.ts';
import { demandOf, type Hazard, heatedLanes } from '../hazard.ts';

/** Every switch of a demand the other way from its call: programmer off, room satisfied. */
function against(system: System, when: When): Settings {
  return Object.fromEntries(
    alternatives(when)
      .flatMap(Object.entries<string>)
      .map(([id, setting]) => {
        const [rest, active] = system.inputs.find((input) => input.id === id)!.settings;
        return [id, setting === active ? rest : active];
      }),
  );
}

export const heatingStaysOn: Hazard = {
  id: 'heating-stays-on',
  title: 'Heating that cannot be turned off',
  says: 'Programmer and room thermostat both say no, and the radiators are heated all the same.',
  beyond: 'Outside the wiring only the boiler’s own thermostat limits the flow temperature.',
  scope: 'rest',
  watches: (system) =>
    system.spec.demands.flatMap(({ coldWhenNotCalled, when }, demand) =>
      coldWhenNotCalled ? [{ fixed: against(system, when), demand }] : [],
    ),
  there: ({ system, heated }, watch) => heated(demandOf(system, watch)),
  lanes: heatedLanes,
};
