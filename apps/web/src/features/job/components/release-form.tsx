import { useMutation } from '@apollo/client/react';
import {
  type Catalogue,
  type Dossier,
  installedNames,
  localTimeAt,
  messageOf,
  type OpenAtRelease,
} from '@tallywing/rules';
import { useMemo, useState } from 'react';
import { CertificateFields } from '../../../app/certificate-fields.js';
import { HouseChoices } from '../../../app/house-choices.js';
import { useAct } from '../../../app/use-act.js';
import { useRequestKey } from '../../../app/use-request-key.js';
import { instantAt } from '../../../trade/time.js';
import { Button } from '../../../ui/button.js';
import { DateTimeField } from '../../../ui/date-time-field.js';
import { Field } from '../../../ui/field.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { freshId } from '../ids.js';
import { ReleaseJobMutation, type KeptPlan } from '../query.js';
import { entryInput, releaseOf, signedBy, type ReleaseDraft, type ReleaseView } from '../release.js';
import { useSettled } from '../use-settled.js';
import { Refused } from './refused.js';

export interface ReleaseFormProps {
  readonly job: KeptPlan;
  readonly dossier: Dossier;
  readonly catalogue: Catalogue;
  readonly now: string;
  readonly onDone: () => Promise<void>;
}

/** The approval for return to service: what is still open stands first, judged while the entry is written. */
export function ReleaseForm({ job, dossier, catalogue, now, onDone }: ReleaseFormProps) {
  const { zone } = dossier.configuration.aircraft.base;
  const [id] = useState(() => freshId('release'));
  const [draft, setDraft] = useState<ReleaseDraft>(() => blankRelease(job.title));
  const [local, setLocal] = useState(() => localTimeAt(now, zone));
  const [looked, setLooked] = useState(false);
  const [strict, setStrict] = useState(false);
  const { run, busy, problem } = useAct();
  const [release] = useMutation(ReleaseJobMutation);
  const written = useMemo(
    () => ({ ...draft, date: local.slice(0, 10), at: instantAt(local, zone) }),
    [draft, local, zone],
  );
  // Typing stays quick: what is open is judged when a person pauses, and once more when it is sent.
  const settled = useSettled(written, 250);
  const judge = (as: ReleaseDraft) => releaseOf(as, id, job, dossier, catalogue, now);
  const view = useMemo(
    () => releaseOf(settled, id, job, dossier, catalogue, now),
    [settled, id, job, dossier, catalogue, now],
  );
  const key = useRequestKey([written, looked]);
  const put = (part: Partial<ReleaseDraft>) => setDraft({ ...draft, ...part });
  const readyIn = ({ entry, stops, stays }: ReleaseView) =>
    entry !== null && stops.length === 0 && (looked || stays.length === 0);
  const words = { zone, names: installedNames(dossier.configuration) };

  async function send() {
    setStrict(true);
    const sent = judge(written);
    const { entry } = sent;
    if (!readyIn(sent) || entry === null) return;
    const seen = looked ? sent.stays.map((each) => each.key) : [];
    const input = { jobId: job.id, key, entry: entryInput(entry) as never, seen };
    if (await run(() => release({ variables: { input } }), `${job.title} is released.`)) await onDone();
  }

  return (
    <form
      className="tw-stack"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <div aria-live="polite" className="tw-stack">
        <Open title="Still open: it stops this release" open={view.stops} words={words} />
        <Open title="Stays open after it" open={view.stays} words={words} />
        {view.stops.length === 0 && view.stays.length === 0 && <p>Nothing that the work called for is open.</p>}
      </div>
      {view.stays.length > 0 && (
        <label className="tw-check">
          <input type="checkbox" checked={looked} onChange={(event) => setLooked(event.target.checked)} />I have looked
          at what stays open
        </label>
      )}
      <HouseChoices path="agency" onPick={(value) => put(signedBy(value))} />
      <div className="tw-fields">
        <Field
          label="Who approves the return to service"
          error={strict && draft.name.trim() === '' ? 'Name the person or agency that signs.' : null}
        >
          <input value={draft.name} maxLength={200} onChange={(event) => put({ name: event.target.value })} />
        </Field>
      </div>
      <CertificateFields
        draft={draft.certificate}
        none="choose…"
        at={() => (strict && draft.certificate.kind === '' ? 'Choose the certificate of the signer.' : null)}
        onChange={(certificate) => put({ certificate })}
      />
      <div className="tw-fields">
        <DateTimeField label="Released at" zone={zone} value={local} onChange={setLocal} />
        <Field label="Book" optional>
          <input value={draft.book} maxLength={200} onChange={(event) => put({ book: event.target.value })} />
        </Field>
        <Field label="Page" optional>
          <input value={draft.page} maxLength={200} onChange={(event) => put({ page: event.target.value })} />
        </Field>
      </div>
      <Field label="The work, or the data by which it was done">
        <textarea rows={3} value={draft.note} onChange={(event) => put({ note: event.target.value })} />
      </Field>
      {problem && <Refused problem={problem} />}
      {strict && !readyIn(view) && (
        <p className="tw-field-error" role="alert">
          {view.entry === null
            ? 'Say who approves it, with which certificate, and when.'
            : view.stops.length > 0
              ? 'Close what stops the release, or stop the job without a release.'
              : 'Look at what stays open, and say so.'}
        </p>
      )}
      <div className="tw-row">
        <Button type="submit" look="main" busy={busy}>
          Record the release
        </Button>
      </div>
    </form>
  );
}

function Open(props: { title: string; open: readonly OpenAtRelease[]; words: Parameters<typeof messageOf>[1] }) {
  const { title, open, words } = props;
  if (open.length === 0) return null;
  return (
    <div>
      <h3>
        {title} ({open.length})
      </h3>
      <ul className="tw-effect-findings">
        {open.map((each) => (
          <li key={each.key}>
            <StatusMark
              status={each.outcome === 'not-met' ? 'no' : 'cannot-tell'}
              word={each.outcome === 'not-met' ? 'Not met' : 'Cannot tell'}
            />
            <span>{messageOf(each, words)}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}

function blankRelease(title: string): ReleaseDraft {
  return {
    name: '',
    certificate: { kind: '', number: '', ratings: null },
    date: '',
    at: null,
    note: title,
    book: '',
    page: '',
  };
}
