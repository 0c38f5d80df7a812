import { channelNames, glideSlopes, l1MHz, navBandMHz, vhfBandMHz } from '../facts/vhf.js';
import { positive } from './errors.js';
import { roundTo } from './rounding.js';

/**
 * The harmonic of a transmitter that lands nearest to L1. MHz to 0.0001; a negative offset lies below L1.
 * Throws `CalculationError` for a frequency that is not above 0.
 */
export function vhfHarmonic(frequencyMHz: number): { order: number; landsMHz: number; offsetMHz: number } {
  const frequency = positive('frequencyMHz', frequencyMHz, 10_000);
  const order = Math.max(1, Math.round(l1MHz.value / frequency));
  const landsMHz = roundTo(order * frequency, 4);
  return { order, landsMHz, offsetMHz: roundTo(landsMHz - l1MHz.value, 4) };
}

/**
 * Spacing and carrier behind a channel name such as `118.005`; trailing zeros may be left out. Null if no such channel
 * exists: .020, .045, .070 and .095 name none, and the band runs from 118 to below 137. Carrier MHz to 0.0001.
 */
export function vhfChannel(name: string): { spacingKHz: 25 | 8.33; carrierMHz: number } | null {
  const match = /^(\d{3})\.(\d{1,3})$/.exec(typeof name === 'string' ? name : '');
  if (!match) return null;
  const kHz = Number(match[1]) * 1000 + Number((match[2] ?? '').padEnd(3, '0'));
  const { from, to } = vhfBandMHz.value;
  if (kHz < from * 1000 || kHz >= to * 1000) return null;
  const channel = channelNames.value.find(({ nameKHz }) => nameKHz === kHz % 100);
  if (!channel) return null;
  const carrierMHz = roundTo((kHz - (kHz % 100)) / 1000 + channel.carrierTwelfths / 120, 4);
  return { spacingKHz: channel.spacingKHz, carrierMHz };
}

/**
 * What a frequency of the navigation band is for: a localizer, with the glide slope that belongs to it in MHz to 0.01, or a VOR. Null: no
 * channel. Channels lie 50 kHz apart; localizers have the odd tenths below 112 and the steps above them.
 */
export function navChannel(
  frequencyMHz: number,
): { readonly kind: 'localizer'; readonly glideSlopeMHz: number } | { readonly kind: 'vor' } | null {
  const { from, to } = navBandMHz.value;
  const kHz = roundTo(frequencyMHz * 1000, 3);
  if (!(kHz >= from * 1000 && kHz <= to * 1000) || kHz % 50 !== 0) return null;
  const pair = glideSlopes.value.find(([localizerMHz]) => Math.round(localizerMHz * 10) === Math.floor(kHz / 100));
  if (!pair) return { kind: 'vor' };
  return { kind: 'localizer', glideSlopeMHz: roundTo(pair[1] - (kHz % 100 === 50 ? 0.15 : 0), 2) };
}
