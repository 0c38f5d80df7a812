import { codeWords } from '@tallywing/rules';
import { useQuery } from '@apollo/client/react';
import { useMemo } from 'react';
import { FieldView } from '../../../form/field-view.js';
import { FormContextProvider, type FormContext } from '../../../form/form-context.js';
import { problemAt, type FieldProblem } from '../../../form/problems.js';
import { choicesAt, entryWith, isHidden, sections, specAt, type Entry } from '../entry.js';
import { hintAt, labelAt, rowWords } from '../field-words.js';
import { FamiliesQuery } from '../query.js';

export interface EntryFormProps {
  readonly entry: Entry;
  readonly problems: readonly FieldProblem[];
  /** Fields that stay as they are and are not asked for. */
  readonly fixed: readonly string[];
  readonly onChange: (entry: Entry) => void;
}

const words = {
  given: 'The manual states it',
  notGiven: 'Not stated',
  noOptions: 'Tick above what the unit does; it can then be chosen here.',
};

/** The whole entry under plain headings, each field made from the core's schema. */
export function EntryForm({ entry, problems, fixed, onChange }: EntryFormProps) {
  const { data } = useQuery(FamiliesQuery, { fetchPolicy: 'cache-first' });
  const families = useMemo(
    () =>
      (data?.catalogue.edges ?? []).map(({ node }) => ({ value: node.family, words: `${node.maker} ${node.name}` })),
    [data],
  );
  const form: FormContext = {
    zone: 'UTC',
    words,
    set: (path, value) => onChange(entryWith(entry, path, value)),
    problem: (path) => problemAt(problems, path),
    options: (path) => choicesAt(entry, path)?.map((value) => ({ value, words: codeWords(value) })) ?? null,
    rowWords: (path) => rowWords(entry, path),
    troubled: (path) => problems.some(({ field }) => field === path || field.startsWith(`${path}.`)),
    hidden: (path) => fixed.includes(path) || isHidden(entry, path),
    suggestions: (path) => (/^pairs\.\d+\.family$/.test(path) ? families : []),
    label: (path) => labelAt(entry, path),
    hint: hintAt,
  };
  return (
    <FormContextProvider value={form}>
      {sections.map((section) => (
        <section key={section.id} id={section.id} className="tw-sheet tw-stack" aria-labelledby={`${section.id}-title`}>
          <h2 id={`${section.id}-title`} tabIndex={-1}>
            {section.title}
          </h2>
          {section.lead && <p className="tw-soft">{section.lead}</p>}
          <div className="tw-fields">
            {section.fields.map((field) => (
              <FieldView key={field} spec={specAt(field)} path={field} value={entry[field]} />
            ))}
          </div>
        </section>
      ))}
    </FormContextProvider>
  );
}
