import type { Catalogue, EquipmentType, FunctionCode } from '../catalogue/type.js';
import type { Change } from '../changes/changes.js';
import type { InstalledUnit } from '../dossier/installation.js';
import type { Capability } from '../verdict/capability.js';
import type { Action, Situation } from './action.js';
import { action } from './action.js';
import { fit, grantsOf, performedAt, supplementFor } from './deeds.js';
import type { Job } from './labour.js';

/** Units that could be fitted, replaced or approved for more: the costly ways. */

/** Another indicator, for a source that finds no free one to show itself on. */
export function indicators(unitId: string, situation: Situation): readonly Action[] {
  const functions = situation.facts.units.get(unitId)?.functions;
  const has = (...codes: readonly FunctionCode[]) => codes.some((code) => functions?.has(code));
  if (!has('gnss', 'vor-receiver', 'loc-receiver')) return [];
  const wanted: readonly FunctionCode[] = has('gnss', 'gs-receiver')
    ? ['lateral-deviation', 'vertical-deviation']
    : ['lateral-deviation'];
  return fittings(wanted, null, situation).filter(({ job }) => job === 'fit-indicator');
}

/** Another unit that sends what a port of this one waits for, where nothing aboard does. */
export function feeders(unitId: string, situation: Situation): readonly Action[] {
  const { dossier, catalogue, facts } = situation;
  const waiting = facts.units
    .get(unitId)
    ?.type?.ports.filter(
      (port) =>
        port.direction === 'in' &&
        port.requiredFor.length > 0 &&
        !dossier.configuration.links.some((link) => link.toUnit === unitId && link.toPort === port.name),
    );
  return currentTypes(catalogue)
    .filter((type) =>
      waiting?.some((port) =>
        type.ports.some(
          (other) => other.direction !== 'in' && other.signal === port.signal && other.standard === port.standard,
        ),
      ),
    )
    .map((type) => fitting(type, null, situation));
}

/** The unit stays; what is approved for it here grows to all that it can do, and the placard that limited it goes. */
export function approvals(unit: InstalledUnit, { dossier, facts, at }: Situation): readonly Action[] {
  const grants = [...grantsOf([...(facts.units.get(unit.id)?.functions ?? [])])];
  const performed = performedAt(dossier, at);
  const document = { title: `Approval of ${unit.name} for all it can do`, revision: null, date: performed.date };
  const approval = {
    basis: 'field-approval' as const,
    document,
    approvedOn: performed.date,
    releasedOn: performed.date,
    permission: null,
    modelListed: null,
    grants,
    acceptedBy: null,
  };
  return [
    action(
      'approve-installation',
      [unit.id],
      'unit.amend',
      [
        { kind: 'unit.amend', version: 1, unit: { ...unit, approval }, sameUnit: null, reason: 'approval widened' },
        ...dossier.configuration.placards
          .filter((each) => each.unitId === unit.id && each.kind === 'gnss-vfr-only')
          .map((each): Change => ({
            kind: 'placard.remove',
            version: 1,
            placardId: each.id,
            reason: 'the limit it speaks of is gone',
          })),
        supplementFor(dossier, unit.id, document, grants),
      ],
      ['data-and-parts-at-hand'],
    ),
  ];
}

/** Functions that a unit must have so that a means of the capability can exist: all of one row. */
const serves: Partial<Record<Capability, readonly (readonly FunctionCode[])[]>> = {
  fly: [['elt']],
  'two-way-radio': [['com']],
  'nav-vor': [['vor-receiver']],
  'approach-vor': [['vor-receiver']],
  'approach-loc': [['loc-receiver']],
  'approach-ils': [['loc-receiver', 'gs-receiver']],
  'nav-gnss': [['gnss']],
  'approach-lnav': [['gnss']],
  'approach-lp': [['gnss']],
  'approach-lnav-vnav': [['gnss']],
  'approach-lpv': [['gnss']],
  'altitude-reporting': [['transponder']],
  'ads-b-out': [['ads-b-out-1090'], ['ads-b-out-uat']],
};

/** Another unit that can give the capability: in the place of the one that should, else added. */
export function fittingsFor(capability: Capability, situation: Situation): readonly Action[] {
  return (serves[capability] ?? []).flatMap((functions) => {
    const standing = standingFor(functions, situation);
    return [...fittings(functions, standing, situation), ...(standing ? approvals(standing, situation) : [])];
  });
}

function standingFor(functions: readonly FunctionCode[], { dossier, facts }: Situation): InstalledUnit | null {
  const having = (codes: readonly FunctionCode[]) =>
    dossier.configuration.units.find((each) => codes.every((code) => facts.units.get(each.id)?.functions.has(code)));
  // A transponder with ADS-B Out takes the place of the one without.
  const instead = functions.includes('ads-b-out-1090') ? having(['transponder']) : undefined;
  return having(functions) ?? instead ?? null;
}

export function replacements(unit: InstalledUnit, situation: Situation): readonly Action[] {
  const own = [...(situation.facts.units.get(unit.id)?.functions ?? [])];
  const main = own.filter((code) => mainFunctions.includes(code));
  return fittings(main.length > 0 ? main : own, unit, situation);
}

/** What a unit is bought for; the rest comes with it. */
const mainFunctions: readonly FunctionCode[] = [
  'com',
  'vor-receiver',
  'loc-receiver',
  'gs-receiver',
  'gnss',
  'transponder',
  'ads-b-out-1090',
  'ads-b-out-uat',
  'lateral-deviation',
  'vertical-deviation',
  'elt',
  'altimeter',
  'altitude-reporting',
];

function fittings(
  functions: readonly FunctionCode[],
  replaced: InstalledUnit | null,
  situation: Situation,
): readonly Action[] {
  return currentTypes(situation.catalogue)
    .filter((type) => functions.every((code) => type.functions.includes(code)) && type.id !== replaced?.typeId)
    .map((type) => fitting(type, replaced, situation));
}

function fitting(type: EquipmentType, replaced: InstalledUnit | null, { dossier, at }: Situation): Action {
  return action(
    jobOf(type, replaced !== null),
    [type.id, ...(replaced ? [replaced.id] : [])],
    'unit.install',
    fit(dossier, at, type, replaced),
    ['data-and-parts-at-hand', 'passes-and-is-signed'],
  );
}

/** What can be had today: the catalogue given also holds superseded versions, for the units aboard that are recorded under them. */
function currentTypes({ types, superseded }: Catalogue): readonly EquipmentType[] {
  return Object.values(types)
    .filter(({ id }) => !superseded?.includes(id))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
}

function jobOf(type: EquipmentType, replaces: boolean): Job {
  const has = (code: FunctionCode) => type.functions.includes(code);
  if (has('gnss')) return replaces ? 'replace-navigator' : 'fit-navigator';
  if (has('transponder')) return replaces ? 'replace-transponder' : 'fit-transponder';
  if (has('elt')) return 'fit-elt';
  if (has('com')) return 'fit-com';
  if (has('lateral-deviation')) return 'fit-indicator';
  if (has('audio')) return 'fit-audio';
  // A display that shows the attitude too is a new panel, not an altimeter in the place of another.
  if (!replaces || has('attitude')) return 'fit-other';
  if (has('altimeter')) return 'replace-altimeter';
  return has('altitude-reporting') ? 'replace-encoder' : 'fit-other';
}
