import type { FunctionCode } from '../../catalogue/type.js';
import { annunciatorColours as published } from '../../facts/annunciators.js';
import { colouredLightsSince } from '../../facts/old-part-23.js';
import { rotorcraftLightsSince } from '../../facts/part-27.js';
import type { AsBuilt } from '../../dossier/installation.js';
import type { Facts } from '../../graph/facts.js';
import type { UnitFacts } from '../../graph/units.js';
import { allOf, fact, unknown } from '../../verdict/build.js';
import type { Clause, Leaf } from '../../verdict/clause.js';
import type { Demand } from '../certification-basis.js';
import { basisKnown, bindingOf, effectsBy, sourceOf } from '../certification-basis.js';
import { findOut } from '../remedies.js';
import { defineRule } from '../rule.js';

type Light = NonNullable<AsBuilt['lights']>[number];

/** Units that are nothing but lights; a screen has its colours from its own standard. */
const lightsAlone: ReadonlySet<FunctionCode> = new Set([
  'integrity-annunciation',
  'approach-annunciation',
  'source-annunciation',
  'source-selector',
]);

const demand: Demand = {
  part23: colouredLightsSince,
  part27: { since: rotorcraftLightsSince, before: 'does-not' },
  car3: 'does-not',
};

/** One statement a unit with lights. CAR 3 has no such section, and without a known basis it is advice. */
export const annunciatorColours = defineRule(
  {
    id: 'annunciator-colours',
    topic: 'indication',
    asks: 'Lights are red for warnings, amber for cautions, green for safe operation, and of another colour for the rest.',
    binds:
      'Annunciators, and units whose lights are recorded, on aircraft under part 23 from amendment 23-17 to 23-63, or under part 27 from amendment 27-11.',
    sources: [published.source, colouredLightsSince.source, rotorcraftLightsSince.source],
    messages: {
      kept: 'The lights of {unit} have the colours that they must.',
      wrong: 'A light of {unit} has the colour of another use: {light}.',
      unclear: 'Whether the lights of {unit} have the colours that they must cannot be told.',
    },
    establishes: [],
  },
  (facts) => {
    const binding = bindingOf(facts, demand);
    if (binding === 'does-not') return [];
    return [...facts.units.values()].filter(hasLights).map((each) => {
      const path = `configuration.units.${each.id}.asBuilt.lights`;
      const lights = each.unit.asBuilt?.lights ?? null;
      const wrong = lights?.find((light) => !isRight(light));
      return {
        subject: each.id,
        clause: allOf(
          'colours',
          [basisKnown(facts, binding, sourceOf(facts, demand)), coloursOf(facts, lights, path)],
          'cannot-tell',
        ),
        messages: { met: 'kept', 'not-met': 'wrong', 'cannot-tell': 'unclear', 'not-applicable': 'kept' },
        data: { unit: each.unit.name, light: wrong ? `${wrong.use.replaceAll('-', ' ')} ${wrong.colour}` : null },
        effects: effectsBy(binding, [{ stops: 'release' }]),
        remedies: [findOut('unit.amend', each.id, path)],
      };
    });
  },
);

function hasLights({ unit, functions, active }: UnitFacts): boolean {
  if (!active) return false;
  if ((unit.asBuilt?.lights ?? []).length > 0) return true;
  return functions.size > 0 && [...functions].every((code) => lightsAlone.has(code));
}

function coloursOf(facts: Facts, lights: readonly Light[] | null, path: string): Clause {
  const { code } = facts.dossier.configuration.aircraft.basis ?? {};
  const source = code === 'part-27' ? rotorcraftLightsSince.source : published.source;
  // An annunciator without a light was not looked at.
  if (lights === null || lights.length === 0) return unknown('lights-recorded', [path], { source });
  return allOf(
    'each-light',
    lights.map((light): Leaf => fact(isRight(light), `light-${light.use}-${light.colour}`, path, { source })),
    'cannot-tell',
  );
}

function isRight({ use, colour }: Light): boolean {
  const { value } = published;
  if (use === 'other') return !Object.values(value).some((taken) => taken === colour);
  return value[use] === colour;
}
