import { useRef } from 'react';

/** One random key for each content: sent again after a lost answer it does nothing more; other content is another request. */
export function useRequestKey(content: unknown): string {
  const text = JSON.stringify(content);
  const kept = useRef({ text, key: crypto.randomUUID() as string });
  if (kept.current.text !== text) kept.current = { text, key: crypto.randomUUID() };
  return kept.current.key;
}
