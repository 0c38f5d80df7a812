import {
  type Change,
  type ChangeKind,
  type ChangeOf,
  codeWords,
  dateTimeWords,
  dateWords,
  equipmentItem,
  lowerFirst,
} from '@tallywing/rules';
import { countWords, hoursWords, listWords } from '../ui/words.js';

/** An entry as it was recorded, with the names of what it speaks of by id. */
export interface EntryFacts {
  readonly kind: string;
  readonly body: unknown;
  readonly names: unknown;
}

/** Words for what stands in an entry as id or code. */
interface Say {
  readonly name: (id: string) => string;
  readonly names: (ids: readonly string[]) => string;
  readonly when: (instant: string) => string;
}

const code = (text: string): string => lowerFirst(codeWords(text));
/** `, 3 Mar 2026`-like parts that are left out where nothing is recorded. */
const part = (before: string, text: string | null | undefined, after = ''): string =>
  text === null || text === undefined || text === '' ? '' : `${before}${text}${after}`;
const inUtc = (instant: string): string => `${dateTimeWords(instant)} UTC`;

const sentences: { readonly [K in ChangeKind]: (change: ChangeOf<K>, say: Say) => string } = {
  'aircraft.add': ({ aircraft }) => `Added the aircraft ${aircraft.registration}, ${aircraft.make} ${aircraft.model}`,
  'aircraft.amend': ({ aircraft }) => `Amended the facts of the aircraft, ${aircraft.registration}`,
  'authority.set': ({ authority }) => `Stated the kinds of operation allowed, from ${authority.document.title}`,
  'equipment.state': ({ items }) =>
    items.length > 3
      ? `Stated ${items.length} items of the required equipment`
      : `Required equipment: ${listWords(items.map(({ item, state }) => `${code(item)} ${code(state)}`))}`,
  'static-system.set': ({ system }) => `Described the static system ${system.name}`,
  'work.done': ({ what, unitId, touched }, { name }) =>
    `Work${part(' on ', unitId === null ? null : name(unitId))}: ${what}${part('; it touched ', touched.length === 0 ? null : listWords(touched.map(code)))}`,
  'touched.state': ({ obligationId, touched, by }, { name }) =>
    `Stated what work on ${name(obligationId.split(':').at(-1) ?? '')} touched: ${listWords(touched.map(code))}, by ${by.by}`,
  'unit.install': ({ unit }) =>
    `Fitted ${unit.name}${part(', serial ', unit.serial)}${part(', ', unit.place === null ? null : code(unit.place))}`,
  'unit.remove': ({ unitId }, { name }) => `Took out ${name(unitId)}`,
  'unit.amend': ({ unit }) => `Completed what is known of ${unit.name}`,
  'unit.deactivate': ({ unitId, placarded, recorded }, { name }) =>
    `Deactivated ${name(unitId)}${placarded ? ', placarded' : ''}${recorded ? ', recorded' : ''}`,
  'unit.reactivate': ({ unitId }, { name }) => `Put ${name(unitId)} back in use`,
  'link.connect': ({ link }, { name }) =>
    `Joined ${name(link.fromUnit)} ${link.fromPort} to ${name(link.toUnit)} ${link.toPort}`,
  'link.disconnect': ({ linkId }, { name }) => `Parted the joint ${name(linkId)}`,
  'antenna.fit': ({ antenna }, { names }) =>
    `Fitted an antenna, ${code(antenna.kind)}${part(', for ', names(antenna.units))}`,
  'antenna.remove': ({ antennaId }, { name }) => `Took off ${name(antennaId)}`,
  'placard.fit': ({ placard }) => `Fitted the placard “${placard.text}”`,
  'placard.remove': ({ placardId }, { name }) => `Took off the placard ${name(placardId)}`,
  'supplement.set': ({ supplement }, { names }) =>
    `Flight manual supplement ${supplement.document.title}${part(' for ', names(supplement.units))}${supplement.aboard ? ', aboard' : ''}`,
  'opening.set': ({ opening }) => `Described an opening in the panel, ${code(opening.place)}`,
  'electrical.set': ({ electrical }) =>
    `Described the electrical system, ${countWords(electrical.circuits.length, 'circuit')}`,
  'mass.revise': ({ mass }) =>
    `New empty weight ${mass.emptyWeightLb} lb at ${mass.emptyArmIn} in, ${mass.weighed ? 'weighed' : 'calculated'}`,
  'mass.note': ({ item }) => `Noted a small change of weight: ${item.what}, ${item.weightLb} lb`,
  'record.add': ({ record }, say) => `Recorded ${recordWords(record, say)}`,
  'record.correct': ({ record }, say) => `Corrected an entry; it now says: ${recordWords(record, say)}`,
  'database.load': ({ load }, { name }) =>
    `Loaded ${code(load.database)} data${part(', cycle ', load.cycle)}, in ${name(load.unitId)}${load.slot === 'next' ? ', as the next cycle' : ''}`,
  'database.drop': ({ unitId, database, slot }, { name }) =>
    `Took ${code(database)} data off ${name(unitId)}${slot === 'next' ? ', the next cycle' : ''}`,
  'defect.raise': ({ defect }, { name }) => `Reported a defect of ${name(defect.subject)}: “${defect.text}”`,
  'defect.defer': ({ defectId, deferral }, { name }) =>
    `Deferred the defect ${name(defectId)} ${deferral.route === 'mel' ? 'by the minimum equipment list' : `under ${deferral.route}`}`,
  'defect.close': ({ defectId, how, entry, by }, { name }) =>
    `Closed the defect ${name(defectId)}: ${code(how)}, by ${by.name}, ${entry}`,
  'directive.set': ({ directive }, { name }) =>
    `Directive ${directive.number}${directive.subject === directive.id ? '' : ` on ${name(directive.subject)}`}: ${directiveStates[directive.state]}${part(', ', directive.method)}`,
  'hold.place': ({ hold }, { when }) => `Placed a hold: “${hold.reason}”, by ${hold.by}, from ${when(hold.from)}`,
  'hold.lift': ({ holdId, at }, { name, when }) => `Lifted the hold ${name(holdId)} at ${when(at)}`,
  'say-so.give': ({ sayso }, { name, when }) =>
    `Answered for a doubted source, of ${name(sayso.subject)}: ${sayso.by}, until ${when(sayso.until)}, “${sayso.reason}”`,
  'say-so.end': ({ at }, { when }) => `Ended an answer for a doubted source at ${when(at)}`,
  'completeness.state': ({ lists }) =>
    `Stated complete by ${listWords([...new Set(lists.map(({ stated }) => stated.by))])}: ${listWords(lists.map(({ list }) => listNames[list] ?? code(list)))}`,
  adopt: ({ units, links, by }, { names }) =>
    `Accepted as found by ${by.by}: ${listWords([...(units.length > 0 ? [names(units)] : []), ...(links.length > 0 ? [countWords(links.length, 'joint')] : [])])}`,
  'identity.set': ({ identity }, { name }) =>
    `Transmitted identity of ${name(identity.id)}${part(': address ', identity.address)}${part(', flight identification ', identity.flightId)}`,
  'recurring.set': ({ item }, { name }) =>
    `Recurring item ${item.name}${item.subject === item.id ? '' : ` of ${name(item.subject)}`}`,
  'recurring.end': ({ itemId }, { name }) => `Ended the recurring item ${name(itemId)}`,
  'life-limit.set': ({ limit }, { name }) =>
    `Life limit of ${limit.name}${limit.subject === limit.id ? '' : ` on ${name(limit.subject)}`}`,
  'life-limit.end': ({ limitId }, { name }) => `Ended the life limit of ${name(limitId)}`,
  'paper.set': ({ paper }) =>
    `Paper: ${code(paper.kind)}${part(' ', paper.number)}${paper.aboard === null ? '' : paper.aboard ? ', aboard' : ', not aboard'}`,
  'pack.set': ({ pack }, { name }) =>
    `Document pack of ${name(pack.unitId)}, ${countWords(pack.parts.length, 'document')}`,
  'decision.record': ({ decision }, { name }) =>
    `Decision of ${decision.by.name} on ${name(decision.subject)}, ${code(decision.question)}: ${code(decision.answer)}`,
  'meter.define': ({ definition, standsForTimeInService }) =>
    `Defined the meter ${definition.name}, ${code(definition.kind)}${standsForTimeInService ? '; it stands for time in service' : ''}`,
  'meter.read': ({ meter, dial, asOf }, { name, when }) => `Read ${name(meter)}: ${hoursWords(dial)} at ${when(asOf)}`,
  'meter.replace': ({ meter, oldDial, newDial }, { name }) =>
    `Replaced ${name(meter)}: the old dial showed ${hoursWords(oldDial)}, the new one ${hoursWords(newDial)}`,
  'meter.correct': ({ meter, value, asOf }, { name, when }) =>
    `Corrected the reading of ${name(meter)}: ${hoursWords(value)} in all at ${when(asOf)}`,
  'utilisation.set': ({ utilisation }) =>
    `Expected use ${utilisation.perMonth === null ? 'not recorded' : `${hoursWords(utilisation.perMonth)} a month`}; a reading is good for ${utilisation.readingGoodForDays === null ? 'as long as the house says' : countWords(utilisation.readingGoodForDays, 'day')}`,
};

