import { expect, it } from 'vitest';
import { unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import type { Part } from '../../../testing/dossiers.js';
import { dayItemsFitted, itemsOf } from '../../../testing/equipment.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { EquipmentItem, EquipmentState } from '../../dossier/aircraft.js';
import type { Dossier } from '../../dossier/dossier.js';
import { factsOf } from '../../graph/facts.js';
import { strictest } from '../../verdict/conditions.js';
import type { Explained } from '../../verdict/evaluate.js';
import { explain } from '../../verdict/evaluate.js';
import { dayEquipment } from './day-equipment.js';

const at = '2026-03-02T14:00Z';
const simple: Part<Dossier> = {
  configuration: {
    aircraft: {
      certificate: 'standard',
      basis: { code: 'car-3', amendment: null },
      manufactured: '1979-05-04',
      engine: 'reciprocating',
      liquidCooled: false,
      altitudeEngine: false,
      retractableGear: false,
    },
    equipment: itemsOf(dayItemsFitted),
  },
};
const aircraft = (part: Part<Dossier['configuration']['aircraft']>): Part<Dossier> => ({
  configuration: { aircraft: part },
});
const only = (items: readonly EquipmentItem[]): Part<Dossier> => ({ configuration: { equipment: itemsOf(items) } });
const without = (item: EquipmentItem) => only(dayItemsFitted.filter((each) => each !== item));
const absent = (item: EquipmentItem): Part<Dossier> => ({
  configuration: {
    equipment: [...itemsOf(dayItemsFitted.filter((each) => each !== item)), ...itemsOf([item], { state: 'absent' })],
  },
});
const lights = (
  state: 'fitted' | 'absent' | 'not-required',
  manufactured: string | null,
  amendment: number | null,
  part: Partial<EquipmentState> = {},
): Part<Dossier> => ({
  configuration: {
    ...aircraft({ basis: { code: 'part-23', amendment }, manufactured }).configuration,
    equipment: [...itemsOf(dayItemsFitted), ...itemsOf(['anticollision-lights'], { state, ...part })],
  },
});
const local = { purpose: 'private', overWaterBeyondGlide: false } as const;
const case_ = (name: string, part: Part<Dossier>) => ({ name, dossier: dossierOf(simple, part), at, flight: local });

// 14 CFR 91.205(b). Each conditional item is shown with its condition unmet, met and unknown.
testRule(dayEquipment, [
  { ...case_('a simple trainer with all it needs', {}), expect: 'met', message: 'fitted' },
  {
    ...case_('an item is absent', absent('airspeed-indicator')),
    expect: 'not-met',
    message: 'absent',
    data: { absent: 'airspeed indicator' },
  },
  {
    ...case_('an item is not recorded', without('tachometer')),
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'tachometer' },
  },
  {
    ...case_('ticked, but nobody saw it', {
      configuration: {
        equipment: [
          ...itemsOf(dayItemsFitted.filter((each) => each !== 'fuel-quantity')),
          ...itemsOf(['fuel-quantity'], { seen: null }),
        ],
      },
    }),
    expect: 'cannot-tell',
  },
  { ...case_('no item recorded at all', only([])), expect: 'cannot-tell' },
  {
    ...case_('recorded as not asked for although it always is', {
      configuration: {
        equipment: [
          ...itemsOf(dayItemsFitted.filter((each) => each !== 'altimeter')),
          ...itemsOf(['altimeter'], { state: 'not-required' }),
        ],
      },
    }),
    expect: 'cannot-tell',
  },
  {
    ...case_('oil pressure not asked for: no pressure system', {
      configuration: {
        equipment: [
          ...itemsOf(dayItemsFitted.filter((each) => each !== 'oil-pressure')),
          ...itemsOf(['oil-pressure'], { state: 'not-required' }),
        ],
      },
    }),
    expect: 'met',
  },
  {
    ...case_('retractable gear, position indicator not recorded', aircraft({ retractableGear: true })),
    expect: 'cannot-tell',
  },
  {
    name: 'retractable gear with its indicator',
    dossier: dossierOf(simple, aircraft({ retractableGear: true }), only([...dayItemsFitted, 'gear-position'])),
    at,
    flight: local,
    expect: 'met',
  },
  { ...case_('whether the gear retracts is not recorded', aircraft({ retractableGear: null })), expect: 'cannot-tell' },
  {
    name: 'whether the gear retracts is not recorded, but the indicator is fitted',
    dossier: dossierOf(simple, aircraft({ retractableGear: null }), only([...dayItemsFitted, 'gear-position'])),
    at,
    flight: local,
    expect: 'met',
  },
  { ...case_('liquid cooled without a coolant gauge', aircraft({ liquidCooled: true })), expect: 'cannot-tell' },
  {
    name: 'liquid cooled: coolant gauge, no oil temperature asked',
    dossier: dossierOf(
      simple,
      aircraft({ liquidCooled: true }),
      only([...dayItemsFitted.filter((each) => each !== 'oil-temperature'), 'coolant-temperature']),
    ),
    at,
    flight: local,
    expect: 'met',
  },
  { ...case_('altitude engine without manifold pressure', aircraft({ altitudeEngine: true })), expect: 'cannot-tell' },
  // (b)(14): "manufactured after July 18, 1978".
  {
    name: 'made on 18 July 1978: no harness asked',
    dossier: dossierOf(simple, aircraft({ manufactured: '1978-07-18' }), without('shoulder-harness')),
    at,
    flight: local,
    expect: 'met',
  },
  {
    name: 'made on 19 July 1978: harness asked',
    dossier: dossierOf(simple, aircraft({ manufactured: '1978-07-19' }), without('shoulder-harness')),
    at,
    flight: local,
    expect: 'cannot-tell',
  },
  // (b)(14), second sentence: all seats, "manufactured after December 12, 1986"; (b)(16) is reserved. Which paragraphs bind is shown below.
  {
    name: 'made on 12 December 1986, no harness',
    dossier: dossierOf(simple, aircraft({ manufactured: '1986-12-12' }), absent('shoulder-harness')),
    at,
    flight: local,
    expect: 'not-met',
    data: { absent: 'shoulder harness' },
  },
  {
    name: 'made on 13 December 1986, no harness: named once though two paragraphs ask',
    dossier: dossierOf(simple, aircraft({ manufactured: '1986-12-13' }), absent('shoulder-harness')),
    at,
    flight: local,
    expect: 'not-met',
    data: { absent: 'shoulder harness' },
  },
  // (b)(17): rotorcraft made after 16 September 1992.
  {
    name: 'helicopter made on 16 September 1992',
    dossier: dossierOf(
      simple,
      aircraft({ kind: 'helicopter', manufactured: '1992-09-16' }),
      without('shoulder-harness'),
    ),
    at,
    flight: local,
    expect: 'met',
  },
  {
    name: 'helicopter made on 17 September 1992',
    dossier: dossierOf(
      simple,
      aircraft({ kind: 'helicopter', manufactured: '1992-09-17' }),
      without('shoulder-harness'),
    ),
    at,
    flight: local,
    expect: 'cannot-tell',
  },
  // (b)(11): small airplanes certificated under part 23 after 11 March 1996.
  {
    ...case_(
      'part 23, made on 11 March 1996: no anticollision lights asked by day',
      aircraft({ basis: { code: 'part-23', amendment: null }, manufactured: '1996-03-11' }),
    ),
    expect: 'met',
  },
  {
    ...case_(
      'part 23, made on 12 March 1996: anticollision lights asked by day',
      aircraft({ basis: { code: 'part-23', amendment: null }, manufactured: '1996-03-12' }),
    ),
    expect: 'cannot-tell',
  },
  {
    ...case_(
      'part 23 as of 1968, made in 1998, no anticollision lights: when it was certificated is not recorded',
      lights('absent', '1998-05-04', 3),
    ),
    expect: 'cannot-tell',
    message: 'unclear',
    data: { unrecorded: 'whether it is required' },
  },
  {
    ...case_(
      'the same, and somebody who knows the day says that none are required',
      lights('not-required', '1998-05-04', 3),
    ),
    expect: 'met',
  },
  {
    ...case_('the same said, and seen by nobody', lights('not-required', '1998-05-04', 3, { seen: null })),
    expect: 'cannot-tell',
    data: { unrecorded: 'whether it is required, anticollision lights' },
  },
  {
    ...case_('the same said, but when it was made is not recorded', lights('not-required', null, 3)),
    expect: 'cannot-tell',
    data: { unrecorded: 'day of making, anticollision lights' },
  },
  {
    ...case_(
      'the same, and nothing recorded of the lights',
      aircraft({ basis: { code: 'part-23', amendment: 3 }, manufactured: '1998-05-04' }),
    ),
    expect: 'cannot-tell',
    data: { unrecorded: 'whether it is required, anticollision lights' },
  },
  {
    ...case_('the same said, but the amendment is not recorded', lights('not-required', '1998-05-04', null)),
    expect: 'cannot-tell',
  },
  {
    ...case_('the same said, amendment 23-49', lights('not-required', '1998-05-04', 49)),
    expect: 'cannot-tell',
  },
  {
    ...case_('the same with the lights', lights('fitted', '1998-05-04', 3)),
    expect: 'met',
  },
  {
    ...case_('amendment 23-48, made in 1998, no anticollision lights', lights('absent', '1998-05-04', 48)),
    expect: 'cannot-tell',
  },
  {
    ...case_('amendment 23-49, no anticollision lights', lights('absent', '1998-05-04', 49)),
    expect: 'not-met',
    message: 'absent',
  },
  {
    ...case_('older basis, made on 12 March 1996', aircraft({ manufactured: '1996-03-12' })),
    expect: 'met',
  },
  // (b)(12): for hire over water beyond gliding distance.
  {
    name: 'for hire over water without flotation gear',
    dossier: dossierOf(simple, absent('flotation-gear')),
    at,
    subject: 'for-hire',
    flight: { purpose: 'carriage-for-hire', overWaterBeyondGlide: true },
    expect: 'not-met',
    data: { absent: 'flotation gear', unrecorded: 'pyrotechnic device' },
  },
  {
    name: 'for hire within glide of land without flotation gear',
    dossier: dossierOf(simple, absent('flotation-gear')),
    at,
    subject: 'for-hire',
    flight: { purpose: 'carriage-for-hire', overWaterBeyondGlide: false },
    expect: 'not-applicable',
  },
  {
    name: 'private over water without flotation gear',
    dossier: dossierOf(simple, absent('flotation-gear')),
    at,
    subject: 'for-hire',
    flight: { purpose: 'private', overWaterBeyondGlide: true },
    expect: 'not-applicable',
  },
  {
    name: 'for hire over water with both',
    dossier: dossierOf(simple, only([...dayItemsFitted, 'flotation-gear', 'pyrotechnic-device'])),
    at,
    subject: 'for-hire',
    flight: { purpose: 'carriage-for-hire', overWaterBeyondGlide: true },
    expect: 'met',
  },
  {
    name: 'for hire over water, flotation gear not recorded',
    dossier: dossierOf(simple, only([...dayItemsFitted, 'pyrotechnic-device'])),
    at,
    subject: 'for-hire',
    flight: { purpose: 'carriage-for-hire', overWaterBeyondGlide: true },
    expect: 'cannot-tell',
  },
  {
    ...case_('the only altimeter is deactivated', {
      configuration: {
        units: [
          unitOf({
            id: 'alt1',
            functions: ['altimeter'],
            deactivated: { since: { date: '2026-02-01', at: null }, placarded: true, recorded: true },
          }),
        ],
      },
    }),
    expect: 'not-met',
    data: { absent: 'altimeter' },
  },
  {
    ...case_('one of two altimeters is deactivated', {
      configuration: {
        units: [
          unitOf({
            id: 'alt1',
            functions: ['altimeter'],
            deactivated: { since: { date: '2026-02-01', at: null }, placarded: true, recorded: true },
          }),
          unitOf({ id: 'alt2', functions: ['altimeter'] }),
        ],
      },
    }),
    expect: 'met',
  },
  {
    ...case_('a deactivated unit of which nobody recorded what it does', {
      configuration: {
        units: [
          unitOf({
            id: 'box',
            deactivated: { since: { date: '2026-02-01', at: null }, placarded: true, recorded: true },
          }),
        ],
      },
    }),
    expect: 'cannot-tell',
  },
  {
    ...case_('experimental', aircraft({ certificate: 'experimental' })),
    expect: 'not-applicable',
    message: 'excepted',
  },
  { ...case_('light-sport', aircraft({ certificate: 'light-sport' })), expect: 'not-applicable' },
  { ...case_('balloon', aircraft({ kind: 'balloon' })), expect: 'not-applicable' },
  { ...case_('glider without engine', aircraft({ kind: 'glider', engine: 'none' })), expect: 'not-applicable' },
  {
    name: 'glider, engine not recorded, items missing',
    dossier: dossierOf(simple, aircraft({ kind: 'glider', engine: null }), only([])),
    at,
    flight: local,
    expect: 'cannot-tell',
  },
  { ...case_('certificate not recorded, all fitted', aircraft({ certificate: null })), expect: 'met' },
  {
    name: 'certificate not recorded, an item absent',
    dossier: dossierOf(simple, aircraft({ certificate: null }), absent('tachometer')),
    at,
    flight: local,
    expect: 'cannot-tell',
    data: { unrecorded: 'certificate', absent: 'tachometer' },
  },
]);

it.each([
  ['1978-07-18', []],
  ['1978-07-19', ['(b)(14)']],
  ['1986-12-12', ['(b)(14)']],
  ['1986-12-13', ['(b)(14)', '(b)(14), second sentence']],
])('shoulder harness of an airplane made on %s is asked by %j', (manufactured, paragraphs) => {
  const [draft] = dayEquipment.evaluate(
    factsOf(dossierOf(simple, aircraft({ manufactured }), absent('shoulder-harness')), { version: 'test', types: {} }),
    [],
  );
  if (!draft) throw new Error('the rule states something');
  const point = { instant: at, meters: {}, conditions: strictest, capability: () => 'cannot-tell' as const };
  expect(asking(explain(draft.clause, point)).sort()).toEqual(paragraphs);
});

/** Paragraphs that ask for the harness and bind: their conditions hold, so that its absence is not met. */
function asking({ clause, outcome, parts }: Explained): string[] {
  if (outcome === 'not-applicable') return [];
  if (clause.is === 'leaf')
    return clause.label === 'shoulder-harness-fitted' && outcome === 'not-met' ? [clause.source?.paragraph ?? ''] : [];
  return parts.flatMap(asking);
}
