import { useState } from 'react';

export type Theme = 'system' | 'light' | 'dark';
const order: readonly Theme[] = ['system', 'light', 'dark'];
const words: Readonly<Record<Theme, string>> = { system: 'as the device', light: 'light', dark: 'dark' };
const key = 'tallywing.theme';

/** Reads the kept choice and sets it on the page; call once before the first paint. */
export function startTheme(): Theme {
  const kept = order.find((theme) => theme === localStorage.getItem(key)) ?? 'system';
  show(kept);
  return kept;
}

function show(theme: Theme): void {
  if (theme === 'system') delete document.documentElement.dataset['theme'];
  else document.documentElement.dataset['theme'] = theme;
}

/** Walks through: as the device, light, dark. */
export function ThemeSwitch() {
  const [theme, setTheme] = useState<Theme>(startTheme);
  const next = order[(order.indexOf(theme) + 1) % order.length] ?? 'system';
  return (
    <button
      type="button"
      className="tw-band-button"
      onClick={() => {
        localStorage.setItem(key, next);
        show(next);
        setTheme(next);
      }}
    >
      Page: {words[theme]}
    </button>
  );
}