/** Kinds that have words; a record of a later version of the program may hold others. */
export const wordedKinds: readonly string[] = Object.keys(sentences);

const directiveStates = { complied: 'complied with', 'not-applicable': 'not applicable', open: 'open' } as const;
const listNames: Readonly<Record<string, string>> = {
  equipment: 'the equipment list',
  links: 'the joints',
  directives: 'the directives',
  defects: 'the open defects',
  recurring: 'the recurring items',
  'life-limits': 'the life limits',
  placards: 'the placards',
};

/**
 * What an entry recorded, in one sentence, without its reason. Ids become names; what has none is not named.
 * @param when an instant in words; without it in UTC
 */
export function entryWords({ kind, body, names }: EntryFacts, when = inUtc): string {
  const sentence = sentences[kind as ChangeKind] as ((change: Change, say: Say) => string) | undefined;
  return sentence
    ? `${sentence({ kind, version: 1, ...(body as object) } as Change, sayer(names, when))}.`
    : `${codeWords(kind.replace('.', ' '))}.`;
}

/** The reason that stands in the entry itself. */
export function reasonIn(body: unknown): string | null {
  const reason = (body as { readonly reason?: unknown } | null)?.reason;
  return typeof reason === 'string' && reason !== '' ? reason : null;
}

/** Whom the entry itself names: who signed, read, stated or decided it. Null where it names nobody. */
export function namedIn(body: unknown): string | null {
  const { record, by, hold, decision, sayso, lists } = (body ?? {}) as Naming;
  return nameOf(record?.agency ?? by ?? hold?.by ?? decision?.by ?? sayso?.by ?? lists?.[0]?.stated);
}

