import { dateWords, codeWords } from '@tallywing/rules';
import type { Catalogue, Dossier } from '@tallywing/rules';
import type { Option } from '../../form/form-context.js';
import { jointWords, unitWords } from '../../trade/units.js';
import { valueAt } from '../../form/tree.js';

/** What a field that names something may name; null where it is free text. `value` is the whole form. */
export function optionsFor(
  kind: string,
  path: string,
  value: unknown,
  dossier: Dossier,
  catalogue: Catalogue,
): readonly Option[] | null {
  const { configuration, status, meters } = dossier;
  const place = path.replace(/\.\d+(?=\.|$)/g, '');
  const name = place.slice(place.lastIndexOf('.') + 1);
  if (kind === 'unit.amend' && path === 'unit.id') return units(dossier);
  if (kind === 'record.correct' && path === 'record.id')
    return status.records.map((each) => ({
      value: each.id,
      words: `${codeWords(each.kind)}, ${dateWords(each.done.date)}`,
    }));
  if (kind === 'identity.set' && path === 'identity.id') return units(dossier);
  switch (name) {
    case 'typeId':
      return Object.values(catalogue.types)
        .map((type) => ({ value: type.id, words: `${type.maker} ${type.name} (${type.partNumber})` }))
        .sort((a, b) => a.words.localeCompare(b.words));
    case 'unitId':
    case 'units':
    case 'fromUnit':
    case 'toUnit':
    case 'positionUnit':
      return units(dossier);
    case 'fromPort':
    case 'toPort':
      return ports(path, name === 'fromPort' ? 'fromUnit' : 'toUnit', value, dossier, catalogue);
    case 'linkId':
    case 'links':
      return configuration.links.map((link) => ({ value: link.id, words: jointWords(link, configuration.units) }));
    case 'antennaId':
      return configuration.antennas.map((each) => ({ value: each.id, words: `${each.kind} (${each.id})` }));
    case 'placardId':
      return configuration.placards.map((each) => ({ value: each.id, words: each.text }));
    case 'openingId':
      return configuration.openings.map((each) => ({ value: each.id, words: each.id }));
    case 'holdId':
      return status.holds.map((each) => ({ value: each.id, words: each.reason }));
    case 'obligationId':
      return status.obligations
        .filter((each) => each.what === 'what-was-touched')
        .map((each) => ({
          value: each.id,
          words: `${subjectName(each.subject, dossier)}, ${dateWords(each.since.date)}`,
        }));
    case 'defectId':
      return status.defects.map((each) => ({ value: each.id, words: each.text }));
    case 'itemId':
      return status.recurring.map((each) => ({ value: each.id, words: each.name }));
    case 'limitId':
      return status.lifeLimits.map((each) => ({ value: each.id, words: each.name }));
    case 'recordId':
      return status.records.map((each) => ({
        value: each.id,
        words: `${codeWords(each.kind)}, ${dateWords(each.done.date)}`,
      }));
    case 'meter':
      return meters.definitions.map((each) => ({ value: each.id, words: each.name }));
    case 'subject':
    case 'subjects':
      return subjects(dossier);
    default:
      return null;
  }
}

export function unitName(id: string, dossier: Dossier): string {
  const unit = dossier.configuration.units.find((each) => each.id === id);
  return unit ? unitWords(unit) : id;
}

/** Where an entry can belong: the aircraft, one of its units, static systems or required items. */
export function subjectName(id: string, dossier: Dossier): string {
  if (id === 'aircraft') return 'The aircraft';
  const system = dossier.configuration.staticSystems.find((each) => each.id === id);
  const item = dossier.status.recurring.find((each) => each.id === id);
  return system?.name ?? item?.name ?? unitName(id, dossier);
}

function units(dossier: Dossier): Option[] {
  return dossier.configuration.units.map((unit) => ({ value: unit.id, words: unitWords(unit) }));
}

function subjects(dossier: Dossier): Option[] {
  const { staticSystems, equipment } = dossier.configuration;
  const { recurring, directives, lifeLimits } = dossier.status;
  return [
    { value: 'aircraft', words: 'The aircraft' },
    ...units(dossier),
    ...staticSystems.map((each) => ({ value: each.id, words: each.name })),
    ...recurring.map((each) => ({ value: each.id, words: `Recurring item: ${each.name}` })),
    ...directives.map((each) => ({ value: each.id, words: `Directive ${each.number}` })),
    ...lifeLimits.map((each) => ({ value: each.id, words: `Life-limited part: ${each.name}` })),
    ...equipment.map((each) => ({ value: each.item, words: `Required item: ${each.item.replace(/-/g, ' ')}` })),
  ];
}

function ports(
  path: string,
  unitField: string,
  value: unknown,
  dossier: Dossier,
  catalogue: Catalogue,
): Option[] | null {
  const at = path.slice(0, path.lastIndexOf('.') + 1);
  const unit = dossier.configuration.units.find((each) => each.id === valueAt(value, `${at}${unitField}`));
  const type = unit?.typeId == null ? undefined : catalogue.types[unit.typeId];
  const wanted = unitField === 'fromUnit' ? 'in' : 'out';
  return type
    ? type.ports
        .filter((port) => port.direction !== wanted)
        .map((port) => ({ value: port.name, words: `${port.name} (${port.signal.replace(/-/g, ' ')})` }))
    : null;
}
