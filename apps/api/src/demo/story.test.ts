import { admit, apply, assess, blankDossier, replay, strictest, touchedBy } from '@tallywing/rules';
import type { Catalogue, Change, Dossier } from '@tallywing/rules';
import { describe, expect, it } from 'vitest';
import { demoTypes } from './catalogue/all.js';
import { Days } from './days.js';
import { secondFleet, shopFleet, storyRegistration } from './fleet.js';
import { History } from './history.js';
import { live } from './life.js';
import { station } from './people.js';
import { startingProfiles } from '../house/starting-profiles.js';
import { compassRun } from './readings.js';

const catalogue: Catalogue = {
  version: 'demo',
  types: Object.fromEntries(Object.values(demoTypes).map((type) => [type.id, type])),
};

function fleetOn(today: string) {
  return [...shopFleet, ...secondFleet].map((spec) => live(spec, new Days(today)));
}

function readyFor(dossier: Dossier, profileId: string, instant: string) {
  const profile = startingProfiles.find(({ id }) => id === profileId);
  if (!profile) throw new Error(`There is no profile ${profileId}.`);
  const { operations } = assess(dossier, catalogue, { instant, to: instant, hoursAhead: 0 }, profile.conditions);
  return operations['flight'];
}

function takenOn(dossier: Dossier, changes: readonly Change[], now: string): Dossier {
  return changes.reduce((before, change) => {
    expect({ change, refused: admit(before, catalogue, change, now) }).toEqual({ change, refused: [] });
    return apply(before, change);
  }, dossier);
}

// A day before a change of cycle, the last day of a leap February, a day just after a new year.
describe.each(['2026-11-25', '2028-02-29', '2027-01-02'])('the demo seeded on %s', (today) => {
  const fleet = fleetOn(today);

  it.each(fleet.map((each) => [each.spec.registration, each] as const))('%s: every change is admitted', (_, each) => {
    let dossier = blankDossier(each.aircraftId);
    for (const { on, change } of each.entries) dossier = takenOn(dossier, [change], `${on}T22:30Z`);
    expect(each.entries.length).toBeGreaterThan(40);
    expect(dossier.revision).toBe(each.entries.length);
  });

  it('is alive: on every profile some may go, some not; somewhere nobody can tell', () => {
    const ready = startingProfiles.flatMap((profile) => {
      const answers = fleet.map(({ entries, aircraftId }) => {
        const dossier = replay(
          entries.map(({ change }) => change),
          aircraftId,
        );
        return readyFor(dossier, profile.id, `${today}T14:00Z`)?.ready;
      });
      const yes = answers.filter((each) => each === 'yes').length;
      expect({ profile: profile.id, yes: yes >= fleet.length / 4, no: answers.includes('no') }).toEqual({
        profile: profile.id,
        yes: true,
        no: true,
      });
      return answers;
    });
    expect(ready).toContain('cannot-tell');
  });
});

describe('what the manuals of the demo limit is said of the aircraft that have it', () => {
  const today = '2026-11-25';
  const moment = { instant: `${today}T20:00Z`, to: `${today}T20:00Z`, hoursAhead: 0 };
  const fleet = fleetOn(today);
  const saidOf = (registration: string, ruleId: string, subject: string) => {
    const lived = fleet.find(({ spec }) => spec.registration === registration);
    const changes = lived?.entries.map(({ change }) => change) ?? [];
    const { results } = assess(replay(changes, registration), catalogue, moment, strictest);
    return results.find((each) => each.ruleId === ruleId && each.subject === subject)?.outcome;
  };

  it.each([
    ['two ways of finding traffic exclude each other', 'TW-33P', 'options-not-exclusive', 'tfc1', 'not-met'],
    ['traffic is shown where the manual asks', 'TW-33P', 'required-companions', 'tfc1:active-traffic', 'met'],
    ['an autopilot with both its gyros', 'TW-33P', 'required-companions', 'ap1:autopilot', 'met'],
    ['an autopilot without the attitude gyro', 'TW-25K', 'required-companions', 'ap1:autopilot', 'not-met'],
    ['distance is tuned by the nav/com', 'TW-25K', 'required-companions', 'dme1:dme', 'met'],
    ['an attitude display that replaces nothing', 'TW-35P', 'instrument-equipment', 'aircraft', 'not-met'],
  ])('%s', (_, registration, ruleId, subject, outcome) => {
    expect(saidOf(registration, ruleId, subject)).toBe(outcome);
  });
});

