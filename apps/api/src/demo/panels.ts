import type { ChangeOf } from '@tallywing/rules';
import type { TypeKey } from './catalogue/all.js';

type Unit = ChangeOf<'unit.install'>['unit'];
export type Grant = NonNullable<NonNullable<Unit['approval']>['grants']>[number];
type AntennaKind = ChangeOf<'antenna.fit'>['antenna']['kind'];
type ApprovalBasis = NonNullable<Unit['approval']>['basis'];

export interface Fitted {
  readonly id: string;
  readonly type: TypeKey;
  readonly place: NonNullable<Unit['place']>;
  readonly opening: string | null;
  readonly basis: ApprovalBasis;
  /** Functions that its set-up page switches, as they were read. */
  readonly options?: Unit['options'];
}
/** From unit and port to unit and port; `covered`: not on a pair list, but on the drawing of the recorded approval. */
export type Joint = readonly [from: string, fromPort: string, to: string, toPort: string, covered?: 'covered'];

export interface Panel {
  readonly units: readonly Fitted[];
  readonly joints: readonly Joint[];
  readonly antennas: readonly (readonly [id: string, kind: AntennaKind, units: readonly string[]])[];
  /** Units whose use needs a flight manual supplement aboard. */
  readonly supplements: readonly string[];
}

const stack = (id: string, type: TypeKey, basis: ApprovalBasis): Fitted => ({
  id,
  type,
  place: 'centre-stack',
  opening: 'stack',
  basis,
});
const inView = (id: string, type: TypeKey, opening: string, basis: ApprovalBasis): Fitted => ({
  id,
  type,
  place: 'pilot-panel',
  opening,
  basis,
});
const remote = (id: string, type: TypeKey, basis: ApprovalBasis): Fitted => ({
  id,
  type,
  place: 'remote',
  opening: null,
  basis,
});

/** What every one of them carries. */
const common: readonly Fitted[] = [
  inView('alt1', 'altimeter', 'alt', 'type-certificate'),
  remote('enc1', 'encoder', 'type-certificate'),
  remote('elt1', 'elt', 'minor-alteration'),
];

const modeS: Pick<Panel, 'units' | 'joints'> = {
  units: [stack('atc1', 'transponderEs', 'stc-model-list')],
  joints: [['enc1', 'SER OUT', 'atc1', 'ALT IN']],
};
const modeC: Pick<Panel, 'units' | 'joints'> = {
  units: [stack('atc1', 'transponderC', 'type-certificate')],
  joints: [['enc1', 'GRAY OUT', 'atc1', 'ALT IN']],
};
const ownPosition: Pick<Panel, 'units' | 'joints'> = {
  units: [remote('pos1', 'positionSource', 'stc-model-list')],
  joints: [['pos1', 'POS OUT', 'atc1', 'POS IN']],
};

/** Everything under instrument rules: GNSS with vertical guidance and a glide slope receiver, each on its own indicator. */
const full: Panel = {
  units: [
    ...common,
    ...modeS.units,
    stack('aud1', 'audio', 'type-certificate'),
    stack('gps1', 'navigatorLpv', 'stc-model-list'),
    stack('nav1', 'navCom', 'type-certificate'),
    inView('cdi1', 'indicatorVertical', 'cdi1', 'stc-model-list'),
    inView('cdi2', 'indicatorVertical', 'cdi2', 'type-certificate'),
  ],
  joints: [
    ...modeS.joints,
    ['gps1', 'LAT OUT', 'cdi1', 'LAT IN'],
    ['gps1', 'VERT OUT', 'cdi1', 'VERT IN'],
    ['gps1', 'POS OUT', 'atc1', 'POS IN'],
    ['nav1', 'LAT OUT', 'cdi2', 'LAT IN'],
    ['nav1', 'VERT OUT', 'cdi2', 'VERT IN'],
  ],
  antennas: [
    ['ant-com', 'com', ['nav1']],
    ['ant-nav', 'vor-loc', ['nav1']],
    ['ant-gs', 'glide-slope', ['nav1']],
    ['ant-gnss', 'gnss-sbas', ['gps1']],
    ['ant-atc', 'transponder', ['atc1']],
    ['ant-elt', 'elt', ['elt1']],
  ],
  supplements: ['gps1'],
};

