import { demandOf, type Hazard, heatedLanes } from '../hazard.ts';

/**
 * The store is already hotter than the cut-out's trip point, so a healthy thermostat is satisfied and a healthy
 * cut-out has tripped, and still the boiler heats it.
 */
export const uncontrolledHeat: Hazard = {
  id: 'uncontrolled-heat',
  title: 'Uncontrolled heat into the cylinder',
  says: 'The water in the store goes on heating past the point where every control should have stopped it.',
  beyond:
    'Outside the wiring two layers remain: the boiler’s own limit, and the temperature and pressure relief valve that lets the water out through the tundish.',
  scope: 'rest',
  watches: ({ spec }) =>
    spec.demands.flatMap(({ overheated }, demand) => (overheated ? [{ fixed: overheated, demand }] : [])),
  there: ({ system, heated }, watch) => heated(demandOf(system, watch)),
  lanes: heatedLanes,
};
