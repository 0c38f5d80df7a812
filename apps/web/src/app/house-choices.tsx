import { dateWords } from '@tallywing/rules';
import { useQuery } from '@apollo/client/react';
import { graphql, type ResultOf } from '../graphql.js';
import { certificateWords, codeOf } from '../trade/certificates.js';
import { Field } from '../ui/field.js';

export const WorkChoicesQuery = graphql(`
  query WorkChoices {
    workChoices {
      testSets {
        serial
        name
        calibratedUntil
      }
      agencies {
        kind
        name
        certificate
        ratings
      }
    }
  }
`);

type Choices = ResultOf<typeof WorkChoicesQuery>['workChoices'];

export interface HouseChoice {
  readonly words: string;
  /** What the entry then says, in the rule library's spelling: its own copy. */
  readonly value: unknown;
}

/** Where a form asks for a test set or a signer: those of the house, to fill its fields. Nothing for any other place. */
export function HouseChoices({ path, onPick }: { path: string; onPick: (value: unknown) => void }) {
  const asks = /(^|\.)instrument$/.test(path) ? 'testSets' : /(^|\.)agency$/.test(path) ? 'agencies' : null;
  const { data } = useQuery(WorkChoicesQuery, { skip: asks === null });
  const choices = asks === null || !data ? [] : choicesOf(data.workChoices, asks);
  if (choices.length === 0) return null;
  return (
    <Field label={asks === 'testSets' ? 'Fill in from the house’s test sets' : 'Fill in from the house’s list'}>
      <select value="" onChange={(event) => onPick(choices[Number(event.target.value)]?.value ?? null)}>
        <option value="">choose…</option>
        {choices.map(({ words }, index) => (
          <option key={`${index} ${words}`} value={index}>
            {words}
          </option>
        ))}
      </select>
    </Field>
  );
}

export function choicesOf(choices: Choices, asks: 'testSets' | 'agencies'): readonly HouseChoice[] {
  if (asks === 'testSets')
    return choices.testSets.map(({ serial, name, calibratedUntil }) => ({
      words: `${name}, serial ${serial}, calibrated through ${dateWords(calibratedUntil)}`,
      value: { serial, calibratedUntil },
    }));
  return choices.agencies.map(({ kind, name, certificate, ratings }) => ({
    words: `${name}: ${certificateWords({ kind, number: certificate, ratings })}`,
    value: { kind: codeOf(kind), name, certificate, ratings: ratings === null ? null : ratings.map(codeOf) },
  }));
}
