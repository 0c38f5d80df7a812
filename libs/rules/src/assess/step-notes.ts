import { leastAdsBCodesWords } from '../calculations/ads-b.js';
import { groundReturnDropV, mainWiresDropV } from '../calculations/wire.js';
import type { Aircraft } from '../dossier/aircraft.js';
import { adsBLimits } from '../facts/ads-b.js';
import { fieldElevationFt } from '../facts/altimeter.js';
import { refinishWithinHours, staticBondAbove } from '../facts/bonding.js';
import { eltAirTest } from '../facts/elt.js';
import { sumOnOneSupport } from '../facts/load-factors.js';
import { oilInEmptyWeight, oilLbPerGallon } from '../facts/mass.js';
import { visualAfterPowerLoss } from '../facts/old-part-23.js';
import type { SourceRef } from '../facts/source.js';
import { instrumentHolesIn } from '../facts/view.js';
import { mainWiresShare } from '../facts/wire.js';
import { supportsIn } from '../facts/wiring.js';

/** What whoever does a piece of work should know of it, beside what the rules judge. It decides nothing. */
export interface StepNote {
  readonly text: string;
  readonly source: SourceRef;
}

/** Notes on a kind of change, and for an entry on its kind; none for most. */
export function notesOn(change: string, entry: string | null, basis: Aircraft['basis']): readonly StepNote[] {
  const topic = change === 'record.add' ? entry : change;
  return notes[topic ?? '']?.(basis) ?? [];
}

const notes: Readonly<Record<string, (basis: Aircraft['basis']) => readonly StepNote[]>> = {
  'elt-inspection': eltOnTheAir,
  'ads-b-report': soundReport,
  'bonding-check': bonds,
  'controls-check': supports,
  'altimeter-test': againstTheField,
  'electrical.set': mainWires,
  'opening.set': roundHoles,
  'mass.revise': oil,
  'unit.install': oneSupport,
};

function eltOnTheAir(): readonly StepNote[] {
  const { firstMinutes, sweepsMost } = eltAirTest.value;
  const text = `An analogue transmitter is tested on the air only in the first ${firstMinutes} minutes after a full hour, for ${sweepsMost} sweeps at most, and never in flight; at any other time ask the tower first. One on 406 MHz is tested only as its maker says.`;
  return [{ text, source: eltAirTest.source }];
}

function soundReport(): readonly StepNote[] {
  return [{ text: `A sound report shows ${leastAdsBCodesWords()}.`, source: adsBLimits.source }];
}

function bonds(): readonly StepNote[] {
  const { areaSqIn, lengthIn } = staticBondAbove.value;
  return [
    {
      text: `Bond each isolated conducting part of more than ${areaSqIn} sq in that is longer than ${lengthIn} in.`,
      source: staticBondAbove.source,
    },
    {
      text: `A place that was bared for a bond gets its finish back within ${refinishWithinHours.value} hours.`,
      source: refinishWithinHours.source,
    },
  ];
}

function supports(): readonly StepNote[] {
  const { apartMost, tiedAbove } = supportsIn.value;
  const text = `Wires are supported every ${apartMost} in at least, and bundles are tied where their supports are more than ${tiedAbove} in apart.`;
  return [{ text, source: supportsIn.source }];
}

function againstTheField(): readonly StepNote[] {
  const text = `In service, an altimeter ${fieldElevationFt.value} ft or more off the known elevation of the field is in doubt: look at that before flight under IFR.`;
  return [{ text, source: fieldElevationFt.source }];
}

function mainWires(): readonly StepNote[] {
  const percent = mainWiresShare.value * 100;
  const text = `The main power wires may lose ${percent} % between source and bus: ${mainWiresDropV(14)} V of 14 V, ${mainWiresDropV(28)} V of 28 V. A return through the structure counts as nothing where it is bonded, and as satisfactory where 20 A lose ${groundReturnDropV(20)} V.`;
  const after = `By its certification basis an airplane may have to be safe under visual rules for at least ${visualAfterPowerLoss.value} minutes with its normal power gone, beside what the battery must carry.`;
  return [
    { text, source: mainWiresShare.source },
    { text: after, source: visualAfterPowerLoss.source },
  ];
}

function roundHoles(): readonly StepNote[] {
  const { large, small } = instrumentHolesIn.value;
  const text = `Round instruments have holes of ${large} in or ${small} in; give the width and height of the hole as measured.`;
  return [{ text, source: instrumentHolesIn.source }];
}

function oneSupport(): readonly StepNote[] {
  const text =
    'A support that bears other units already must bear the old and the new together: as the strength of this mount give only what is left for it.';
  return [{ text, source: sumOnOneSupport }];
}

function oil(basis: Aircraft['basis']): readonly StepNote[] {
  const included = basis?.code === 'car-3' || basis?.code === 'part-23' ? oilInEmptyWeight.value[basis.code] : null;
  const weighs = `oil weighs ${oilLbPerGallon.value} lb a gallon.`;
  const text =
    included === null
      ? `Under CAR 3 the empty weight is without oil, under part 23 with all of it; ${weighs}`
      : `By its certification basis the empty weight of this aircraft is ${included ? 'with all its oil' : 'without oil'}; ${weighs}`;
  return [{ text, source: oilInEmptyWeight.source }];
}
