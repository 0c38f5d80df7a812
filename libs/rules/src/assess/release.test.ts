import { describe, expect, it } from 'vitest';
import { mechanic, pilot, radioStation, recordOf } from '../../testing/builders.js';
import { goodDay, trainer, trainerCatalogue } from '../../testing/trainer.js';
import type { Change } from '../changes/changes.js';
import { apply } from '../changes/changes.js';
import type { Dossier } from '../dossier/dossier.js';
import type { RecordHead } from '../dossier/status.js';
import { openAtRelease } from './release.js';

const today = { date: '2026-03-16', at: null };
const gps1 = trainer().configuration.units.find(({ id }) => id === 'gps1')!;
const work = { version: 1 as const, performed: today, touched: ['gnss' as const], mass: null };
const taken: Change = { ...work, kind: 'unit.remove', unitId: 'gps1', reason: 'sent to the shop' };
const putBack: Change = { ...work, kind: 'unit.install', unit: { ...gps1, fitted: today } };
/** The navigator was out and is in again. */
const worked = [taken, putBack].reduce(apply, trainer());
const release = recordOf({
  id: 'rel',
  kind: 'release-entry',
  on: '2026-03-16',
  subjects: ['gps1'],
  outcome: 'approved',
  agency: mechanic,
  note: 'Fitted again',
});
const withEntries = (...records: readonly RecordHead[]) =>
  records.reduce((dossier, record) => apply(dossier, { kind: 'record.add', version: 1, record }), worked);
const yesterday = { done: { date: '2026-03-15', at: null } };
const later = { ...release, id: 'rel2' };

const openOf = (dossier: Dossier, entryId?: string) =>
  openAtRelease(dossier, trainerCatalogue, goodDay, entryId).map(
    ({ key, stops }) => `${stops ? 'stops' : 'seen'} ${key}`,
  );
const aboutEntry = (records: readonly RecordHead[], entryId?: string) =>
  openAtRelease(withEntries(...records), trainerCatalogue, goodDay, entryId).filter(({ subject }) => subject === 'rel');

describe('what is open at a release', () => {
  it('is what bears on a release, to be seen, where no work was done', () => {
    const open = openOf(trainer());
    expect(open).toContain('seen depth-behind-panel|gps1');
    expect(open.filter((each) => each.startsWith('stops'))).toEqual([]);
    // Data that lapsed stop flights, no release.
    const later = openAtRelease(trainer(), trainerCatalogue, '2026-04-20T12:00Z');
    expect(later.map(({ ruleId }) => ruleId)).not.toContain('navigation-data-current');
  });

  it('is what the work called for: what grounds the aircraft stops it, what costs one use only is to be seen', () => {
    const open = openOf(worked);
    expect(open).toContain('stops tests-after-change|release-entry:gps1');
    expect(open).toContain('stops document-pack|gps1');
    expect(open).toContain('seen tests-after-change|gnss-function-check:gps1');
    expect(open).toContain('seen equipment-list-current|aircraft');
  });

  it('says of each what it is', () => {
    const found = openAtRelease(worked, trainerCatalogue, goodDay);
    expect(found.find(({ key }) => key === 'tests-after-change|release-entry:gps1')).toEqual({
      key: 'tests-after-change|release-entry:gps1',
      ruleId: 'tests-after-change',
      subject: 'release-entry:gps1',
      outcome: 'not-met',
      messageId: 'owed',
      data: { what: 'release-entry', subject: 'gps1', since: '2026-03-16' },
      stops: true,
    });
    expect(found.every(({ outcome }) => outcome === 'not-met' || outcome === 'cannot-tell')).toBe(true);
  });
});

describe('the entry of release', () => {
  it('is in order with text and a signer who may', () => {
    expect(aboutEntry([release], 'rel')).toEqual([]);
  });

  it('without its text or signer stops it', () => {
    const bare = { ...release, agency: null, note: null };
    expect(aboutEntry([bare], 'rel').map(({ key, stops }) => [key, stops])).toEqual([
      ['authorised-person|rel', true],
      ['release-entry|rel', true],
    ]);
  });

  it('that nobody asks about and that answers nothing is no matter of this release', () => {
    const old = recordOf({ ...release, id: 'rel', on: '2025-01-10', subjects: ['nav1'], note: null });
    expect(aboutEntry([old])).toEqual([]);
    expect(aboutEntry([old], 'rel').map(({ key, stops }) => [key, stops])).toEqual([['release-entry|rel', true]]);
  });

  it.each<readonly [string, RecordHead['agency'], object | null]>([
    ['a mechanic who may', mechanic, null],
    [
      'a station that is not rated for it',
      { ...radioStation, ratings: [] },
      { outcome: 'not-met', messageId: 'not-allowed', data: { name: 'Wendle Avionics' } },
    ],
    [
      'a pilot, of whom it cannot be told',
      pilot,
      { outcome: 'cannot-tell', messageId: 'unclear', data: { name: 'A. Lorne' } },
    ],
    ['nobody named', null, { outcome: 'cannot-tell', messageId: 'unclear', data: { name: 'the signer' } }],
  ])('signed by %s is asked about also where a later entry is the newest', (_, agency, expected) => {
    const found = aboutEntry([{ ...release, ...yesterday, agency }, later], 'rel').filter(
      ({ ruleId }) => ruleId === 'authorised-person',
    );
    const common = {
      key: 'authorised-person|rel',
      subject: 'rel',
      data: { what: 'release-entry', done: '2026-03-15' },
      stops: true,
    };
    if (expected === null) expect(found).toEqual([]);
    else {
      expect(found).toHaveLength(1);
      expect(found[0]).toMatchObject(common);
      expect(found[0]).toMatchObject(expected);
    }
  });

  it('that is not in the record cannot be told', () => {
    const [found] = openAtRelease(worked, trainerCatalogue, goodDay, 'none').filter(
      ({ subject }) => subject === 'none',
    );
    expect(found).toMatchObject({ outcome: 'cannot-tell', data: { done: null, name: 'the signer' }, stops: true });
  });

  it('is spoken of once', () => {
    const keys = openAtRelease(withEntries({ ...release, agency: pilot }), trainerCatalogue, goodDay, 'rel').map(
      ({ key }) => key,
    );
    expect(new Set(keys).size).toBe(keys.length);
  });
});
