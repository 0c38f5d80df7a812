import { describe, expect, it } from 'vitest';
import { linkOf, unitOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf } from '../../testing/dossiers.js';
import type { FunctionCode } from '../catalogue/type.js';
import type { InstalledUnit, Link } from '../dossier/installation.js';
import { annunciatorsOf, inUse, sourceLabelsOf } from './annunciation.js';
import { factsOf } from './facts.js';

const unit = (id: string, ...functions: FunctionCode[]) => unitOf({ id, functions });
const off = (each: InstalledUnit): InstalledUnit => ({
  ...each,
  deactivated: { since: { date: '2026-01-01', at: null }, placarded: true, recorded: true },
});
const joint = (from: string, signal: string, to: string) => linkOf(from, signal, to, signal);
const graph = (units: readonly InstalledUnit[], links: readonly Link[]) =>
  factsOf(dossierOf({ configuration: { units, links } }), catalogueOf());
const told = (found: ReturnType<typeof annunciatorsOf>) =>
  found.map((each) => [each.unit.id, each.link?.fromPort ?? null]);

describe('who annunciates what a navigator says of itself', () => {
  const gps = unit('gps', 'gnss', 'integrity-annunciation');
  const light = unit('ann', 'integrity-annunciation');
  const of = (units: readonly InstalledUnit[], ...links: readonly Link[]) => {
    const facts = graph([gps, ...units], links);
    const own = facts.units.get('gps');
    return own ? annunciatorsOf(facts, own, 'integrity-annunciation') : [];
  };

  it('is its own screen, and before it each unit that it tells', () => {
    expect(told(of([]))).toEqual([['gps', null]]);
    expect(told(of([light], joint('gps', 'integrity-flag', 'ann')))).toEqual([
      ['ann', 'integrity-flag'],
      ['gps', null],
    ]);
  });

  it.each([
    ['that another tells', light, joint('other', 'integrity-flag', 'ann')],
    ['that is not there', light, joint('gps', 'integrity-flag', 'gone')],
    ['that hears of the approach', light, joint('gps', 'approach-status', 'ann')],
    ['that annunciates the approach', unit('ann', 'approach-annunciation'), joint('gps', 'integrity-flag', 'ann')],
    [
      'that is portable',
      unit('ann', 'integrity-annunciation', 'portable-display'),
      joint('gps', 'integrity-flag', 'ann'),
    ],
  ])('is no unit %s', (_, each, link) => {
    expect(told(of([each], link))).toEqual([['gps', null]]);
  });

  it('is another navigator that hears the data only where it shows the deviation of this one', () => {
    const second = unit('ann', 'gnss', 'lateral-deviation', 'integrity-annunciation');
    const data = joint('gps', 'data', 'ann');
    expect(told(of([second], data))).toEqual([['gps', null]]);
    // Its own display of its own deviation, and that of a receiver, are nothing of this one.
    const receiver = unit('nav', 'vor-receiver');
    expect(told(of([second, receiver], data, joint('nav', 'lateral-deviation', 'ann')))).toEqual([['gps', null]]);
    expect(told(of([second], data, joint('gps', 'lateral-deviation', 'ann')))).toEqual([
      ['ann', 'data'],
      ['gps', null],
    ]);
    expect(told(of([second], joint('gps', 'integrity-flag', 'ann')))).toEqual([
      ['ann', 'integrity-flag'],
      ['gps', null],
    ]);
  });

  it('names a deactivated one, which is not in use', () => {
    const found = of([off(light)], joint('gps', 'integrity-flag', 'ann'));
    expect(told(found).map(([id]) => id)).toEqual(['ann', 'gps']);
    expect(told(inUse(found)).map(([id]) => id)).toEqual(['gps']);
  });
});

describe('who shows which source an indicator follows', () => {
  const code = 'source-annunciation';
  const nav = unit('nav', 'vor-receiver');
  const gps = unit('gps', 'gnss');
  const cdi = unit('cdi', 'lateral-deviation');
  const light = unit('ann', code);
  const straight = [joint('nav', 'lateral-deviation', 'cdi'), joint('gps', 'lateral-deviation', 'cdi')];
  const of = (source: string, units: readonly InstalledUnit[], ...links: readonly Link[]) => {
    const facts = graph(units, links);
    const chain = facts.chains.find((each) => each.source.id === source);
    const found = chain ? sourceLabelsOf(facts, chain) : null;
    return found && told(found.labels);
  };

  it('is asked where two sources share it, or one box is two', () => {
    expect(of('nav', [nav, cdi], joint('nav', 'lateral-deviation', 'cdi'))).toBeNull();
    expect(of('nav', [nav])).toBeNull();
    expect(of('nav', [nav, gps, cdi], ...straight)).toEqual([]);
    const alone = (...functions: FunctionCode[]) =>
      of('nav', [unit('nav', ...functions), cdi], joint('nav', 'lateral-deviation', 'cdi'));
    expect(alone('gnss', 'vor-receiver')).toEqual([]);
    expect(alone('gnss', 'loc-receiver')).toEqual([]);
    expect(alone('gnss', 'dme')).toBeNull();
    expect(alone('vor-receiver', 'loc-receiver')).toBeNull();
  });

  it('is the indicator, and a light that the source tells; no other light', () => {
    expect(of('nav', [nav, gps, unit('cdi', 'lateral-deviation', code)], ...straight)).toEqual([['cdi', null]]);
    expect(of('nav', [nav, gps, cdi, light], ...straight, joint('nav', 'source-status', 'ann'))).toEqual([
      ['ann', 'source-status'],
    ]);
    expect(of('nav', [nav, gps, cdi, light], ...straight, joint('gps', 'source-status', 'ann'))).toEqual([]);
    expect(of('nav', [nav, gps, cdi, light], ...straight, joint('nav', 'integrity-flag', 'ann'))).toEqual([]);
    expect(of('nav', [nav, gps, cdi], ...straight, joint('nav', 'source-status', 'gone'))).toEqual([]);
  });

  it('is the source itself where it is two in one and has the indicator to itself', () => {
    const two = unit('nav', 'gnss', 'vor-receiver', code);
    expect(of('nav', [two, cdi], joint('nav', 'lateral-deviation', 'cdi'))).toEqual([['nav', null]]);
    expect(of('nav', [two, gps, cdi], ...straight)).toEqual([]);
  });

  it('is a selector on the way of either deviation', () => {
    const selector = unit('sel', 'source-selector', code);
    const both = unit('cdi', 'vertical-deviation');
    for (const signal of ['lateral-deviation', 'vertical-deviation'])
      expect(
        of(
          'nav',
          [nav, gps, selector, signal === 'lateral-deviation' ? cdi : both],
          joint('nav', signal, 'sel'),
          joint('gps', signal, 'sel'),
          joint('sel', signal, 'cdi'),
        ),
      ).toEqual([['sel', null]]);
  });
});
