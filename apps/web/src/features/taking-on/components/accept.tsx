import { localTimeAt } from '@tallywing/rules';
import { useMemo, useState } from 'react';
import { Checks } from '../../../ui/checks.js';
import { Field } from '../../../ui/field.js';
import { acceptanceOf, lackingIn, supposed, type Acceptance } from '../found.js';
import type { Found } from './record-here.js';
import { RecordHere } from './record-here.js';
import { WitnessFields } from './witness-fields.js';

const blank: Acceptance = { ticked: [], name: '', certificate: '', date: '', source: '' };

/** A named person looked at an installation that is there without papers, and accepts it as found. */
export function Accept({ acceptable, found }: { acceptable: readonly string[]; found: Found }) {
  const [form, setForm] = useState(blank);
  const { dossier, names, aircraft, now } = found;
  const today = localTimeAt(now, aircraft.base.zone).slice(0, 10);
  // What somebody else accepted meanwhile is no longer to be ticked.
  const own = useMemo(
    () => ({ ...form, ticked: form.ticked.filter((id) => acceptable.includes(id)) }),
    [form, acceptable],
  );
  const change = useMemo(
    () => (own.ticked.length === 0 ? null : acceptanceOf(supposed(own, today), dossier)),
    [own, today, dossier],
  );
  if (acceptable.length === 0) return null;
  return (
    <section className="tw-sheet tw-stack tw-taking-on-wide" aria-labelledby="accept">
      <h2 id="accept">Accept as found</h2>
      <p>
        No approved data are recorded for these. Look for the papers first; where there are none to be found, a person
        who holds a certificate may look at the installation and accept it as found. It is recorded under that name,
        with the certificate number, the day and what was looked at.
      </p>
      <Checks
        legend="What is accepted"
        options={acceptable.map((id) => ({ id, name: names[id] ?? id }))}
        ticked={own.ticked}
        onTick={(next) => setForm({ ...form, ticked: next ?? [] })}
      />
      <WitnessFields witness={form} onChange={(witness) => setForm({ ...form, ...witness })} today={today} />
      <Field label="What was looked at" hint="The unit in its place, its wiring, an old form, an entry: book and page.">
        <input value={form.source} onChange={(event) => setForm({ ...form, source: event.target.value })} />
      </Field>
      <RecordHere found={found} change={change} lacking={lackingIn(own)} onDone={() => setForm(blank)} />
    </section>
  );
}
