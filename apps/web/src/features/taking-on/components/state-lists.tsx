import { changeSchema, codeWords, localTimeAt } from '@tallywing/rules';
import { useMemo, useState } from 'react';
import { specOf } from '../../../form/spec.js';
import { Checks } from '../../../ui/checks.js';
import { lackingIn, listsStated, supposed, type ListStatement } from '../found.js';
import type { Found } from './record-here.js';
import { RecordHere } from './record-here.js';
import { WitnessFields } from './witness-fields.js';

const blank: ListStatement = { ticked: [], name: '', certificate: '', date: '' };

/** Without such a statement an empty list means that nobody looked. */
export function StateLists({ found }: { found: Found }) {
  const [form, setForm] = useState(blank);
  const { dossier, aircraft, now } = found;
  const today = localTimeAt(now, aircraft.base.zone).slice(0, 10);
  const stated = dossier.status.completeness.map(({ list }): string => list);
  const open = allLists().filter((list) => !stated.includes(list));
  const change = useMemo(() => (form.ticked.length === 0 ? null : listsStated(supposed(form, today))), [form, today]);
  if (open.length === 0) return null;
  return (
    <section className="tw-sheet tw-stack" aria-labelledby="state-lists">
      <h2 id="state-lists">State that a list is complete</h2>
      <p>
        Until somebody says that a list is complete, what does not stand on it may still exist: then “none” cannot be
        told. Tick only what was looked through to the end.
      </p>
      <Checks
        legend="Complete as recorded here"
        options={open.map((id) => ({ id, name: codeWords(id) }))}
        ticked={form.ticked}
        onTick={(ticked) => setForm({ ...form, ticked: ticked ?? [] })}
      />
      <WitnessFields witness={form} onChange={(witness) => setForm({ ...form, ...witness })} today={today} />
      <RecordHere found={found} change={change} lacking={lackingIn(form)} onDone={() => setForm(blank)} />
    </section>
  );
}

/** Read off the schema of the change, so that a new list is offered by itself. */
function allLists(): readonly string[] {
  const schema = changeSchema('completeness.state');
  const spec = schema && specOf(schema);
  const lists = spec?.kind === 'object' ? spec.fields.find(({ name }) => name === 'lists')?.spec : undefined;
  const entry = lists?.kind === 'list' && lists.of.kind === 'object' ? lists.of.fields : [];
  const list = entry.find(({ name }) => name === 'list')?.spec;
  return list?.kind === 'choice' ? list.values : [];
}
