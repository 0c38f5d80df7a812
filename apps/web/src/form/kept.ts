/** What a person typed, kept on this device so that neither a lost network nor a refusal nor a reload loses it. */
export type KeptOnDevice =
  | { readonly state: 'none' }
  | { readonly state: 'kept'; readonly value: unknown }
  /** Kept by a screen of another form: it stays on the device and is not shown. */
  | { readonly state: 'other-version' };

export function readKept(storage: Pick<Storage, 'getItem'>, name: string, version: string): KeptOnDevice {
  const text = storage.getItem(name);
  if (text === null) return { state: 'none' };
  try {
    const kept = JSON.parse(text) as { readonly version?: unknown } | null;
    return kept?.version === version ? { state: 'kept', value: kept } : { state: 'other-version' };
  } catch {
    return { state: 'other-version' };
  }
}

/** Null: nothing is kept any more. Returns false where the device has no room or forbids it: the screen must then say so. */
export function keepOnDevice(
  storage: Pick<Storage, 'setItem' | 'removeItem'>,
  name: string,
  version: string,
  value: object | null,
): boolean {
  try {
    if (value === null) storage.removeItem(name);
    else storage.setItem(name, JSON.stringify({ version, ...value }));
    return true;
  } catch {
    return false;
  }
}
