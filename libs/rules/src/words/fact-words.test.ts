import { describe, expect, it } from 'vitest';
import { factName, factWords, pathWords } from './fact-words.js';

const names = {
  nav1: 'SR 12, serial S-9, centre stack',
  'nav1.LAT-OUT>cdi1.LAT-IN': 'SR 12 LAT OUT to SI 3 LAT IN',
};

describe('a missing fact in words', () => {
  it.each([
    ['configuration.units.nav1.approval', 'Unit SR 12, serial S-9, centre stack: approval'],
    ['configuration.units.nav1.asBuilt.bears', 'Unit SR 12, serial S-9, centre stack: as built, bears'],
    ['configuration.links.nav1.LAT-OUT>cdi1.LAT-IN.cover', 'Joint SR 12 LAT OUT to SI 3 LAT IN: what approves it'],
    ['configuration.links.nav1.LAT-OUT>cdi1.LAT-IN', 'Joint SR 12 LAT OUT to SI 3 LAT IN'],
    ['configuration.equipment.magnetic-compass', 'Required item magnetic compass'],
    ['status.completeness.life-limits', 'Whether the list of life limits is complete'],
    ['catalogue.nav1.drawA', 'Equipment type of SR 12, serial S-9, centre stack: current that it draws (A)'],
    ['catalogue.xpdr1.supplyV.least', 'Equipment type of xpdr1: least'],
    ['configuration.papers', 'Papers aboard and on file'],
    ['status.records', 'Entries that may exist and that nobody recorded'],
    ['configuration.units', 'Units'],
    ['configuration.aircraft.program.document', 'Program › document of the aircraft'],
    ['meters.timeInService', 'Time in service'],
    ['configuration.authority', 'Authority'],
    ['configuration.aircraft.basis', 'Basis of the aircraft'],
    ['status.loads.nav1.chart.this', 'Database of SR 12, serial S-9, centre stack: chart, cycle in use'],
  ])('%s: %s', (fact, words) => {
    expect(factWords(fact, names)).toBe(words);
  });

  it.each([
    ['configuration.units.nav1.approval', 'approval'],
    ['configuration.units.nav1.typeId', 'equipment type'],
    ['configuration.units.nav1', 'unit'],
    ['configuration.supplements.nav1', 'supplement'],
    ['status.obligations.o1', 'work owed'],
    ['configuration.links.nav1.LAT-OUT>cdi1.LAT-IN', 'joint'],
    ['configuration.links.enc1.P1>xpdr1.P1-alt', 'joint'],
    ['configuration.packs.gps1', 'documents'],
    ['meters.timeInService', 'time in service'],
    ['configuration.electrical.circuits.c1.usedIn', 'conditions that it is used in'],
    ['configuration.links.nav1.LAT-OUT>cdi1.LAT-IN.cover', 'what approves it'],
    ['configuration.links.nav1.LAT-OUT>cdi1.LAT-IN.cover.acceptedBy', 'who accepted it as found'],
    ['configuration.equipment.magnetic-direction-indicator', 'magnetic direction indicator'],
    ['configuration.equipment.dme-or-rnav', 'DME or RNAV'],
    ['configuration.aircraft.maxWeightLb', 'greatest weight (lb)'],
    ['configuration.electrical.busV', 'bus voltage (V)'],
    ['configuration.electrical.circuits', 'circuits'],
    ['configuration.openings.o1.widthIn', 'width (in)'],
    ['catalogue.nav1.drawA', 'current that it draws (A)'],
    ['status.records', 'entries'],
    ['status.completeness.life-limits', 'whether the list of life limits is complete'],
  ])('within a sentence that names the thing, %s: %s', (fact, words) => {
    expect(factName(fact)).toBe(words);
  });

  it('goes by short names where nothing has another', () => {
    expect(factWords('configuration.units.nav2.approval', names)).toBe('Unit nav2: approval');
    expect(factWords('configuration.links.gps1.POS-OUT>tab1.POS-IN.cover', names)).toBe(
      'Joint gps1.POS-OUT>tab1.POS-IN: what approves it',
    );
  });
});

it('a path is words of its parts', () => {
  expect(pathWords('configuration.electrical.busV')).toBe('electrical › bus voltage (V)');
  expect(pathWords('configuration.units.nav-1.asBuilt.grants')).toBe(
    'units › nav-1 › as built › what it is approved for',
  );
});
