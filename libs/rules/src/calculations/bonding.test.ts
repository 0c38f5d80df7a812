import { expect, test } from 'vitest';
import type { BondKind } from '../dossier/readings.js';
import { judgeBonding } from './bonding.js';

const bond = (kind: BondKind, milliohm: number | null) =>
  judgeBonding({ points: [{ kind, place: 'rack', milliohm }] }).outcome;

test('AC 43.13-1B 11-188f: equipment frame below 2.5 milliohm', () => {
  expect([bond('equipment-frame', 2.49), bond('equipment-frame', 2.5), bond('equipment-frame', 2.51)]).toEqual([
    'met',
    'not-met',
    'not-met',
  ]);
});

test('AC 43.13-1B 11-189: each connection of a jumper at most 3 milliohm', () => {
  expect([bond('jumper-connection', 2.9), bond('jumper-connection', 3), bond('jumper-connection', 3.1)]).toEqual([
    'met',
    'met',
    'not-met',
  ]);
});

test('static bond below 1 ohm, a figure that a training page quotes', () => {
  expect([bond('static-bond', 999), bond('static-bond', 1000)]).toEqual(['met', 'not-met']);
  expect(judgeBonding({ points: [{ kind: 'static-bond', place: 'door', milliohm: 1 }] }).points[0]?.source.status).toBe(
    'secondary',
  );
});

test('nothing read: cannot tell', () => {
  expect(judgeBonding({ points: [] }).outcome).toBe('cannot-tell');
  expect(bond('equipment-frame', null)).toBe('cannot-tell');
});