describe('the story: a VFR-limited navigator makes way for one with vertical guidance', () => {
  const today = '2026-11-25';
  const now = `${today}T20:00Z`;
  const profile = 'ifr-lesson-lpv-ils';
  const days = new Days(today);
  const trainer = fleetOn(today).find(({ spec }) => spec.registration === storyRegistration);
  if (!trainer) throw new Error(`${storyRegistration} is not in the fleet.`);
  const before = replay(
    trainer.entries.map(({ change }) => change),
    trainer.aircraftId,
  );
  const work = job();

  it('may not fly the lesson before', () => {
    expect(readyFor(before, profile, now)?.ready).toBe('no');
    expect(readyFor(before, 'ifr-lesson-vor-loc', now)?.ready).toBe('yes');
  });

  it('may fly it by the new navigator once everything is recorded', () => {
    const after = takenOn(before, work, now);
    const verdict = readyFor(after, profile, now);
    expect(verdict?.ready).toBe('yes');
    expect(verdict?.by).toContain('gps2>cdi1');
  });

  it.each([
    ['the vertical joint', (change: Change) => change.kind === 'link.connect' && change.link.fromPort === 'VERT OUT'],
    ['the antenna', (change: Change) => change.kind === 'antenna.fit'],
    ['the supplement', (change: Change) => change.kind === 'supplement.set'],
    ['the database', (change: Change) => change.kind === 'database.load'],
    [
      'the function check',
      (change: Change) => change.kind === 'record.add' && change.record.kind === 'gnss-function-check',
    ],
    ['the release', (change: Change) => change.kind === 'record.add' && change.record.kind === 'release-entry'],
    ['a look at the directives of the new unit', (change: Change) => change.kind === 'completeness.state'],
    ['the controls check', (change: Change) => change.kind === 'record.add' && change.record.kind === 'controls-check'],
  ])('may not fly it without %s', (_, left) => {
    const after = takenOn(
      before,
      work.filter((change) => !left(change)),
      now,
    );
    expect(readyFor(after, profile, now)?.ready).not.toBe('yes');
  });

  /** What a technician records for the whole job, done in one day. */
  function job(): readonly Change[] {
    const job = new History(days, today);
    const type = demoTypes.navigatorLpv;
    const started = { date: today, at: `${today}T13:00Z` };
    const touched = [...touchedBy(type.functions), 'behind-panel', 'electrical'] as const;
    job
      .add({
        kind: 'unit.remove',
        unitId: 'gps1',
        performed: started,
        reason: 'Makes way for a navigator with vertical guidance',
        touched: [...touched],
        mass: null,
      })
      .add({ kind: 'placard.remove', placardId: 'vfr-gps1', reason: 'Its unit is gone' })
      .install(
        { id: 'gps2', type: 'navigatorLpv', place: 'centre-stack', opening: 'stack', basis: 'stc-model-list' },
        today,
      )
      .join(['gps2', 'LAT OUT', 'cdi1', 'LAT IN'], today)
      .join(['gps2', 'VERT OUT', 'cdi1', 'VERT IN'], today)
      .antenna(['ant-gnss', 'gnss-sbas', ['gps2', 'pos1']], today)
      .supplement('gps2', today)
      .load('gps2', days.cycle(0), 'this', today);
    const done = { done: { date: today, at: `${today}T18:00Z` } };
    job
      .test('gnss-function-check', ['gps2', 'aircraft'], today, {}, done)
      .test('vhf-interference-check', ['gps2', 'aircraft'], today, {}, done)
      .test('compass-swing', ['aircraft'], today, compassRun(), done)
      .record('controls-check', ['aircraft'], today, { ...done, agency: station, secondPerson: 'Idris Corley' })
      .record('release-entry', ['gps2', 'aircraft'], today, { ...done, agency: station, outcome: 'approved' })
      .add({
        kind: 'completeness.state',
        lists: [{ list: 'directives', stated: { asOf: today, by: 'Idris Corley' } }],
      });
    return job.inOrder().map(({ change }) => change);
  }
});
