import { Area, AreaChart, Bar, BarChart, CartesianGrid, ResponsiveContainer, Tooltip, XAxis, YAxis } from 'recharts';
import { patternId, type ChartProps } from './chart.js';
import { presentSeries, type ChartSeries } from './chart-data.js';

const tick = { fill: 'var(--ink-soft)', fontSize: 13 };
const axis = { stroke: 'var(--rule-strong)' };

/** Draws what `Chart` lists. Loaded on demand; default export because React.lazy asks for one. */
export default function ChartDrawing({ data, kind }: ChartProps) {
  const series = presentSeries(data);
  const rows = data.rows.map((row) => ({ label: row.label, ...row.values }));
  const lying = kind === 'rows';
  const height = lying ? Math.max(140, rows.length * 54 + 34) : 230;
  const shared = {
    data: rows,
    margin: { top: 4, right: 10, bottom: 0, left: 0 },
    accessibilityLayer: false,
  };
  const value = { type: 'number', allowDecimals: false, tick, axisLine: axis, tickLine: false, width: 34 } as const;
  const name = { dataKey: 'label', type: 'category', tick, axisLine: axis, tickLine: false } as const;
  const inside = [
    <CartesianGrid key="grid" stroke="var(--rule)" vertical={lying} horizontal={!lying} />,
    <Tooltip
      key="tip"
      isAnimationActive={false}
      cursor={{ fill: 'var(--sunk)', opacity: 0.6 }}
      contentStyle={{ background: 'var(--sheet)', border: '1px solid var(--rule-strong)', borderRadius: 3 }}
      itemStyle={{ color: 'var(--ink)' }}
      labelStyle={{ color: 'var(--ink)', fontWeight: 600 }}
    />,
  ];
  return (
    <>
      <Patterns series={series} />
      <ResponsiveContainer width="100%" height={height} initialDimension={{ width: 320, height }}>
        {kind === 'line' ? (
          <AreaChart {...shared}>
            {inside}
            <XAxis {...name} minTickGap={24} />
            <YAxis {...value} />
            {series.map((one) => (
              <Area
                key={one.key}
                dataKey={one.key}
                name={one.name}
                stackId="all"
                type="stepAfter"
                stroke={one.colour}
                strokeWidth={2}
                fill={fillOf(one)}
                isAnimationActive={false}
              />
            ))}
          </AreaChart>
        ) : (
          <BarChart {...shared} layout={lying ? 'vertical' : 'horizontal'} barCategoryGap="22%">
            {inside}
            {lying ? <XAxis {...value} height={26} /> : <XAxis {...name} minTickGap={10} />}
            {lying ? <YAxis {...name} width={176} /> : <YAxis {...value} />}
            {series.map((one) => (
              <Bar
                key={one.key}
                dataKey={one.key}
                name={one.name}
                stackId="all"
                fill={fillOf(one)}
                stroke={one.colour}
                strokeWidth={1}
                isAnimationActive={false}
              />
            ))}
          </BarChart>
        )}
      </ResponsiveContainer>
    </>
  );
}

function fillOf(series: ChartSeries): string {
  return `url(#${patternId(series.colour, series.pattern)})`;
}

/** Fills that stay apart in grey print. Ids are shared by all charts on a page; equal ids are equal fills. */
function Patterns({ series }: { series: readonly ChartSeries[] }) {
  return (
    <svg width="0" height="0" className="tw-chart-patterns">
      <defs>
        {series.map((one) => (
          <pattern
            key={one.key}
            id={patternId(one.colour, one.pattern)}
            width="8"
            height="8"
            patternUnits="userSpaceOnUse"
          >
            <rect
              width="8"
              height="8"
              style={{
                fill: one.colour,
                fillOpacity: one.pattern === 'solid' ? 0.9 : one.pattern === 'hollow' ? 0.06 : 0.22,
              }}
            />
            {one.pattern === 'lines' && (
              <path d="M-2 10 10-2M-2 2 2-2M6 10l4-4" style={{ stroke: one.colour }} strokeWidth="2" />
            )}
            {one.pattern === 'cross' && <path d="M0 0l8 8M8 0 0 8" style={{ stroke: one.colour }} strokeWidth="1.3" />}
            {one.pattern === 'dots' && <circle cx="4" cy="4" r="1.7" style={{ fill: one.colour }} />}
          </pattern>
        ))}
      </defs>
    </svg>
  );
}
