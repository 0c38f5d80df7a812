import { codeWords } from '@tallywing/rules';
import { createContext, useContext, type ReactNode } from 'react';
import { labelOf } from './labels.js';

/** One of a list to choose from. */
export interface Option {
  readonly value: string;
  readonly words: string;
}

/** What every field of a form needs. */
export interface FormContext {
  readonly zone: string;
  readonly set: (path: string, value: unknown) => void;
  readonly problem: (path: string) => string | null;
  /** What the field may name; null where it is free text. */
  readonly options: (path: string) => readonly Option[] | null;
  readonly hidden: (path: string) => boolean;
  /** What a free text may well be; anything else may be typed too. */
  readonly suggestions?: (path: string) => readonly Option[];
  /** What the field is called and a word of help, where the name of the field alone does not say it. */
  readonly label?: (path: string) => string | null;
  readonly hint?: (path: string) => string | null;
  /** Rows of lists are folded under these words; left out or null: they lie open. */
  readonly rowWords?: (path: string) => string | null;
  /** Something below this path is wrong: a folded row opens by itself. */
  readonly troubled?: (path: string) => boolean;
  /** What stands above the fields of a group, to fill them in from what is known elsewhere. */
  readonly above?: (path: string) => ReactNode;
  readonly words: FormWords;
}

/** How the form speaks of what is not known, which differs by where the facts come from. */
export interface FormWords {
  /** Ticked: the group below is filled in. */
  readonly given: string;
  /** Chosen or ticked where a field has no value. */
  readonly notGiven: string;
  /** In place of a list to tick from that is empty. */
  readonly noOptions: string;
}

export const FormContextProvider = createContext<FormContext | null>(null);

export function labelIn(form: FormContext, path: string): string {
  return form.label?.(path) ?? labelOf(path);
}

export function useForm(): FormContext {
  const form = useContext(FormContextProvider);
  if (!form) throw new Error('A field is used outside a form');
  return form;
}

export function codeOption(value: string): Option {
  return { value, words: codeWords(value) };
}