/** A nav/com with glide slope and no satellite navigation at all. */
const ils: Panel = {
  units: [
    ...common,
    ...modeS.units,
    ...ownPosition.units,
    stack('aud1', 'audio', 'type-certificate'),
    stack('nav1', 'navCom', 'type-certificate'),
    inView('cdi2', 'indicatorVertical', 'cdi2', 'type-certificate'),
  ],
  joints: [
    ...modeS.joints,
    ...ownPosition.joints,
    ['nav1', 'LAT OUT', 'cdi2', 'LAT IN'],
    ['nav1', 'VERT OUT', 'cdi2', 'VERT IN'],
  ],
  antennas: [
    ['ant-com', 'com', ['nav1']],
    ['ant-nav', 'vor-loc', ['nav1']],
    ['ant-gs', 'glide-slope', ['nav1']],
    ['ant-atc', 'transponder', ['atc1']],
    ['ant-pos', 'gnss-sbas', ['pos1']],
    ['ant-elt', 'elt', ['elt1']],
  ],
  supplements: [],
};

/** The trainer that waits for its new navigator: VFR-limited GNSS, no glide slope, but an indicator that could show one. */
const waiting: Panel = {
  units: [
    ...common,
    ...modeS.units,
    ...ownPosition.units,
    stack('aud1', 'audio', 'type-certificate'),
    stack('gps1', 'navigatorVfr', 'minor-alteration'),
    stack('nav1', 'navComVor', 'type-certificate'),
    inView('cdi1', 'indicatorVertical', 'cdi1', 'stc-model-list'),
    inView('cdi2', 'indicator', 'cdi2', 'type-certificate'),
  ],
  joints: [
    ...modeS.joints,
    ...ownPosition.joints,
    ['gps1', 'LAT OUT', 'cdi1', 'LAT IN'],
    ['nav1', 'LAT OUT', 'cdi2', 'LAT IN', 'covered'],
  ],
  antennas: [
    ['ant-com', 'com', ['nav1']],
    ['ant-nav', 'vor-loc', ['nav1']],
    ['ant-gnss', 'gnss-sbas', ['gps1', 'pos1']],
    ['ant-atc', 'transponder', ['atc1']],
    ['ant-elt', 'elt', ['elt1']],
  ],
  supplements: [],
};

/** An older approved navigator without augmentation, with its annunciator, beside a nav/com. */
const lnav: Panel = {
  units: [
    ...common,
    ...modeS.units,
    ...ownPosition.units,
    stack('gps1', 'navigatorA1', 'field-approval'),
    stack('nav1', 'navComVor', 'type-certificate'),
    inView('cdi1', 'indicator', 'cdi1', 'field-approval'),
    inView('cdi2', 'indicator', 'cdi2', 'type-certificate'),
    inView('ann1', 'annunciator', 'ann', 'field-approval'),
  ],
  joints: [
    ...modeS.joints,
    ...ownPosition.joints,
    ['gps1', 'LAT OUT', 'cdi1', 'LAT IN'],
    ['gps1', 'INTEG OUT', 'ann1', 'INTEG IN'],
    ['gps1', 'APPR OUT', 'ann1', 'APPR IN'],
    ['nav1', 'LAT OUT', 'cdi2', 'LAT IN', 'covered'],
  ],
  antennas: [
    ['ant-com', 'com', ['nav1']],
    ['ant-nav', 'vor-loc', ['nav1']],
    ['ant-gnss', 'gnss', ['gps1']],
    ['ant-pos', 'gnss-sbas', ['pos1']],
    ['ant-atc', 'transponder', ['atc1']],
    ['ant-elt', 'elt', ['elt1']],
  ],
  supplements: ['gps1'],
};

/** One radio, Mode C, nothing else: for pleasure in good weather outside busy airspace. */
const plain: Panel = {
  units: [...common, ...modeC.units, stack('com1', 'com', 'minor-alteration')],
  joints: [...modeC.joints],
  antennas: [
    ['ant-com', 'com', ['com1']],
    ['ant-atc', 'transponder', ['atc1']],
    ['ant-elt', 'elt', ['elt1']],
  ],
  supplements: [],
};

