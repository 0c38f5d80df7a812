import { linkOf, unitOf } from '../../../testing/builders.js';
import { dossierOf } from '../../../testing/dossiers.js';
import { itemsOf } from '../../../testing/equipment.js';
import { testRule } from '../../../testing/rule-tester.js';
import type { FunctionCode } from '../../catalogue/type.js';
import type { EquipmentState } from '../../dossier/aircraft.js';
import { portableLinkNotPrimary } from './portable-link-not-primary.js';

const at = '2026-03-02T14:00Z';
const navigator = (...more: readonly FunctionCode[]) => unitOf({ id: 'gps1', functions: ['gnss', ...more] });
const tablet = (...more: readonly FunctionCode[]) => unitOf({ id: 'tab1', functions: ['portable-display', ...more] });
const indicator = unitOf({ id: 'cdi1', functions: ['lateral-deviation', 'vertical-deviation'] });
const annunciator = unitOf({ id: 'ann1', functions: ['integrity-annunciation'] });
const joint = (to: string, signal: string) => linkOf('gps1', signal, to, signal);
const graph = (
  units: ReturnType<typeof unitOf>[],
  links: ReturnType<typeof linkOf>[],
  equipment: readonly EquipmentState[] = [],
) => dossierOf({ configuration: { units, links, equipment } });

testRule(portableLinkNotPrimary, [
  {
    name: 'takes position for its map',
    dossier: graph([navigator(), tablet()], [joint('tab1', 'position')]),
    at,
    expect: 'met',
    message: 'repeats',
  },
  {
    name: 'the only one to show lateral deviation',
    dossier: graph([navigator(), tablet('lateral-deviation')], [joint('tab1', 'lateral-deviation')]),
    at,
    expect: 'not-met',
    message: 'primary',
    data: { shown: 'lateral deviation' },
  },
  {
    name: 'repeats lateral deviation of a fitted indicator',
    dossier: graph(
      [navigator(), tablet('lateral-deviation'), indicator],
      [joint('tab1', 'lateral-deviation'), joint('cdi1', 'lateral-deviation')],
    ),
    at,
    expect: 'met',
  },
  {
    name: 'the fitted indicator takes no vertical deviation, the portable does',
    dossier: graph(
      [navigator(), tablet('lateral-deviation', 'vertical-deviation'), indicator],
      [joint('tab1', 'vertical-deviation'), joint('cdi1', 'lateral-deviation')],
    ),
    at,
    expect: 'not-met',
    data: { shown: 'vertical deviation' },
  },
  {
    name: 'the only one to tell of lost integrity',
    dossier: graph(
      [navigator(), tablet('integrity-annunciation'), indicator],
      [joint('tab1', 'integrity-flag'), joint('cdi1', 'lateral-deviation')],
    ),
    at,
    expect: 'not-met',
    data: { shown: 'integrity annunciation' },
  },
  {
    name: 'the navigator tells of lost integrity itself',
    dossier: graph(
      [navigator('integrity-annunciation'), tablet('integrity-annunciation'), indicator],
      [joint('tab1', 'integrity-flag'), joint('cdi1', 'lateral-deviation')],
    ),
    at,
    expect: 'met',
  },
  {
    name: 'a fitted annunciator tells of it too',
    dossier: graph(
      [navigator(), tablet('integrity-annunciation'), annunciator],
      [joint('tab1', 'integrity-flag'), joint('ann1', 'integrity-flag')],
    ),
    at,
    expect: 'met',
  },
  {
    name: 'named as the altimeter of the aircraft, joined to nothing',
    dossier: graph([tablet()], [], itemsOf(['altimeter'], { unitId: 'tab1' })),
    at,
    expect: 'not-met',
    data: { shown: 'altimeter' },
  },
  { name: 'joined to nothing', dossier: graph([navigator(), tablet()], []), at, expect: 'none' },
  {
    name: 'joined to nothing, beside units that are joined',
    dossier: graph([navigator(), tablet(), indicator], [joint('cdi1', 'lateral-deviation')]),
    at,
    expect: 'none',
  },
  {
    name: 'the fitted indicator takes lateral deviation through a selector',
    dossier: graph(
      [navigator(), tablet('lateral-deviation'), indicator, unitOf({ id: 'sel1', functions: ['source-selector'] })],
      [
        joint('tab1', 'lateral-deviation'),
        joint('sel1', 'lateral-deviation'),
        linkOf('sel1', 'lateral-deviation', 'cdi1', 'lateral-deviation'),
      ],
    ),
    at,
    expect: 'met',
  },
  {
    name: 'the fitted indicator takes vertical deviation only',
    dossier: graph(
      [navigator(), tablet('lateral-deviation'), indicator],
      [joint('tab1', 'lateral-deviation'), joint('cdi1', 'vertical-deviation')],
    ),
    at,
    expect: 'not-met',
    data: { shown: 'lateral deviation' },
  },
  {
    name: 'a fitted display is no portable one',
    dossier: graph([navigator(), indicator], [joint('cdi1', 'lateral-deviation')]),
    at,
    expect: 'none',
  },
  {
    name: 'the fitted indicator of one navigator does not serve another',
    dossier: graph(
      [navigator(), unitOf({ id: 'gps2', functions: ['gnss'] }), tablet('lateral-deviation'), indicator],
      [joint('tab1', 'lateral-deviation'), linkOf('gps2', 'lateral-deviation', 'cdi1', 'lateral-deviation')],
    ),
    at,
    expect: 'not-met',
    data: { shown: 'lateral deviation' },
  },
  {
    name: 'a navigator that the device is not joined to needs it for nothing',
    dossier: graph(
      [navigator(), unitOf({ id: 'gps2', functions: ['gnss'] }), tablet('lateral-deviation'), indicator],
      [
        joint('tab1', 'lateral-deviation'),
        joint('cdi1', 'lateral-deviation'),
        linkOf('gps2', 'position', 'cdi1', 'position'),
      ],
    ),
    at,
    expect: 'met',
  },
  {
    name: 'what the device sends makes it show nothing',
    dossier: graph([navigator(), tablet('lateral-deviation')], [linkOf('tab1', 'data', 'gps1', 'data')]),
    at,
    expect: 'met',
  },
  {
    name: 'one of two fitted indicators is enough',
    dossier: graph(
      [
        navigator(),
        tablet('lateral-deviation', 'vertical-deviation'),
        indicator,
        unitOf({ id: 'cdi2', functions: ['lateral-deviation'] }),
      ],
      [
        joint('tab1', 'vertical-deviation'),
        joint('cdi1', 'lateral-deviation'),
        joint('cdi1', 'vertical-deviation'),
        joint('cdi2', 'lateral-deviation'),
      ],
    ),
    at,
    expect: 'met',
  },
  {
    name: 'an annunciator that another navigator tells serves that one alone',
    dossier: graph(
      [navigator(), unitOf({ id: 'gps2', functions: ['gnss'] }), tablet('integrity-annunciation'), annunciator],
      [joint('tab1', 'integrity-flag'), linkOf('gps2', 'integrity-flag', 'ann1', 'integrity-flag')],
    ),
    at,
    expect: 'not-met',
    data: { shown: 'integrity annunciation' },
  },
  {
    name: 'named as an item that is not fitted, and another unit as one that is',
    dossier: graph(
      [tablet(), indicator],
      [],
      [...itemsOf(['altimeter'], { unitId: 'tab1', state: 'not-required' }), ...itemsOf(['clock'], { unitId: 'cdi1' })],
    ),
    at,
    expect: 'none',
  },
]);
