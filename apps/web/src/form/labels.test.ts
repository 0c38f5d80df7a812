import { expect, test } from 'vitest';
import { labelOf, unitOf } from './labels.js';

test('a number shows its unit, and its label does not repeat it', () => {
  expect([unitOf('record.testedToFt'), labelOf('record.readings.altimeter.caseLeakFt')]).toEqual(['ft', 'Case leak']);
  expect([unitOf('a.baroFromInHg'), labelOf('a.baroFromInHg')]).toEqual(['inHg', 'Baro from']);
  expect([unitOf('a.mtlModeSDbm'), labelOf('a.mtlModeSDbm')]).toEqual(['dBm', 'MTL, mode S']);
  expect([unitOf('a.peakPowerDbw'), unitOf('a.peakPowerW')]).toEqual(['dBW', 'W']);
  expect(unitOf('unit.serial')).toBeNull();
  expect(unitOf('record.place')).toBeNull();
});

test('labels follow the place where a name has two meanings', () => {
  expect(labelOf('load.expires')).toBe('Expires (as printed by the provider)');
  expect(labelOf('record.expires')).toBe('Expires');
  expect(labelOf('record.subjects.0')).toBe('Of');
  expect(labelOf('electrical.circuits.0.ampacity.by')).toBe('Known by');
  expect(labelOf('performed.by')).toBe('By');
});
