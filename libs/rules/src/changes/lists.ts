import type { Configuration, Dossier, Meters, Status } from '../dossier/dossier.js';

/** Lists are kept sorted by id, so that equal dossiers are equal as text. */
export function put<T extends { readonly id: string }>(list: readonly T[], item: T): T[] {
  return [...list.filter((each) => each.id !== item.id), item].sort(byId);
}

export function drop<T extends { readonly id: string }>(list: readonly T[], id: string): T[] {
  return list.filter((each) => each.id !== id);
}

export function has(list: readonly { readonly id: string }[], id: string): boolean {
  return list.some((each) => each.id === id);
}

export function withConfiguration(dossier: Dossier, part: Partial<Configuration>): Dossier {
  return { ...dossier, configuration: { ...dossier.configuration, ...part } };
}

export function withStatus(dossier: Dossier, part: Partial<Status>): Dossier {
  return { ...dossier, status: { ...dossier.status, ...part } };
}

export function withMeters(dossier: Dossier, part: Partial<Meters>): Dossier {
  return { ...dossier, meters: { ...dossier.meters, ...part } };
}

function byId(a: { readonly id: string }, b: { readonly id: string }): number {
  return a.id < b.id ? -1 : a.id > b.id ? 1 : 0;
}