/** Mode C with a universal access transmitter: good below 18,000 ft. */
const uat: Panel = {
  units: [
    ...common,
    ...modeC.units,
    remote('uat1', 'uat', 'stc-model-list'),
    remote('pos1', 'positionSource', 'stc-model-list'),
    stack('com1', 'com', 'minor-alteration'),
  ],
  joints: [...modeC.joints, ['pos1', 'POS OUT', 'uat1', 'POS IN'], ['enc1', 'SER OUT', 'uat1', 'ALT IN']],
  antennas: [
    ['ant-com', 'com', ['com1']],
    ['ant-atc', 'transponder', ['atc1']],
    ['ant-uat', 'uat', ['uat1']],
    ['ant-pos', 'gnss-sbas', ['pos1']],
    ['ant-elt', 'elt', ['elt1']],
  ],
  supplements: [],
};

/** Two sources on one indicator through a selector that says which one is shown. */
const shared: Panel = {
  units: [
    ...common,
    ...modeS.units,
    stack('gps1', 'navigatorLpv', 'stc-model-list'),
    stack('nav1', 'navCom', 'type-certificate'),
    inView('sel1', 'selector', 'ann', 'stc-model-list'),
    inView('cdi1', 'indicatorVertical', 'cdi1', 'stc-model-list'),
  ],
  joints: [
    ...modeS.joints,
    ['gps1', 'LAT OUT', 'sel1', 'LAT A IN'],
    ['gps1', 'VERT OUT', 'sel1', 'VERT A IN'],
    ['nav1', 'LAT OUT', 'sel1', 'LAT B IN'],
    ['nav1', 'VERT OUT', 'sel1', 'VERT B IN'],
    ['sel1', 'LAT OUT', 'cdi1', 'LAT IN'],
    ['sel1', 'VERT OUT', 'cdi1', 'VERT IN'],
    ['gps1', 'POS OUT', 'atc1', 'POS IN'],
  ],
  antennas: full.antennas,
  supplements: ['gps1'],
};

/** The same two sources joined straight to one indicator, with nothing to tell them apart. */
const unlabelled: Panel = {
  ...shared,
  units: shared.units.filter(({ id }) => id !== 'sel1'),
  joints: [
    ...modeS.joints,
    ['gps1', 'LAT OUT', 'cdi1', 'LAT IN'],
    ['gps1', 'VERT OUT', 'cdi1', 'VERT IN'],
    ['nav1', 'LAT OUT', 'cdi1', 'LAT IN'],
    ['nav1', 'VERT OUT', 'cdi1', 'VERT IN'],
    ['gps1', 'POS OUT', 'atc1', 'POS IN'],
  ],
};

/** One box for everything and a second radio. */
const allInOne: Panel = {
  units: [
    ...common,
    ...modeS.units,
    stack('aud1', 'audio', 'type-certificate'),
    stack('gps1', 'navigatorAll', 'stc-model-list'),
    stack('com2', 'com', 'minor-alteration'),
    inView('cdi1', 'indicatorVertical', 'cdi1', 'stc-model-list'),
  ],
  joints: [
    ...modeS.joints,
    ['gps1', 'LAT OUT', 'cdi1', 'LAT IN'],
    ['gps1', 'VERT OUT', 'cdi1', 'VERT IN'],
    ['gps1', 'POS OUT', 'atc1', 'POS IN'],
  ],
  antennas: [
    ['ant-com', 'com', ['gps1']],
    ['ant-com2', 'com', ['com2']],
    ['ant-nav', 'vor-loc', ['gps1']],
    ['ant-gs', 'glide-slope', ['gps1']],
    ['ant-gnss', 'gnss-sbas', ['gps1']],
    ['ant-atc', 'transponder', ['atc1']],
    ['ant-elt', 'elt', ['elt1']],
  ],
  supplements: ['gps1'],
};

const onSetUpPage = (...names: readonly string[]): Unit['options'] => names.map((name) => ({ name, value: 'on' }));

