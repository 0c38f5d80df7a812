import type { FunctionCode } from '../catalogue/type.js';
import type { Capability } from '../verdict/capability.js';
import { gnssCapabilities } from '../verdict/capability.js';
import type { Effect } from '../verdict/result.js';

export type { GnssCapability } from '../verdict/capability.js';
export { gnssCapabilities };

/** The change may not start, the job may not close; nothing that flies is lost. */
export const planAndRelease: readonly Effect[] = [{ stops: 'plan' }, { stops: 'release' }];
export const advice: readonly Effect[] = [{ stops: 'nothing', kind: 'advice' }];

/** Capabilities lost on every means that passes a unit, link, antenna or chain. */
export function lostThrough(through: string, capabilities: readonly Capability[]): Effect[] {
  return capabilities.map((capability) => ({ stops: 'capability', capability, through }));
}

/** Capabilities that hang on one function of a unit; functions that carry none give an empty list. */
export function capabilitiesOf(functionCode: FunctionCode): readonly Capability[] {
  return byFunction[functionCode] ?? [];
}

const byFunction: Partial<Record<FunctionCode, readonly Capability[]>> = {
  com: ['two-way-radio'],
  'vor-receiver': ['nav-vor', 'approach-vor'],
  'loc-receiver': ['approach-loc', 'approach-ils'],
  'gs-receiver': ['approach-ils'],
  gnss: gnssCapabilities,
  transponder: ['altitude-reporting'],
  'altitude-reporting': ['altitude-reporting'],
  'ads-b-out-1090': ['ads-b-out'],
  'ads-b-out-uat': ['ads-b-out'],
};
