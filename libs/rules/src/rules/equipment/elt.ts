import { anyOf, implies, met, notMet } from '../../verdict/build.js';
import { cfr } from '../cite.js';
import { excepted, exceptions } from '../elt-excepted.js';
import { temporaryRemoval } from '../elt-removal.js';
import { antennaOf, inService, isC91, longestGood } from '../elt-service.js';
import { findOut, missingNames } from '../gaps.js';
import { dueOn } from '../periodic.js';
import { recordIt } from '../remedies.js';
import { defineRule } from '../rule.js';
import { backInUse, noneFitted } from '../unit-state.js';

const asks = cfr('91.207(a)');

/** One alternative is enough: in service, removed for a while, or a flight that is excepted. */
export const elt = defineRule(
  {
    id: 'elt',
    topic: 'equipment',
    asks: 'An emergency locator transmitter is in service: with its antenna, inspected within 12 calendar months, its battery in date; or it was removed at most 90 days ago with entry and placard; or the flight is excepted.',
    binds:
      'Airplanes; not for local training within 50 NM, airplanes equipped for one person, or a flight whose errand the text excepts, each with its own conditions: a ferry with the required crew only to where a transmitter is fitted or repaired, design and testing, delivery of a new aircraft, aerial application, research and development, showing compliance or exhibition. Of a ferry flight with the required crew whose errand nobody said, cannot-tell.',
    sources: [asks, cfr('91.207(c), (d)'), cfr('91.207(f)(10)'), ...Object.values(exceptions)],
    messages: {
      ready:
        'An emergency transmitter is in service, or this flight needs none; inspection good through {inspectionGoodTo}, battery through {batteryGoodTo}.',
      lapsed:
        'No emergency transmitter is in service: inspection good through {inspectionGoodTo}, battery through {batteryGoodTo}.',
      mute: 'No antenna is recorded for the emergency transmitter; inspection good through {inspectionGoodTo}, battery through {batteryGoodTo}.',
      away: 'The emergency transmitter was removed on {removed}; without it through {lastDay}, or this flight needs none.',
      'away-too-long':
        'The emergency transmitter was removed on {removed}: entry, placard or the 90 days through {lastDay} do not hold.',
      none: 'No emergency transmitter is fitted.',
      'none-needed': 'No emergency transmitter is recorded; this flight needs none.',
      unclear:
        'Whether an emergency transmitter is in service cannot be told; not recorded: {unrecorded}. A ferry flight with the required crew only needs none for two reasons: a new airplane on the way to where one is fitted, or one with an inoperative transmitter on the way from where it cannot be repaired to where it can.',
      excepted: 'Only airplanes need an emergency transmitter.',
    },
    establishes: [],
  },
  (facts) => {
    const units = [...facts.units.values()].filter((each) => each.functions.has('elt'));
    const services = units.map((each) => inService(facts, each));
    const best = longestGood(services);
    const removal = temporaryRemoval(facts);
    const airplane = facts.dossier.configuration.aircraft.kind === 'airplane' ? met : notMet;
    const fitted =
      services.length === 0 ? [noneFitted(facts, 'elt-fitted', asks)] : services.map((each) => each.clause);
    const clause = implies(
      airplane('airplane', { source: asks }),
      anyOf('elt', [...fitted, removal.clause, ...excepted(facts)], 'cannot-tell'),
    );
    const mute = units.every((each) => antennaOf(facts, each).length === 0);
    const state = services.length > 0 ? 'fitted' : removal.on === null ? 'none' : 'removed';
    return [
      {
        subject: 'aircraft',
        clause,
        messages: {
          met: { fitted: 'ready', removed: 'away', none: 'none-needed' }[state],
          'not-met': { fitted: mute ? 'mute' : 'lapsed', removed: 'away-too-long', none: 'none' }[state],
          'cannot-tell': 'unclear',
          'not-applicable': 'excepted',
        },
        data: {
          inspectionGoodTo: best?.inspectionGoodTo ?? null,
          batteryGoodTo: best?.batteryGoodTo ?? null,
          removed: removal.on,
          lastDay: removal.lastDay,
          unrecorded: missingNames(clause) ?? 'none',
        },
        effects: [{ stops: 'capability', capability: 'fly' }],
        due: [
          ...services.flatMap((each) => [
            ...dueOn(facts, 'elt-inspection', each.inspectionGoodTo),
            ...dueOn(facts, 'elt-battery', each.batteryGoodTo),
          ]),
          ...dueOn(facts, 'elt-back-in', removal.lastDay),
        ],
        remedies: [
          ...units.flatMap((each) => [
            ...backInUse(facts, each),
            recordIt('elt-inspection', each.id),
            recordIt('elt-battery', each.id),
            ...(antennaOf(facts, each).length === 0
              ? [{ kind: 'do' as const, change: 'antenna.fit', subject: each.id, facts: [] }]
              : []),
          ]),
          ...(units.every(isC91)
            ? [{ kind: 'do' as const, change: 'unit.install', subject: 'aircraft', facts: [] }]
            : []),
          ...findOut(clause, 'record.add', units[0]?.id ?? 'aircraft'),
        ],
      },
    ];
  },
);
