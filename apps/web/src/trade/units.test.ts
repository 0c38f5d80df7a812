import { blankDossier, type Dossier } from '@tallywing/rules';
import { expect, test } from 'vitest';
import { namesIn, unitWords } from './units.js';

const blank = blankDossier('a');
const unit = (id: string, name: string, serial: string | null, place: string | null) => ({ id, name, serial, place });

test('a unit is its name, serial number and place, as far as they are recorded', () => {
  const words = (serial: string | null, place: string | null) => unitWords(unit('n', 'SR 12', serial, place) as never);
  expect(words('S-9', 'centre-stack')).toBe('SR 12, serial S-9, centre stack');
  expect(words(null, 'centre-stack')).toBe('SR 12, centre stack');
  expect(words(null, null)).toBe('SR 12');
});

test('a joint goes by its ends, and tells two units of one name apart', () => {
  const joint = (toUnit: string) => ({
    id: `to-${toUnit}`,
    fromUnit: 'nav',
    fromPort: 'LAT OUT',
    toUnit,
    toPort: 'LAT IN',
  });
  const dossier = {
    ...blank,
    configuration: {
      ...blank.configuration,
      staticSystems: [{ id: 'static1', name: 'Pilot static' }],
      units: [
        unit('nav', 'SR 12', 'S-9', 'centre-stack'),
        unit('left', 'SI 3', null, 'left-panel'),
        unit('right', 'SI 3', 'R-1', 'right-panel'),
      ],
      links: [joint('left'), joint('right'), joint('gone')],
    },
  } as unknown as Dossier;
  expect(namesIn(dossier)).toMatchObject({
    static1: 'Pilot static',
    nav: 'SR 12, serial S-9, centre stack',
    'to-left': 'SR 12 LAT OUT to SI 3 (left panel) LAT IN',
    'to-right': 'SR 12 LAT OUT to SI 3 (serial R-1) LAT IN',
    'to-gone': 'SR 12 LAT OUT to gone LAT IN',
  });
});
