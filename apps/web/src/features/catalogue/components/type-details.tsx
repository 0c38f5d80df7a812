import { codeWords, drawsNothing } from '@tallywing/rules';
import type { EquipmentType } from '@tallywing/rules';
import type { ReactNode } from 'react';
import '../../../ui/facts.css';

/** Everything the installation manual of a type says that the rules read. Where it is silent, so is this. */
export function TypeDetails({ type }: { type: EquipmentType }) {
  return (
    <dl className="tw-facts">
      <Fact name="Does">{type.functions.map(codeWords).join(', ')}</Fact>
      <Fact name="Authorised">
        {type.authorisations.map((each) => `TSO-${each.tso}${each.class ? `, class ${each.class}` : ''}`).join('; ')}
      </Fact>
      <Fact name="Opening">
        {type.bezel &&
          `${type.bezel.widthIn} by ${type.bezel.heightIn} in${type.bezel.depthIn === null ? '' : `, ${type.bezel.depthIn} in deep with connectors`}`}
      </Fact>
      <Fact name="Mass">{type.massLb !== null && `${type.massLb} lb`}</Fact>
      <Fact name="Draw">
        {type.drawA &&
          (drawsNothing(type)
            ? 'nothing'
            : [
                type.drawA.at14V === null ? '' : `${type.drawA.at14V} A at 14 V`,
                type.drawA.at28V === null ? '' : `${type.drawA.at28V} A at 28 V`,
              ]
                .filter(Boolean)
                .join(', '))}
      </Fact>
      <Fact name="Supply">{type.supplyV && `${type.supplyV.least} to ${type.supplyV.most} V`}</Fact>
      <Fact name="Cooling">
        {type.cooling &&
          `${codeWords(type.cooling.by)}${type.cooling.clearanceIn === null ? '' : `, ${type.cooling.clearanceIn} in kept clear`}`}
      </Fact>
      <Fact name="Ports">
        {type.ports.length > 0 && (
          <ul>
            {type.ports.map((port) => (
              <li key={port.name}>
                {port.name}: {codeWords(port.signal)} {port.direction}, {codeWords(port.standard)}
                {port.requiredFor.length > 0 && `; must be joined for ${port.requiredFor.map(codeWords).join(', ')}`}
              </li>
            ))}
          </ul>
        )}
      </Fact>
      <Fact name="May be joined">
        {type.pairs
          .map(
            (pair) =>
              `${pair.family}${pair.software ? ` at software ${pair.software}` : ''} (${pair.document} ${pair.revision})`,
          )
          .join('; ')}
      </Fact>
      <Fact name="Limitations">
        {type.limitations.length > 0 && (
          <ul>
            {type.limitations.map((each) => (
              <li key={`${each.kind} ${each.paragraph}`}>
                {codeWords(each.kind)}: {[...each.functions, ...each.beyond].map(codeWords).join(', ')} ({each.document}{' '}
                {each.paragraph})
              </li>
            ))}
          </ul>
        )}
      </Fact>
      <Fact name="View">
        {type.view &&
          [
            type.view.approvedPlaces.map(codeWords).join(', '),
            type.view.maxHorizontalDeg === null ? '' : `at most ${type.view.maxHorizontalDeg}° to the side`,
            type.view.maxOffsetIn === null ? '' : `at most ${type.view.maxOffsetIn} in from the centre of view`,
            `(${type.view.document})`,
          ]
            .filter(Boolean)
            .join(', ')}
      </Fact>
      <Fact name="Databases">
        {type.databases
          .map((each) => `${codeWords(each.kind)}${each.holdsNext ? ', holds the next cycle too' : ''}`)
          .join('; ')}
      </Fact>
    </dl>
  );
}

function Fact({ name, children }: { name: string; children: ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children || 'the manual does not say'}</dd>
    </div>
  );
}
