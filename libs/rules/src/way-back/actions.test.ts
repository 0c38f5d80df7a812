import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { unitOf } from '../../testing/builders.js';
import { busy } from '../../testing/every-change.js';
import { goodDay, trainer, trainerCatalogue } from '../../testing/trainer.js';
import { changeDefinitions, parseChange } from '../changes/changes.js';
import type { Dossier } from '../dossier/dossier.js';
import { recordKind } from '../dossier/status.js';
import { factsOf } from '../graph/facts.js';
import { strictest } from '../verdict/conditions.js';
import { actionsFor } from './actions.js';

const { units, supplements } = busy.configuration;
/** Nothing approved, joined, received or written in a supplement, and an old altimeter of unknown type beside the others. */
const bare: Dossier = {
  ...busy,
  configuration: {
    ...busy.configuration,
    units: [...units.map((each) => ({ ...each, approval: null })), unitOf({ id: 'old1', functions: ['altimeter'] })],
    links: [],
    antennas: [],
    supplements: [],
    electrical: null,
    mass: null,
    openings: [],
  },
  status: { ...busy.status, loads: [], recurring: [], lifeLimits: [] },
};
/** Switched off for good, and without its type. */
const off: Dossier = trainer({
  configuration: {
    units: units.map((each) =>
      each.id === 'gps1'
        ? { ...each, deactivated: { since: { date: '2026-01-05', at: null }, placarded: null, recorded: null } }
        : each.id === 'nav1'
          ? { ...each, typeId: null, functions: ['com' as const, 'vor-receiver' as const] }
          : each,
    ),
    supplements: supplements.map((each) => ({ ...each, aboard: false, currentDataRequired: null })),
  },
});
const dossiers = { busy, bare, off };

/** Whatever a remedy may be about on this aircraft. */
function subjectsOn({ configuration, status }: Dossier, change: string): readonly string[] {
  const things = ['aircraft', ...configuration.units.map(({ id }) => id), 'static-1'];
  if (change === 'record.add') return recordKind.options.flatMap((kind) => [kind, `${kind}:xpdr1`]);
  return [
    ...things,
    ...configuration.links.flatMap(({ id, fromUnit, toUnit }) => [id, `${fromUnit}>${toUnit}`]),
    ...[...status.holds, ...status.defects, ...status.recurring, ...status.lifeLimits].map(({ id }) => id),
    ...['com', 'gnss', 'vor-loc', 'glide-slope', 'transponder'].map((kind) => `nav1:${kind}`),
    'gps1:gnss',
    'clock',
    'nothing',
  ];
}

const kinds = [...new Set(changeDefinitions.map(({ kind }) => kind))];
const actionsOn = (dossier: Dossier, change: string) => {
  const situation = {
    dossier,
    catalogue: trainerCatalogue,
    facts: factsOf(dossier, trainerCatalogue),
    at: goodDay,
    flight: { ...strictest, approaches: ['lpv' as const, 'ils' as const] },
  };
  return subjectsOn(dossier, change).flatMap((subject) =>
    actionsFor({ kind: 'do', change, subject, facts: [] }, situation).map((each) => ({ subject, each })),
  );
};
const made = kinds.filter((kind) => Object.values(dossiers).some((each) => actionsOn(each, kind).length > 0));

describe('what a shop can do', () => {
  it.each(made)('by %s: each change can be read, and it is written down', async (kind) => {
    const lines = Object.entries(dossiers).flatMap(([name, dossier]) => [
      name,
      ...actionsOn(dossier, kind).map(({ subject, each }) => {
        expect(each.changes.filter((change) => !parseChange(JSON.parse(JSON.stringify(change))).ok)).toEqual([]);
        return `  ${subject}: ${JSON.stringify(each)}`;
      }),
    ]);
    const wayOut = 'see that this is what can be done, then run `npx vitest run --project rules libs/rules -u`';
    const file = fileURLToPath(new URL(`../../stated/actions/${kind}.txt`, import.meta.url));
    await expect(`${[...new Set(lines)].join('\n')}\n`, wayOut).toMatchFileSnapshot(file);
  });

  it('is nothing where a fact is to be found out, or no shop can help', () => {
    const situation = {
      dossier: busy,
      catalogue: trainerCatalogue,
      facts: factsOf(busy, trainerCatalogue),
      at: goodDay,
      flight: strictest,
    };
    for (const [kind, change] of [
      ['find-out', 'hold.lift'],
      ['do', 'aircraft.amend'],
    ] as const)
      expect(actionsFor({ kind, change, subject: 'h1', facts: [] }, situation)).toEqual([]);
  });
});
