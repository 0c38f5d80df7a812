import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const css = readFileSync(new URL('./tokens.css', import.meta.url), 'utf8');
const tokens = new Map(
  [...css.matchAll(/--([\w-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\);/g)].map((found) => [
    found[1] ?? '',
    { light: found[2] ?? '', dark: found[3] ?? '' },
  ]),
);

/** Relative luminance, WCAG 2.2. */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const value = parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * (r ?? 0) + 0.7152 * (g ?? 0) + 0.0722 * (b ?? 0);
}

function contrast(one: string, other: string, theme: 'light' | 'dark'): number {
  const [a, b] = [one, other].map((name) => luminance(tokens.get(name)?.[theme] ?? ''));
  return (Math.max(a ?? 0, b ?? 0) + 0.05) / (Math.min(a ?? 0, b ?? 0) + 0.05);
}

const themes = ['light', 'dark'] as const;
const grounds = ['paper', 'sheet', 'sunk'];
const texts = ['ink', 'ink-soft', 'link', 'yes', 'no', 'cannot', 'soon', 'again', 'absent', 'held', 'work', 'say'];

test.each(themes.flatMap((theme) => texts.flatMap((text) => grounds.map((ground) => [theme, text, ground] as const))))(
  '%s: %s is readable on %s (WCAG 1.4.3, 4.5:1)',
  (theme, text, ground) => expect(contrast(text, ground, theme)).toBeGreaterThanOrEqual(4.5),
);

test.each(themes)('%s: controls and chart series stand out from the sheet (WCAG 1.4.11, 3:1)', (theme) => {
  for (const name of ['rule-strong', 'focus', 'series-1', 'series-2', 'series-3', 'series-4', 'series-5', 'series-6']) {
    expect(contrast(name, 'sheet', theme), name).toBeGreaterThanOrEqual(3);
  }
  expect(contrast('band-ink', 'band', theme)).toBeGreaterThanOrEqual(4.5);
  expect(contrast('act-ink', 'act', theme)).toBeGreaterThanOrEqual(4.5);
});

test('cannot-tell shares its colour with nothing else', () => {
  const cannot = tokens.get('cannot');
  const others = [...tokens].filter(([name]) => name !== 'cannot').map(([, value]) => value);
  expect(others).not.toContainEqual(cannot);
});
