/** Names by which browsers and devices call themselves, the telling one first: most also claim to be others. */
const browsers = [
  [/\bEdg(e|A|iOS)?\//, 'Edge'],
  [/\bOPR\//, 'Opera'],
  [/\b(Firefox|FxiOS)\//, 'Firefox'],
  [/(Chrome|CriOS)\//, 'Chrome'],
  [/\bSafari\//, 'Safari'],
] as const;
const devices = [
  [/\biPad\b/, 'iPad'],
  [/\biPhone\b/, 'iPhone'],
  [/\bAndroid\b/, 'Android'],
  [/\bWindows\b/, 'Windows'],
  [/\bMac OS X\b/, 'Mac'],
  [/\bLinux\b/, 'Linux'],
] as const;

/** 'Chrome on Linux' from what a browser says of itself; what nobody knows stands as it came. */
export function browserWords(userAgent: string): string {
  const of = (names: readonly (readonly [RegExp, string])[]) => names.find(([mark]) => mark.test(userAgent))?.[1];
  const [browser, device] = [of(browsers), of(devices)];
  if (browser && device) return `${browser} on ${device}`;
  return userAgent.slice(0, 60) || 'not named';
}
