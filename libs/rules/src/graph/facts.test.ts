import { describe, expect, it } from 'vitest';
import { linkOf, recordOf, typeOf, unitOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { FunctionCode, Port } from '../catalogue/type.js';
import type { Antenna, InstalledUnit, Link } from '../dossier/installation.js';
import { factsOf } from './facts.js';
import { feeding, sendersTo } from './feeding.js';

const unit = (id: string, ...functions: FunctionCode[]) => unitOf({ id, functions });
const off = (each: InstalledUnit): InstalledUnit => ({
  ...each,
  deactivated: { since: { date: '2026-01-01', at: null }, placarded: true, recorded: true },
});
const lateral = (from: string, to: string) => linkOf(from, 'lateral-deviation', to, 'lateral-deviation');
const vertical = (from: string, to: string) => linkOf(from, 'vertical-deviation', to, 'vertical-deviation');
const antenna = (id: string, ...units: string[]): Antenna => ({
  id,
  kind: 'vor-loc',
  units,
  approved: true,
  xIn: null,
  yIn: null,
});
const facts = (units: readonly InstalledUnit[], links: readonly Link[] = [], antennas: readonly Antenna[] = []) =>
  factsOf(dossierOf({ configuration: { units, links, antennas } }), catalogueOf());
const chainsOf = (...given: Parameters<typeof facts>) =>
  facts(...given).chains.map(({ id, indicator, lateral: l, vertical: v, members }) => ({
    id,
    indicator: indicator?.id ?? null,
    lateral: l?.map((each) => `${each.fromUnit}>${each.toUnit}`) ?? null,
    vertical: v?.map((each) => `${each.fromUnit}>${each.toUnit}`) ?? null,
    members,
  }));

const nav = unit('nav1', 'vor-receiver', 'loc-receiver', 'gs-receiver');
const cdi = unit('cdi1', 'lateral-deviation', 'vertical-deviation');
const bar = unit('cdi2', 'lateral-deviation');
const selector = unit('sel1', 'source-selector');

describe('a chain', () => {
  it('leads from a source to each indicator that it is joined to, with what it passes', () => {
    const links = [lateral('nav1', 'cdi1'), vertical('nav1', 'cdi1'), lateral('nav1', 'cdi2')];
    expect(chainsOf([nav, cdi, bar], links, [antenna('a1', 'nav1'), antenna('a2', 'other')])).toEqual([
      {
        id: 'nav1>cdi1',
        indicator: 'cdi1',
        lateral: ['nav1>cdi1'],
        vertical: ['nav1>cdi1'],
        members: ['nav1>cdi1', 'nav1', 'cdi1', 'a1', links[0]?.id, links[1]?.id],
      },
      {
        id: 'nav1>cdi2',
        indicator: 'cdi2',
        lateral: ['nav1>cdi2'],
        vertical: null,
        members: ['nav1>cdi2', 'nav1', 'cdi2', 'a1', links[2]?.id],
      },
    ]);
  });

  it('comes in the order of the indicators’ names, whatever the order of the joints', () => {
    const links = [lateral('nav1', 'cdi2'), lateral('nav1', 'cdi1')];
    expect(chainsOf([nav, bar, cdi], links).map(({ id }) => id)).toEqual(['nav1>cdi1', 'nav1>cdi2']);
  });

  it('passes a selector, and nothing else', () => {
    expect(chainsOf([nav, selector, cdi], [lateral('nav1', 'sel1'), lateral('sel1', 'cdi1')])).toMatchObject([
      { id: 'nav1>cdi1', lateral: ['nav1>sel1', 'sel1>cdi1'], vertical: null },
    ]);
    expect(chainsOf([nav, unit('box', 'com'), cdi], [lateral('nav1', 'box'), lateral('box', 'cdi1')])).toEqual([
      { id: 'nav1', indicator: null, lateral: null, vertical: null, members: ['nav1'] },
    ]);
  });

  it('goes round in no ring of selectors', () => {
    const ring = [lateral('nav1', 'sel1'), lateral('sel1', 'sel2'), lateral('sel2', 'sel1'), lateral('sel2', 'cdi1')];
    expect(chainsOf([nav, selector, unit('sel2', 'source-selector'), cdi], ring)).toMatchObject([
      { id: 'nav1>cdi1', lateral: ['nav1>sel1', 'sel1>sel2', 'sel2>cdi1'] },
    ]);
  });

  it('of vertical guidance alone has no lateral part', () => {
    expect(chainsOf([nav, cdi], [vertical('nav1', 'cdi1')])).toMatchObject([
      { id: 'nav1>cdi1', lateral: null, vertical: ['nav1>cdi1'] },
    ]);
    expect(chainsOf([nav, bar], [vertical('nav1', 'cdi2')])).toMatchObject([{ id: 'nav1', indicator: null }]);
  });

  it.each([
    ['is deactivated', off(cdi)],
    ['is portable', unit('cdi1', 'lateral-deviation', 'portable-display')],
    ['shows no deviation', unit('cdi1', 'attitude')],
  ])('leads to no indicator that %s', (_, indicator) => {
    expect(chainsOf([nav, indicator], [lateral('nav1', 'cdi1')])).toMatchObject([{ id: 'nav1', indicator: null }]);
  });

  it('follows no joint of another signal, and none against its direction', () => {
    expect(chainsOf([nav, cdi], [linkOf('nav1', 'position', 'cdi1', 'position')])).toMatchObject([{ id: 'nav1' }]);
    expect(chainsOf([nav, cdi], [lateral('cdi1', 'nav1')])).toMatchObject([{ id: 'nav1' }]);
  });

  it('of a source with a display of its own ends at itself', () => {
    expect(chainsOf([unit('gps1', 'gnss', 'lateral-deviation')], [], [antenna('a1', 'gps1')])).toEqual([
      { id: 'gps1>gps1', indicator: 'gps1', lateral: [], vertical: null, members: ['gps1>gps1', 'gps1', 'a1'] },
    ]);
    expect(chainsOf([unit('gps1', 'gnss', 'lateral-deviation', 'vertical-deviation')])).toMatchObject([
      { lateral: [], vertical: [] },
    ]);
  });

  it('comes back to its source through a selector as to no other end: the source shows it anyway', () => {
    const gps = unit('gps1', 'gnss', 'lateral-deviation');
    expect(chainsOf([gps, selector], [lateral('gps1', 'sel1'), lateral('sel1', 'gps1')])).toEqual([
      { id: 'gps1>gps1', indicator: 'gps1', lateral: [], vertical: null, members: ['gps1>gps1', 'gps1'] },
    ]);
  });

  it('begins at no deactivated unit, at no portable one, and at none that is no source', () => {
    expect(chainsOf([unit('gps1', 'gnss', 'lateral-deviation', 'portable-display')])).toEqual([]);
    expect(chainsOf([off(nav), cdi, unit('com1', 'com')], [lateral('nav1', 'cdi1')])).toEqual([]);
    for (const each of ['vor-receiver', 'loc-receiver', 'gnss'] as const)
      expect(chainsOf([unit('x', each)])).toMatchObject([{ id: 'x' }]);
  });
});

describe('the means of a capability', () => {
  const meansOf = (...given: Parameters<typeof facts>) =>
    facts(...given).means.map(({ id, capability, members }) => [id, capability, members]);
  const ids = (...given: Parameters<typeof facts>) => facts(...given).means.map(({ capability }) => capability);

  it('of guidance are the chains, by what the source receives', () => {
    expect(ids([unit('x', 'vor-receiver')])).toEqual(['nav-vor', 'approach-vor']);
    expect(ids([unit('x', 'loc-receiver')])).toEqual(['approach-loc']);
    expect(ids([unit('x', 'loc-receiver', 'gs-receiver')])).toEqual(['approach-loc', 'approach-ils']);
    expect(ids([unit('x', 'vor-receiver', 'gs-receiver')])).toEqual(['nav-vor', 'approach-vor']);
    expect(ids([unit('x', 'gnss')])).toEqual([
      'nav-gnss',
      'approach-lnav',
      'approach-lp',
      'approach-lnav-vnav',
      'approach-lpv',
    ]);
  });

  it('of talking is each radio with its antennas', () => {
    expect(meansOf([unit('com1', 'com'), off(unit('com2', 'com'))], [], [antenna('a1', 'com1')])).toEqual([
      ['com1', 'two-way-radio', ['com1', 'a1']],
    ]);
  });

  describe('of satellite navigation', () => {
    const gps = unit('gps1', 'gnss');
    const own = unit('gps1', 'gnss', 'integrity-annunciation');
    const light = unit('ann1', 'integrity-annunciation');
    const flag = linkOf('gps1', 'integrity-flag', 'ann1', 'integrity-flag');
    const data = linkOf('gps1', 'data', 'ann1', 'data');
    const members = (...given: Parameters<typeof facts>) =>
      facts(...given)
        .means.filter(({ capability }) => capability === 'approach-lpv')
        .map((each) => each.members);

    it('pass whoever annunciates its integrity, one for each', () => {
      expect(members([gps])).toEqual([['gps1']]);
      expect(members([own])).toEqual([['gps1', 'gps1:gps1:integrity-annunciation']]);
      expect(members([gps, light], [flag])).toEqual([['gps1', 'gps1:ann1:integrity-annunciation', 'ann1', flag.id]]);
      expect(members([own, light], [flag])).toEqual([
        ['gps1', 'gps1:ann1:integrity-annunciation', 'ann1', flag.id],
        ['gps1', 'gps1:gps1:integrity-annunciation'],
      ]);
      expect(facts([own, light], [flag]).means.every(({ id }) => id === 'gps1')).toBe(true);
    });

    it('pass one told twice by its own line, and one told within the data by that', () => {
      expect(members([gps, light], [data, flag])).toEqual([
        ['gps1', 'gps1:ann1:integrity-annunciation', 'ann1', flag.id],
      ]);
      expect(members([gps, light], [data])).toEqual([['gps1', 'gps1:ann1:integrity-annunciation', 'ann1', data.id]]);
    });

    it.each([
      ['is deactivated', off(light), flag],
      ['is portable', unit('ann1', 'integrity-annunciation', 'portable-display'), flag],
      ['annunciates something else', unit('ann1', 'approach-annunciation'), flag],
      ['hears something else', light, linkOf('gps1', 'approach-status', 'ann1', 'approach-status')],
      ['tells it, and is not told', light, linkOf('ann1', 'integrity-flag', 'gps1', 'integrity-flag')],
      ['is a navigator that hears its data', unit('ann1', 'gnss', 'integrity-annunciation'), data],
    ])('pass no annunciator that %s', (_, each, link) => {
      expect(members([gps, each], [link])[0]).toEqual(['gps1']);
    });

    it('pass a navigator that hears the data and shows the deviation', () => {
      const display = unit('ann1', 'gnss', 'lateral-deviation', 'integrity-annunciation');
      expect(members([gps, display], [lateral('gps1', 'ann1'), data])[0]).toContain(
        'gps1>ann1:ann1:integrity-annunciation',
      );
    });

    it('leave what VHF receivers in the same box give alone', () => {
      const box = unit('gps1', 'gnss', 'vor-receiver', 'integrity-annunciation');
      const vor = facts([box]).means.filter(({ capability }) => capability === 'nav-vor');
      expect(vor.map((each) => each.members)).toEqual([['gps1']]);
    });
  });

  describe('on a shared indicator', () => {
    const gps = unit('gps1', 'gnss');
    const light = unit('ann1', 'source-annunciation');
    const told = linkOf('sel1', 'source-status', 'ann1', 'source-status');
    const paths = [lateral('gps1', 'sel1'), lateral('nav1', 'sel1'), lateral('sel1', 'cdi1')];
    const members = (id: string, ...given: Parameters<typeof facts>) =>
      facts(...given)
        .means.filter((each) => each.id === id && ['nav-vor', 'nav-gnss'].includes(each.capability))
        .map((each) => each.members.filter((one) => one.endsWith('annunciation') || ['ann1', told.id].includes(one)));

    it('pass whoever shows which source it follows, for each source', () => {
      for (const id of ['gps1', 'nav1'])
        expect(members(`${id}>cdi1`, [gps, nav, selector, cdi, light], [...paths, told])).toEqual([
          [`${id}>cdi1:ann1:source-annunciation`, 'ann1', told.id],
        ]);
    });

    it('with several who do, one for each, and for each who annunciates integrity', () => {
      const said = unit('sel1', 'source-selector', 'source-annunciation');
      const own = unit('gps1', 'gnss', 'integrity-annunciation');
      const flag = linkOf('gps1', 'integrity-flag', 'ann1', 'integrity-flag');
      const both = unit('ann1', 'source-annunciation', 'integrity-annunciation');
      expect(members('gps1>cdi1', [own, nav, said, cdi, both], [...paths, told, flag])).toEqual([
        ['gps1>cdi1:ann1:integrity-annunciation', 'ann1', 'gps1>cdi1:ann1:source-annunciation', told.id],
        ['gps1>cdi1:ann1:integrity-annunciation', 'ann1', 'gps1>cdi1:sel1:source-annunciation'],
        ['gps1>cdi1:gps1:integrity-annunciation', 'gps1>cdi1:ann1:source-annunciation', 'ann1', told.id],
        ['gps1>cdi1:gps1:integrity-annunciation', 'gps1>cdi1:sel1:source-annunciation'],
      ]);
    });

    it('and none where it has one source alone', () => {
      expect(members('nav1>cdi1', [nav, selector, cdi, light], [...paths, told])).toEqual([[]]);
    });
  });

  it('are offered by no portable unit, and fed by none', () => {
    const hand = (id: string, ...functions: FunctionCode[]) => unit(id, ...functions, 'portable-display');
    expect(ids([hand('x', 'com', 'gnss', 'vor-receiver', 'transponder', 'ads-b-out-uat')])).toEqual([]);
    const feed = linkOf('enc1', 'altitude-serial', 'atc1', 'altitude-serial');
    expect(meansOf([unit('atc1', 'transponder'), hand('enc1', 'altitude-reporting')], [feed])).toEqual([
      ['atc1', 'altitude-reporting', ['atc1']],
    ]);
  });

  it.each(['altitude-gray', 'altitude-serial'] as const)(
    'of reporting altitude is the transponder with what feeds it by %s',
    (signal) => {
      const feed = linkOf('enc1', signal, 'atc1', signal);
      const encoder = unit('enc1', 'altitude-reporting');
      const transponder = unit('atc1', 'transponder');
      expect(meansOf([transponder, encoder], [feed], [antenna('a1', 'atc1')])).toEqual([
        ['enc1>atc1', 'altitude-reporting', ['atc1', 'enc1>atc1', 'enc1', feed.id, 'a1']],
      ]);
      expect(meansOf([transponder, off(encoder)], [feed])).toEqual([['atc1', 'altitude-reporting', ['atc1']]]);
    },
  );

  it('of reporting altitude is the transponder alone where nothing feeds it or it has its own source', () => {
    const feed = linkOf('enc1', 'altitude-gray', 'atc1', 'altitude-gray');
    expect(meansOf([unit('atc1', 'transponder')])).toEqual([['atc1', 'altitude-reporting', ['atc1']]]);
    expect(
      facts([unit('atc1', 'transponder', 'altitude-reporting'), unit('enc1', 'other')], [feed]).means.map(
        ({ id }) => id,
      ),
    ).toEqual(['atc1', 'enc1>atc1']);
    expect(
      facts([unit('atc1', 'transponder'), unit('x', 'other')], [lateral('x', 'atc1')]).means.map(({ id }) => id),
    ).toEqual(['atc1']);
  });

  it.each(['ads-b-out-1090', 'ads-b-out-uat'] as const)(
    'of ADS-B is a unit with %s and its source of position',
    (code) => {
      const feed = linkOf('pos1', 'position', 'out1', 'position');
      expect(meansOf([unit('out1', code), unit('pos1', 'other')], [feed])).toEqual([
        ['pos1>out1', 'ads-b-out', ['out1', 'pos1>out1', 'pos1', feed.id]],
      ]);
      expect(meansOf([unit('out1', code)])).toEqual([['out1', 'ads-b-out', ['out1']]]);
    },
  );

  it('of ADS-B is also a unit with a receiver of its own, and never what feeds another unit', () => {
    const own = unit('out1', 'ads-b-out-uat', 'gnss');
    const feeds = [linkOf('pos1', 'position', 'out1', 'position'), linkOf('pos2', 'position', 'map1', 'position')];
    const means = facts([own, unit('pos1', 'other'), unit('pos2', 'other'), unit('map1', 'other')], feeds).means;
    expect(means.filter(({ capability }) => capability === 'ads-b-out').map(({ id }) => id)).toEqual([
      'out1',
      'pos1>out1',
    ]);
    expect(meansOf([unit('out1', 'ads-b-out-uat')], [linkOf('gone', 'position', 'out1', 'position')])).toEqual([
      ['out1', 'ads-b-out', ['out1']],
    ]);
  });

  it('a unit, link, antenna or chain bears on what passes it', () => {
    const links = [lateral('nav1', 'cdi1')];
    const known = facts([unit('nav1', 'vor-receiver'), cdi], links, [antenna('a1', 'nav1')]);
    for (const id of ['nav1', 'cdi1', 'a1', 'nav1>cdi1', links[0]?.id ?? ''])
      expect(known.capabilitiesThrough(id)).toEqual(['nav-vor', 'approach-vor']);
    expect(known.capabilitiesThrough('other')).toEqual([]);
  });
});

describe('what is known of a unit', () => {
  const port = (name: string, signal: Port['signal']): Port => ({
    name,
    signal,
    direction: 'out',
    standard: 'analog',
    speed: null,
    requiredFor: [],
  });
  const type = typeOf({ id: 't', functions: ['com'], ports: [port('OUT', 'heading')] });
  const typed = (typeId: string | null) =>
    factsOf(
      dossierOf({ configuration: { units: [unitOf({ id: 'u', typeId, functions: ['dme'] })] } }),
      catalogueOf(type),
    ).units.get('u');

  it('stands in its type, without one in its own entry', () => {
    expect(typed('t')).toMatchObject({ id: 'u', type, active: true });
    expect([...(typed('t')?.functions ?? [])]).toEqual(['com']);
    expect([...(typed(null)?.functions ?? [])]).toEqual(['dme']);
    expect(typed('gone')).toMatchObject({ type: null });
    expect([...(typed('gone')?.functions ?? [])]).toEqual(['dme']);
  });

  it('the signal of a joint is that of either port, by the type or by the port’s own name', () => {
    const known = factsOf(
      dossierOf({ configuration: { units: [unitOf({ id: 'u', typeId: 't' }), unit('v')] } }),
      catalogueOf(type),
    );
    expect(known.signalOf(linkOf('u', 'OUT', 'v', 'PIN 3'))).toBe('heading');
    expect(known.signalOf(linkOf('v', 'PIN 3', 'u', 'OUT'))).toBe('heading');
    expect(known.signalOf(linkOf('v', 'position', 'u', 'NONE'))).toBe('position');
    expect(known.signalOf(linkOf('v', 'PIN 3', 'u', 'NONE'))).toBeNull();
    expect(known.signalOf(linkOf('u', 'position', 'gone', 'x'))).toBeNull();
  });
});

describe('what is recorded', () => {
  const stated = { asOf: '2026-01-01', by: 'J. Orrell' };
  const known = () =>
    factsOf(
      dossierOf({
        status: {
          records: [
            recordOf({ kind: 'vor-check', on: '2026-01-05', subjects: ['nav1'] }),
            recordOf({ kind: 'vor-check', on: '2026-02-05', subjects: ['nav1', 'nav2'] }),
            recordOf({ kind: 'compass-swing', on: '2026-02-06', subjects: ['nav1'] }),
          ],
          completeness: [{ list: 'links', stated }],
        },
      }),
      catalogueOf(),
    );

  it('of a kind about a subject comes newest first', () => {
    expect(
      known()
        .records('vor-check', 'nav1')
        .map(({ done }) => done.date),
    ).toEqual(['2026-02-05', '2026-01-05']);
    expect(
      known()
        .records('vor-check', 'nav2')
        .map(({ done }) => done.date),
    ).toEqual(['2026-02-05']);
    expect(known().records('compass-swing', 'nav2')).toEqual([]);
  });

  it('a list is complete where somebody said so', () => {
    expect(known().complete('links')).toEqual(stated);
    expect(known().complete('equipment')).toBeNull();
    expect(known().zone).toBe('America/Chicago');
  });
});

describe('what feeds an indicator', () => {
  const fed = (...given: Parameters<typeof facts>) => {
    const known = facts(...given);
    const indicator = known.units.get('cdi1');
    if (!indicator) throw new Error('There is no cdi1.');
    return [...feeding(known, indicator)];
  };
  const gps = unit('gps1', 'gnss');

  it('is every unit that sends deviation to it, straight or through selectors', () => {
    expect(fed([nav, gps, cdi], [lateral('nav1', 'cdi1'), vertical('gps1', 'cdi1')])).toEqual(['nav1', 'gps1']);
    const through = [lateral('nav1', 'sel1'), lateral('gps1', 'sel1'), lateral('sel1', 'cdi1')];
    expect(fed([nav, gps, selector, cdi], through)).toEqual(['nav1', 'gps1']);
    expect(fed([unit('x'), cdi], [lateral('x', 'cdi1')])).toEqual(['x']);
  });

  it('is no deactivated unit, and none that sends something else or elsewhere', () => {
    const other = [lateral('nav1', 'cdi1'), linkOf('gps1', 'position', 'cdi1', 'position'), lateral('gps1', 'cdi2')];
    expect(fed([off(nav), gps, cdi, bar], other)).toEqual([]);
    expect(fed([cdi], [lateral('gone', 'cdi1')])).toEqual([]);
  });

  it('is itself where it shows its own guidance', () => {
    expect(fed([unit('cdi1', 'gnss', 'lateral-deviation')])).toEqual(['cdi1']);
  });

  it('is not itself where it shows no guidance but that of others', () => {
    const other = unit('gps2', 'gnss', 'lateral-deviation');
    expect(fed([nav, other, cdi], [lateral('nav1', 'cdi1')])).toEqual(['nav1']);
    expect(fed([unit('cdi1', 'gnss', 'vertical-deviation'), bar], [lateral('cdi1', 'cdi2')])).toEqual([]);
  });

  it('ends in a ring of selectors', () => {
    const ring = [lateral('sel1', 'cdi1'), lateral('sel2', 'sel1'), lateral('sel1', 'sel2'), lateral('nav1', 'sel2')];
    expect(fed([nav, selector, unit('sel2', 'source-selector'), cdi], ring)).toEqual(['nav1']);
  });

  it('are straight senders only, where those are asked for', () => {
    const known = facts([nav, selector, cdi], [lateral('nav1', 'sel1'), vertical('sel1', 'cdi1')]);
    expect(sendersTo(known, 'cdi1').map(({ id }) => id)).toEqual(['sel1']);
    expect(sendersTo(known, 'nav1')).toEqual([]);
  });
});
