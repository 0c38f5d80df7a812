import type { EquipmentType } from '../catalogue/type.js';
import type { ApproachMinima } from '../facts/gnss.js';
import { c129Classes, c196, lpFromLetter, needsOtherMeans, sbasOperationalClasses } from '../facts/gnss.js';
import type { SourceRef } from '../facts/source.js';
import { anyOf, met, notMet, unknown } from '../verdict/build.js';
import type { Clause } from '../verdict/clause.js';
import type { GnssCapability } from './effects.js';
import { tsoNumber } from './tso.js';

type Authorisation = EquipmentType['authorisations'][number];
type Family = keyof typeof needsOtherMeans.value;

/** C145 and C146 use augmentation; null: not catalogued, so nobody knows. */
export function isSbas(type: EquipmentType | null): boolean | null {
  return type === null ? null : gnssOf(type).some(({ family }) => family === 'C145' || family === 'C146');
}

/** Carries a TSO for satellite navigation under IFR. */
export function isNavigationUnit(type: EquipmentType): boolean {
  return gnssOf(type).length > 0;
}

/** Whether another means of navigation must be fitted and working; null: not catalogued. */
export function asksForOtherMeans(type: EquipmentType | null): boolean | null {
  return type === null ? null : gnssOf(type).every(({ family }) => needsOtherMeans.value[family]);
}

/** What the TSO and class marked on the unit let it be used for. Any one authorisation is enough. */
export function allowedByClass(id: string, type: EquipmentType | null, capability: GnssCapability): Clause {
  if (type === null)
    return unknown('class-allows', [`configuration.units.${id}.typeId`], { source: c129Classes.source });
  const found = gnssOf(type);
  return found.length === 0
    ? notMet('navigation-authorisation-marked', { source: c129Classes.source })
    : anyOf(
        'class-allows',
        found.map((each) => classClause(id, each, capability)),
        'cannot-tell',
      );
}

interface Gnss {
  readonly family: Family;
  readonly letter: string;
  readonly class: string | null;
}

function gnssOf(type: EquipmentType): readonly Gnss[] {
  return type.authorisations.flatMap(({ tso, class: marked }: Authorisation) => {
    const family = tsoNumber(tso);
    return isFamily(family) ? [{ family, letter: tso.slice(family.length), class: marked }] : [];
  });
}

function isFamily(text: string): text is Family {
  return text in needsOtherMeans.value;
}

function classClause(id: string, each: Gnss, capability: GnssCapability): Clause {
  if (each.family === 'C129') return c129(id, each, capability);
  if (each.family === 'C196') return allow(capability, c196.value.enRoute, c196.value.approaches, c196.source);
  return sbas(id, each, capability);
}

function c129(id: string, each: Gnss, capability: GnssCapability): Clause {
  const { source } = c129Classes;
  const row = each.class === null ? undefined : c129Classes.value[each.class];
  if (!row) return unknown('class-marked', [`catalogue.${id}.authorisations`], { source });
  // The table gives every class en route and terminal use, the text names some of them: the doubt is shown, nobody is let through.
  if (capability === 'nav-gnss' && !row.enRouteNamedByText)
    return unknown('table-and-text-disagree', [], {
      source: { ...source, paragraph: '1-1-17 b.3(b) against the table' },
    });
  return allow(capability, row.enRoute, row.nonPrecisionApproach ? ['lnav'] : [], source);
}

function sbas(id: string, each: Gnss, capability: GnssCapability): Clause {
  const digit = /([1-4])$/.exec(each.class ?? '')?.[1] as '1' | '2' | '3' | '4' | undefined;
  if (digit === undefined)
    return unknown('class-marked', [`catalogue.${id}.authorisations`], { source: sbasOperationalClasses['3'].source });
  const { value, source } = sbasOperationalClasses[digit];
  if (capability === 'approach-lp' && value.approaches.includes('lp') && each.letter < lpFromLetter.value)
    return notMet('letter-allows-lp', { source: lpFromLetter.source });
  return allow(
    capability,
    value.enRoute,
    value.approaches,
    capability === 'approach-lp' ? lpFromLetter.source : source,
  );
}

function allow(
  capability: GnssCapability,
  enRoute: boolean,
  approaches: readonly ApproachMinima[],
  source: SourceRef,
): Clause {
  const allowed =
    capability === 'nav-gnss' ? enRoute : approaches.some((minima) => capability === `approach-${minima}`);
  return allowed ? met('class-allows', { source }) : notMet('class-allows', { source });
}
