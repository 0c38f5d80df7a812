import { useState } from 'react';
import { Link, useNavigate } from 'react-router';
import { Button } from '../../ui/button.js';
import { Trouble } from '../../ui/states.js';
import { useToast } from '../../ui/toast.js';
import { CheckPanel } from './components/check-panel.js';
import { EntryForm } from './components/entry-form.js';
import { Meanwhile } from './components/meanwhile.js';
import type { Entry } from './entry.js';
import { pathOf } from './paths.js';
import { problemsOf, refusedFields, withoutEmpty } from './problems.js';
import type { EntryToEdit } from './query.js';
import { useEntryDraft } from './use-entry-draft.js';
import { useSaving } from './use-saving.js';
import './catalogue.css';

export interface EntryEditorProps {
  /** Under which the draft is kept: 'new', 'copy:<id>', 'revise:<family>'. */
  readonly task: string;
  readonly title: string;
  readonly lead: string;
  readonly start: Entry;
  /** The version that a revision takes the place of; null for a new product. */
  readonly inForce: EntryToEdit | null;
  readonly back: string;
  /** Reads again which version is in force. */
  readonly onStale: () => Promise<unknown>;
}

/** Writes an entry: checked while typing, shown with who is affected before it is saved, kept whatever happens. */
export function EntryEditor({ task, title, lead, start, inForce, back, onStale }: EntryEditorProps) {
  const navigate = useNavigate();
  const say = useToast();
  const drafts = useEntryDraft(task, start, inForce?.id ?? null);
  const { draft } = drafts;
  const saving = useSaving(onStale);
  const [strict, setStrict] = useState(false);
  const refused = saving.problem?.code === 'REFUSED' ? refusedFields(saving.problem.details) : [];
  const own = problemsOf(draft.entry);
  const preview = saving.previewOf(draft);
  const behind = inForce !== null && draft.expectedId !== inForce.id;

  const change = (entry: Entry) => {
    saving.forget();
    drafts.set(entry);
  };
  const look = () => {
    setStrict(true);
    if (own.length === 0) void saving.look(draft);
  };
  const save = async () => {
    const id = await saving.save(draft);
    if (id === null) return;
    drafts.discard();
    say(inForce ? 'The new version is in force.' : 'The product is in the catalogue.');
    void navigate(pathOf(id));
  };

  return (
    <div className="tw-stack-wide">
      <header className="tw-screen-head">
        <div>
          <h1>{title}</h1>
          <p className="tw-soft">{lead}</p>
        </div>
        <Link to={back}>Back</Link>
      </header>
      {behind && draft.expectedId !== null && (
        <Meanwhile
          begunOn={draft.expectedId}
          inForce={inForce}
          mine={draft.entry}
          onGoOn={(entry) => {
            saving.forget();
            drafts.rebase(entry, inForce.id);
          }}
        />
      )}
      {drafts.unreadable && (
        <Trouble
          title="An older draft of this entry is on this device."
          wayOut="It was made with an older form of this screen and cannot be shown here; it stays on the device until you write something new."
        />
      )}
      {!drafts.kept && (
        <Trouble
          title="This device does not keep the draft."
          wayOut="Its storage is full or switched off: save the entry before you leave this page."
        />
      )}
      <div className="tw-entry">
        <div className="tw-stack">
          <EntryForm
            entry={draft.entry}
            problems={[...(strict ? own : withoutEmpty(own, draft.entry)), ...refused]}
            // The short name is what makes two entries versions of one product.
            fixed={inForce ? ['family'] : []}
            onChange={change}
          />
        </div>
        <CheckPanel
          revises={inForce !== null}
          problems={strict ? [...own, ...refused] : []}
          trouble={saving.problem && refused.length === 0 && !behind ? saving.problem : null}
          preview={preview}
        >
          <div className="tw-row tw-entry-actions">
            {preview && (
              <Button look="main" busy={saving.busy !== null} disabled={behind} onClick={() => void save()}>
                {saving.busy === 'saving' ? 'Saving…' : inForce ? 'Save the new version' : 'Save the entry'}
              </Button>
            )}
            <Button look={preview ? 'plain' : 'main'} busy={saving.busy !== null} disabled={behind} onClick={look}>
              {saving.busy === 'looking'
                ? 'Judging…'
                : preview
                  ? 'Check again'
                  : inForce
                    ? 'Check, and show who is affected'
                    : 'Check the entry'}
            </Button>
            {drafts.changed && (
              <Button
                look="quiet"
                onClick={() => {
                  setStrict(false);
                  saving.forget();
                  drafts.discard();
                }}
              >
                Discard what I wrote
              </Button>
            )}
          </div>
        </CheckPanel>
      </div>
    </div>
  );
}
