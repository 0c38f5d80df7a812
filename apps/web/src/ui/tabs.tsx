import type { ReactNode } from 'react';
import { Tab, TabList, TabPanel, Tabs as AriaTabs } from 'react-aria-components/Tabs';
import './tabs.css';

export interface TabItem {
  readonly id: string;
  readonly title: string;
  /** How many are behind it, where that helps to choose. */
  readonly count?: number;
  readonly content: () => ReactNode;
}

/** Tabs with arrow keys. Only the chosen panel is rendered; on paper use the sections themselves instead. */
export function Tabs({
  label,
  items,
  selected,
  onSelect,
}: {
  label: string;
  items: readonly TabItem[];
  selected: string;
  onSelect: (id: string) => void;
}) {
  return (
    <AriaTabs selectedKey={selected} onSelectionChange={(key) => onSelect(String(key))} className="tw-tabs">
      <TabList aria-label={label} className="tw-tab-list">
        {items.map((item) => (
          <Tab key={item.id} id={item.id} className="tw-tab">
            {item.title}
            {item.count !== undefined && <span className="tw-tab-count"> {item.count}</span>}
          </Tab>
        ))}
      </TabList>
      {items.map((item) => (
        <TabPanel key={item.id} id={item.id} className="tw-tab-panel">
          {item.content()}
        </TabPanel>
      ))}
    </AriaTabs>
  );
}
