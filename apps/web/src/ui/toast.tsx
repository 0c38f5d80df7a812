import { createContext, useCallback, useContext, useMemo, useRef, useState, type ReactNode } from 'react';
import './toast.css';

interface Note {
  readonly id: number;
  readonly text: string;
}

const ToastContext = createContext<(text: string) => void>(() => {
  throw new Error('useToast is used outside ToastProvider');
});

/** Says a short thing in the live region at the foot of the page. For what has already happened, never for a question. */
export function useToast(): (text: string) => void {
  return useContext(ToastContext);
}

export function ToastProvider({ children }: { children: ReactNode }) {
  const [notes, setNotes] = useState<readonly Note[]>([]);
  const next = useRef(0);
  const drop = useCallback((id: number) => setNotes((now) => now.filter((note) => note.id !== id)), []);
  const say = useCallback((text: string) => {
    const id = next.current++;
    setNotes((now) => [...now.slice(-2), { id, text }]);
  }, []);
  const region = useMemo(
    () => (
      <div className="tw-toasts tw-no-print" role="status" aria-live="polite">
        {notes.map((note) => (
          <p key={note.id} className="tw-toast">
            {note.text}
            {/* Stays until it is closed: a message that leaves by itself is missed by whoever looks away. */}
            <button type="button" onClick={() => drop(note.id)} aria-label="Close the message">
              ✕
            </button>
          </p>
        ))}
      </div>
    ),
    [notes, drop],
  );
  return (
    <ToastContext value={say}>
      {children}
      {region}
    </ToastContext>
  );
}
