import { useState } from 'react';
import { useToast } from '../ui/toast.js';
import { problemOf, type Problem } from './problem.js';

export interface Act {
  /** Runs one mutation, says that it is done, or keeps what went wrong. Nothing typed is lost either way. */
  readonly run: (work: () => Promise<unknown>, said: string) => Promise<boolean>;
  readonly busy: boolean;
  readonly problem: Problem | null;
  /** What is wrong with one field, named as the API names it without `input.`; null when it is not that one. */
  readonly at: (field: string) => string | null;
}

/** One form's way of doing something. */
export function useAct(): Act {
  const say = useToast();
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);
  async function run(work: () => Promise<unknown>, said: string): Promise<boolean> {
    setBusy(true);
    setProblem(null);
    try {
      await work();
      say(said);
      return true;
    } catch (error) {
      setProblem(problemOf(error));
      return false;
    } finally {
      setBusy(false);
    }
  }
  return { run, busy, problem, at: (field) => problemAt(problem, field) };
}

export function problemAt(problem: Problem | null, field: string): string | null {
  return problem !== null && fieldOf(problem) === field ? sentence(problem) : null;
}

/** What no field of the form shows. */
export function problemBeside(problem: Problem | null, fields: readonly string[]): string | null {
  return problem !== null && !fields.includes(fieldOf(problem)) ? sentence(problem) : null;
}

function fieldOf(problem: Problem): string {
  return (problem.field ?? '').replace(/^input\./, '');
}

function sentence(problem: Problem): string {
  return problem.wayOut === undefined ? problem.title : `${problem.title} ${problem.wayOut}`;
}
