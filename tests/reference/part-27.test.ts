import { describe, expect, test } from 'vitest';
import { mountLoadsLb, rotorcraftMountFactors } from '../../libs/rules/src/calculations/mount.js';
import type { Aircraft } from '../../libs/rules/src/dossier/aircraft.js';
import { unitOf } from '../../libs/rules/testing/builders.js';
import { dossierOf } from '../../libs/rules/testing/dossiers.js';
import { said, saidOfProtector } from './said.js';

/** Part 27, edition of 1 January 2019; its source notes say since which amendment. */

const at = '2026-03-02T14:00Z';
const part27 = (amendment: number): Aircraft['basis'] => ({ code: 'part-27', amendment });

describe('27.1322, lights', () => {
  const lit = (use: 'warning' | 'caution' | 'safe-operation' | 'other', colour: 'red' | 'amber' | 'green' | 'white') =>
    said('annunciator-colours', {
      dossier: dossierOf({
        configuration: {
          aircraft: { basis: part27(11) },
          units: [
            unitOf({
              id: 'ann1',
              functions: ['integrity-annunciation'],
              asBuilt: { air: null, airwaysClear: null, couldStrike: null, bears: null, lights: [{ use, colour }] },
            }),
          ],
        },
      }),
      at,
    });

  test.each([
    ['warning', 'red'],
    ['caution', 'amber'],
    ['safe-operation', 'green'],
    ['other', 'white'],
  ] as const)('%s: %s and no other', (use, colour) => {
    const right = (['red', 'amber', 'green', 'white'] as const).filter((shown) => lit(use, shown) === 'met');
    expect(right).toEqual([colour]);
  });
});

test('27.1357(b): a protective device for a circuit essential to flight safety protects no other', () => {
  const guards = (circuitsGuarded: number) => saidOfProtector(part27(13), circuitsGuarded);
  expect([guards(1), guards(2)]).toEqual(['met', 'not-met']);
});

test('27.561(b)(3) (from memory), a box of 10 lb: 160 forward, 40 up, 80 sideward, 200 lb down; before amendment 27-25 40, 15, 20, 40', () => {
  expect(mountLoadsLb(10, rotorcraftMountFactors(true))).toEqual({ forward: 160, up: 40, side: 80, down: 200 });
  expect(mountLoadsLb(10, rotorcraftMountFactors(false))).toEqual({ forward: 40, up: 15, side: 20, down: 40 });
});
