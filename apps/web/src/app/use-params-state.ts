import { useSearchParams } from 'react-router';

/** The filter of a screen as it stands in the address; '' for what is not set. A link shows another person the same. */
export function useParamsState<const Names extends readonly string[]>(
  names: Names,
): [Readonly<Record<Names[number], string>>, (next: Partial<Record<Names[number], string>>) => void] {
  const [params, setParams] = useSearchParams();
  const state = Object.fromEntries(names.map((name) => [name, params.get(name) ?? ''])) as Record<
    Names[number],
    string
  >;
  const set = (next: Partial<Record<Names[number], string>>) => {
    const all: Record<string, string> = { ...state, ...next };
    setParams(new URLSearchParams(Object.entries(all).filter(([, value]) => value !== '')), { replace: true });
  };
  return [state, set];
}
