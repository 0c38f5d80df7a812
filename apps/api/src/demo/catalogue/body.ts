import type { EquipmentType } from '@tallywing/rules';

/** How the demo's equipment types are written down: what a manual says, in few words. */
export type Body = Omit<EquipmentType, 'id'>;
type Port = EquipmentType['ports'][number];
type Limitation = EquipmentType['limitations'][number];

/** Ports of one standard: name, signal, direction, and the functions that need the port joined. */
const portsOf =
  (standard: Port['standard'], speed: number | null = null) =>
  (
    name: string,
    signal: Port['signal'],
    direction: Port['direction'],
    requiredFor: Port['requiredFor'] = [],
  ): Port => ({ name, signal, direction, standard, speed, requiredFor });
export const analog = portsOf('analog');
export const discrete = portsOf('discrete');
export const gray = portsOf('gray-code');
export const serial = portsOf('rs-232', 9600);
export const fast = portsOf('rs-422', 115_200);
export const bus = portsOf('arinc-429', 100_000);
export const audio = (name: string, direction: Port['direction']) => portsOf('audio')(name, 'audio', direction);
export const power = (name: string, direction: Port['direction']) => portsOf('power')(name, 'power', direction);

export const navigation = (holdsNext: boolean): Body['databases'] => [{ kind: 'navigation', holdsNext }];
export const stack = (heightIn: number, depthIn: number): Body['bezel'] => ({ widthIn: 6.25, heightIn, depthIn });
export const round = (depthIn: number): Body['bezel'] => ({ widthIn: 3.125, heightIn: 3.125, depthIn });

export const panelView = (document: string, maxOffsetIn: number): Body['view'] => ({
  approvedPlaces: ['pilot-panel', 'centre-stack'],
  maxHorizontalDeg: 35,
  maxOffsetIn,
  document,
});
export const pilotView = (document: string): Body['view'] => ({
  approvedPlaces: ['pilot-panel'],
  maxHorizontalDeg: 15,
  maxOffsetIn: 8,
  document,
});

export const deviation: Body['pairs'][number]['signals'] = ['lateral-deviation', 'vertical-deviation'];
/** A manual's list of what may be joined: own signals with other families. */
export const pairs = (
  document: string,
  revision: string,
  list: readonly (readonly [family: string, signals: Body['pairs'][number]['signals'], software?: string])[],
): Body['pairs'] =>
  list.map(([family, signals, software]) => ({ family, signals, software: software ?? null, document, revision }));

/** A limitation as the manual words it: what it says of functions, the rest empty. */
export const limit = (
  kind: Limitation['kind'],
  document: string,
  paragraph: string,
  says: Partial<Limitation>,
): Limitation => ({ kind, functions: [], beyond: [], places: [], elsewhere: false, document, paragraph, ...says });
