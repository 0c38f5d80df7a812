import { expect, it } from 'vitest';
import { linkOf, unitOf } from '../../testing/builders.js';
import { dossierOf } from '../../testing/dossiers.js';
import { installedNames } from './names.js';

it('units and static systems have their names, a joint those of its ends', () => {
  const units = [unitOf({ id: 'nav1', name: 'SR 12' }), unitOf({ id: 'cdi1', name: 'SI 3' })];
  const links = [linkOf('nav1', 'LAT OUT', 'cdi1', 'LAT IN'), linkOf('gone', 'OUT', 'cdi1', 'VERT IN')];
  const { configuration } = dossierOf({
    configuration: { units, links, staticSystems: [{ id: 'static1', name: 'Pilot static', lastOpened: null }] },
  });
  expect(installedNames(configuration)).toEqual({
    nav1: 'SR 12',
    cdi1: 'SI 3',
    static1: 'Pilot static',
    [links[0]!.id]: 'SR 12 LAT OUT to SI 3 LAT IN',
    [links[1]!.id]: 'a unit no longer fitted OUT to SI 3 VERT IN',
  });
});