type Named = string | { readonly name?: string; readonly by?: string } | null | undefined;
interface Naming {
  readonly by?: Named;
  readonly record?: { readonly agency: Named };
  readonly lists?: readonly { readonly stated: Named }[];
  readonly hold?: { readonly by: Named };
  readonly decision?: { readonly by: Named };
  readonly sayso?: { readonly by: Named };
}

function nameOf(named: Named): string | null {
  return (typeof named === 'string' ? named : (named?.name ?? named?.by)) || null;
}

/** A test or inspection with what it is of, when it was done and how it ended. */
export function recordWords(record: ChangeOf<'record.add'>['record'], { names }: Pick<Say, 'names'>): string {
  const of = record.subjects.every((each) => each === 'aircraft') ? '' : ` of ${names(record.subjects)}`;
  const entry = record.entry === null ? '' : `, ${record.entry.book} page ${record.entry.page}`;
  return `${lowerFirst(codeWords(record.kind))}${of}, done ${dateWords(record.done.date)}${part(', ', record.outcome)}${part(', by ', record.agency?.name)}${entry}`;
}

/** @param names as the entry came with them */
export function sayer(names: unknown, when: Say['when']): Say {
  const known = (names ?? {}) as Readonly<Record<string, string>>;
  const items: ReadonlySet<string> = new Set(equipmentItem.options);
  const name = (id: string): string => {
    if (id === 'aircraft') return 'the aircraft';
    return known[id] ?? (items.has(id) ? `the ${code(id)}` : 'something that has no name here');
  };
  return { name, names: (ids) => listWords(ids.map(name)), when };
}
