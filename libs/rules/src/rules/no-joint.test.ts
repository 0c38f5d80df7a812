import { describe, expect, it } from 'vitest';
import { linkOf, unitOf } from '../../testing/builders.js';
import { catalogueOf } from '../../testing/changes.js';
import { dossierOf, jointsComplete } from '../../testing/dossiers.js';
import type { FunctionCode } from '../catalogue/type.js';
import type { InstalledUnit, Link } from '../dossier/installation.js';
import { factsOf } from '../graph/facts.js';
import { allOf, unknown } from '../verdict/build.js';
import { practice } from './cite.js';
import { joining, noIndicator, noJoint, unclearJoints } from './no-joint.js';

const source = practice('joints');
const unit = (id: string, ...functions: FunctionCode[]) => unitOf({ id, functions });
const nav = unit('nav', 'vor-receiver');
const cdi = unit('cdi', 'lateral-deviation');
const selector = unit('sel', 'source-selector');
const deviation = (from: string, to: string) => linkOf(from, 'lateral-deviation', to, 'lateral-deviation');
const unnamed = (from: string, to: string) => linkOf(from, 'PIN 3', to, 'PIN 9');
const some = (units: readonly InstalledUnit[] = [], links: readonly Link[] = []) =>
  factsOf(dossierOf({ configuration: { units, links } }), catalogueOf());
const all = (units: readonly InstalledUnit[] = [], links: readonly Link[] = []) =>
  factsOf(dossierOf({ configuration: { units, links } }, jointsComplete), catalogueOf());

it('a joint is none where the list of joints was stated complete and none of them is unclear', () => {
  expect(noJoint(all(), 'joined', source)).toMatchObject({ inside: 'not-met', label: 'joined', source });
  expect(noJoint(some(), 'joined', source)).toMatchObject({
    inside: 'cannot-tell',
    missing: ['status.completeness.links'],
  });
  expect(noJoint(all(), 'joined', source, ['configuration.links'])).toMatchObject({
    inside: 'cannot-tell',
    missing: ['configuration.links'],
  });
});

describe('what is not recorded of joints', () => {
  const of = (end: InstalledUnit | null, link: Link) =>
    unclearJoints(all([nav, ...(end ? [end] : [])], [link]), ['nav'], ['lateral-deviation'], ['lateral-deviation']);

  it.each<[string, InstalledUnit | null, Link, readonly string[]]>([
    ['the signal of one to a unit that would do', cdi, unnamed('nav', 'cdi'), ['configuration.links']],
    [
      'the signal of one to a unit of which nothing is known',
      unit('cdi'),
      unnamed('nav', 'cdi'),
      ['configuration.links'],
    ],
    ['the functions of the unit at its end', unit('cdi'), deviation('nav', 'cdi'), ['configuration.units.cdi.typeId']],
    ['nothing of one to another kind of unit', unit('cdi', 'com'), unnamed('nav', 'cdi'), []],
    ['nothing of one that carries something else', unit('cdi'), linkOf('nav', 'position', 'cdi', 'position'), []],
    ['nothing of one that is what is asked', cdi, deviation('nav', 'cdi'), []],
    ['nothing of one from elsewhere', cdi, unnamed('cdi', 'cdi'), []],
    ['nothing of one to a unit that is gone', null, unnamed('nav', 'cdi'), []],
    [
      'nothing of one to a portable unit',
      unit('cdi', 'lateral-deviation', 'portable-display'),
      unnamed('nav', 'cdi'),
      [],
    ],
  ])('%s', (_, end, link, expected) => {
    expect(of(end, link)).toEqual(expected);
  });

  it('is named once', () => {
    const links = [unnamed('nav', 'cdi'), linkOf('nav', 'PIN 4', 'cdi', 'PIN 8')];
    expect(unclearJoints(all([nav, cdi], links), ['nav'], [], ['lateral-deviation'])).toEqual(['configuration.links']);
  });
});

describe('the joint to an indicator', () => {
  const outcome = (units: readonly InstalledUnit[], links: readonly Link[]) => {
    const facts = all([nav, ...units], links);
    const [chain] = facts.chains;
    return chain && noIndicator(facts, chain, 'lateral-deviation', source).inside;
  };

  it.each<[string, readonly InstalledUnit[], readonly Link[], string]>([
    ['is none', [cdi], [], 'not-met'],
    ['may be one whose signal nobody recorded', [cdi], [unnamed('nav', 'cdi')], 'cannot-tell'],
    ['may lead to a selector', [cdi, selector], [unnamed('nav', 'sel')], 'cannot-tell'],
    [
      'may lead on from a selector that the source is joined to',
      [cdi, selector],
      [deviation('nav', 'sel'), unnamed('sel', 'cdi')],
      'cannot-tell',
    ],
    [
      'leads on from no selector that it is not joined to',
      [cdi, selector, unit('x', 'com')],
      [linkOf('x', 'lateral-deviation', 'sel', 'lateral-deviation'), unnamed('sel', 'cdi')],
      'not-met',
    ],
    [
      'leads on from no other unit',
      [cdi, unit('x', 'com')],
      [linkOf('nav', 'audio', 'x', 'audio'), linkOf('nav', 'audio', 'gone', 'audio'), unnamed('x', 'cdi')],
      'not-met',
    ],
  ])('%s', (_, units, links, expected) => {
    expect(outcome(units, links)).toBe(expected);
  });
});

it('ways to mend it are to make it, and to find out what each thing misses by the change that records it', () => {
  const opening = {
    id: 'hole',
    place: 'pilot-panel' as const,
    widthIn: null,
    heightIn: null,
    depthIn: null,
    rightOfEyeIn: null,
    belowEyeIn: null,
    eyeDistanceIn: null,
  };
  const facts = factsOf(
    dossierOf({ configuration: { units: [nav, unit('nav1')], openings: [opening] } }),
    catalogueOf(),
  );
  const connect = { kind: 'do', change: 'link.connect', subject: 'nav', facts: [] };
  expect(joining(facts, unknown('a', []), 'nav')).toEqual([connect]);
  const missing = [
    'status.completeness.links',
    'configuration.links',
    'configuration.units.nav1.place',
    'configuration.openings.hole.rightOfEyeIn',
    'catalogue.nav.view',
  ];
  const clause = allOf(
    'all',
    missing.map((path) => unknown('a', [path])),
    'cannot-tell',
  );
  const ask = (change: string, subject: string, path: string) => ({ kind: 'find-out', change, subject, facts: [path] });
  expect(joining(facts, clause, 'nav')).toEqual([
    connect,
    ask('completeness.state', 'links', 'status.completeness.links'),
    ask('link.connect', 'nav', 'configuration.links'),
    ask('unit.amend', 'nav1', 'configuration.units.nav1.place'),
    ask('opening.set', 'hole', 'configuration.openings.hole.rightOfEyeIn'),
  ]);
});