/** An autopilot beside the gyros that its manual asks for, with its servo. */
const steering: Pick<Panel, 'units' | 'joints'> = {
  units: [
    inView('att1', 'attitudeGyro', 'att', 'type-certificate'),
    inView('dir1', 'directionGyro', 'dir', 'type-certificate'),
    stack('ap1', 'autopilot', 'stc-model-list'),
    remote('servo1', 'servo', 'stc-model-list'),
  ],
  joints: [
    ['att1', 'ATT OUT', 'ap1', 'ATT IN'],
    ['dir1', 'HDG OUT', 'ap1', 'HDG IN'],
    ['gps1', 'LAT OUT', 'ap1', 'LAT IN'],
    ['ap1', 'SERVO OUT', 'servo1', 'SERVO IN'],
  ],
};

/** For long ways: one box for everything, an autopilot, and traffic from two units on one display. */
const touring: Panel = {
  ...allInOne,
  units: [
    ...allInOne.units,
    ...steering.units,
    { ...remote('tfc1', 'trafficActive', 'stc-model-list'), options: onSetUpPage('active-traffic') },
    { ...remote('tfc2', 'trafficReceiver', 'minor-alteration'), options: onSetUpPage('correlated-traffic') },
    { id: 'mfd1', type: 'trafficDisplay', place: 'copilot-panel', opening: 'right', basis: 'stc-model-list' },
  ],
  joints: [
    ...allInOne.joints,
    ...steering.joints,
    ['tfc1', 'TFC OUT', 'mfd1', 'TFC A IN'],
    ['tfc2', 'TFC OUT', 'mfd1', 'TFC B IN'],
    ['gps1', 'POS OUT', 'tfc2', 'POS IN'],
  ],
};

/** Everything under instrument rules, distance measuring too, and an autopilot to which the attitude gyro was never joined. */
const halfSteered: Panel = {
  ...full,
  units: [
    ...full.units.map((each): Fitted => (each.id === 'aud1' ? { ...each, type: 'audioWide' } : each)),
    ...steering.units,
    stack('dme1', 'distance', 'type-certificate'),
  ],
  joints: [
    ...full.joints,
    ...steering.joints.filter(([from]) => from !== 'att1'),
    ['nav1', 'TUNE OUT', 'dme1', 'TUNE IN'],
    ['dme1', 'IDENT OUT', 'aud1', 'DME IN'],
  ],
};

/** Everything under instrument rules, with an attitude display whose manual lets it stand in for nothing. */
const displayed: Panel = {
  ...full,
  units: [...full.units, inView('att1', 'attitudeDisplay', 'att', 'minor-alteration')],
};

export const panels = {
  full,
  ils,
  waiting,
  lnav,
  plain,
  uat,
  shared,
  unlabelled,
  allInOne,
  touring,
  halfSteered,
  displayed,
} as const;
export type PanelName = keyof typeof panels;

const navigation: readonly Grant[] = ['nav-vor', 'approach-vor', 'approach-loc'];
const satellite: readonly Grant[] = ['nav-gnss', 'approach-lnav', 'approach-lp', 'approach-lnav-vnav', 'approach-lpv'];

/** What the approval papers of a type let it be used for in this house's aircraft; the others' grant nothing. */
export const grantsOf: Readonly<Partial<Record<TypeKey, readonly Grant[]>>> = {
  navigatorVfr: ['vfr-only'],
  navigatorA1: ['nav-gnss', 'approach-lnav'],
  navigatorLpv: satellite,
  navigatorAll: ['com', ...navigation, 'approach-ils', ...satellite],
  navCom: ['com', ...navigation, 'approach-ils'],
  navComVor: ['com', ...navigation],
  com: ['com'],
  indicatorVertical: [...navigation, 'approach-ils', ...satellite],
  indicator: [...navigation, 'nav-gnss', 'approach-lnav'],
  selector: [...navigation, 'approach-ils', ...satellite],
  annunciator: ['nav-gnss', 'approach-lnav'],
  transponderC: ['altitude-reporting'],
  transponderEs: ['altitude-reporting', 'ads-b-out'],
  positionSource: ['ads-b-out'],
  uat: ['ads-b-out'],
  encoder: ['altitude-reporting'],
};
