// Racks and patch panels: what is drawn is what the report says, whatever is in them.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import fc from 'fast-check';
import { readSite } from '../../server/src/cli/sites.ts';
import { USUAL_OPTIONS } from '../../server/src/draw/drawing.ts';
import { panelPorts } from '../../server/src/draw/panel.ts';
import { rackFronts } from '../../server/src/draw/rack.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { kilograms } from '../../server/src/text/words.ts';
import { planFrom } from '../report/paddock.ts';
import { faults } from './geometry.ts';
import { type Picture, picture } from './picture.ts';

function rack(plan: Plan, name: string): Picture {
  return picture(svgFile(rackFronts.draw(plan, name, USUAL_OPTIONS)));
}

function panel(plan: Plan, name: string): Picture {
  return picture(svgFile(panelPorts.draw(plan, name, USUAL_OPTIONS)));
}

interface Put {
  readonly unit: number | undefined;
  readonly units: number;
  readonly side: 'front' | 'rear';
  readonly depth: number | undefined;
  readonly width: number | undefined;
  readonly name: string;
}

const puts = fc.array(
  fc.record<Put>({
    unit: fc.option(fc.integer({ min: 1, max: 20 }), { nil: undefined, freq: 6 }),
    units: fc.integer({ min: 1, max: 5 }),
    side: fc.constantFrom('front', 'rear'),
    depth: fc.option(fc.integer({ min: 50, max: 700 }), { nil: undefined }),
    width: fc.option(fc.integer({ min: 40, max: 480 }), { nil: undefined }),
    name: fc.stringMatching(/^[a-z]{1,30}$/),
  }),
  { maxLength: 25 },
);

function siteWith(all: readonly Put[], units: number, from: string): string {
  const devices = all.map(({ unit, units: high, side, depth, width, name }, index) => {
    const keys = [
      'kind: switch',
      'rack: tall',
      ...(unit === undefined ? [] : [`unit: ${unit}`]),
      `units: ${high}`,
      `side: ${side}`,
      ...(depth === undefined ? [] : [`depth: ${depth} mm`]),
      ...(width === undefined ? [] : [`width: ${width} mm`]),
    ];
    return `  ${name}-${index}: {${keys.join(', ')}}`;
  });
  return `racks: {tall: {units: ${units}, depth: 600 mm, numbered-from: ${from}}}\ndevices:\n  none: {kind: computer}\n${devices.join('\n')}\n`;
}

describe('a picture of a rack', () => {
  it('has no box over another, and each label in its box, whatever is in it', () => {
    fc.assert(
      fc.property(puts, fc.integer({ min: 1, max: 16 }), fc.constantFrom('top', 'bottom'), (all, units, from) => {
        const plan = planFrom(siteWith(all, units, from));
        const drawn = rack(plan, 'tall');
        assert.deepEqual(faults(drawn), []);
        const named = new Set(drawn.things.map(({ at }) => at));
        for (const device of plan.site.devices)
          assert.equal(named.has(device.name), device.mounting.rack === 'tall', device.name);
      }),
      { numRuns: 150 },
    );
  });

  it('shows as free what the report has as free, and the weights that it has', () => {
    const plan = planOf(readSite('samples/harrow-lane').folder.site());
    const [cupboard] = reportOf(plan).racks;
    assert.ok(cupboard);
    const { words, things } = rack(plan, 'cupboard');
    // Each free unit is level with its number; the front is the left half.
    const frees = words.filter(({ text }) => text === 'free');
    const numbers = words.filter(({ text }) => /^\d+$/.test(text));
    const middle = words.find(({ text }) => text === 'Rear')?.left ?? 0;
    const level = frees
      .filter(({ left }) => left < middle)
      .map(({ bottom }) => numbers.find((number) => Math.abs(number.bottom - bottom) < 2)?.text);
    assert.deepEqual(
      level.map(Number).sort((a, b) => a - b),
      cupboard.free.front,
    );
    const own = things.find(({ names, at }) => names === 'racks' && at === 'cupboard');
    assert.ok(
      own?.label.includes(`${kilograms(cupboard.weight * 1000)} of ${kilograms((cupboard.bears ?? 0) * 1000)}`),
    );
  });

  it('puts unit 1 at the bottom, or where it counts from', () => {
    const heights = (from: string): number[] => {
      const plan = planFrom(`racks: {tall: {units: 3, numbered-from: ${from}}}\n`);
      return rack(plan, 'tall')
        .words.filter(({ text }) => /^\d$/.test(text))
        .sort((a, b) => a.top - b.top)
        .map(({ text }) => Number(text));
    };
    assert.deepEqual(heights('bottom'), [3, 3, 2, 2, 1, 1]);
    assert.deepEqual(heights('top'), [1, 1, 2, 2, 3, 3]);
  });

  it('marks what has no room by a sign', () => {
    const plan = planOf(readSite('samples/first-draft').folder.site());
    const core = rack(plan, 'cupboard').things.find(({ at }) => at === 'core');
    assert.ok(core?.looks.has('bad') && core.texts.some((text) => text.startsWith('▲')));
  });
});

describe('the watts of a rack', () => {
  const SITE = `
racks: {cupboard: {units: 6}}
devices:
  core: {kind: switch, power: {at-most: 24 W}, rack: cupboard, unit: 5}
  nas: {kind: server, rack: cupboard, unit: 1}
  lamp: {kind: computer, power: {at-most: 40 W}}
`;

  // By hand: of what is in the rack one says 24 W, and the other nothing.
  it('are what its devices say, and what does not say so is reported', () => {
    const { description, things } = rack(planFrom(SITE), 'cupboard');
    assert.match(description, /24 W of heat \+ \?/);
    assert.ok(things.find(({ at }) => at === 'core')?.texts.some((text) => text === 'switch · 24 W'));
    assert.ok(!things.find(({ at }) => at === 'nas')?.texts.some((text) => text.includes(' W')));
  });

  it('are not there where the site says nothing of them', () => {
    const silent = SITE.replace(/, power: \{at-most: \d+ W\}/g, '');
    assert.doesNotMatch(rack(planFrom(silent), 'cupboard').description, /heat/);
  });
});

describe('a picture of a patch panel', () => {
  it('has each port once, with what its cable runs to, and the others free', () => {
    const plan = planOf(readSite('samples/harrow-lane').folder.site());
    const { things, description } = panel(plan, 'panel-a');
    const ports = things.filter(({ names }) => names === 'ports');
    assert.deepEqual(
      ports.map(({ at }) => at),
      Array.from({ length: 24 }, (_, index) => `panel-a/${index + 1}`),
    );
    // Source: samples/harrow-lane, read by eye.
    assert.deepEqual(ports[9]?.texts, ['10', 'office-pc', 'core/10', 'house']);
    assert.deepEqual(ports[11]?.texts, ['12', 'free']);
    const cabled = new Set(
      plan.site.cables.flatMap(({ through }) =>
        through.flatMap(({ device, port }) => (device === 'panel-a' ? [`${device}/${port}`] : [])),
      ),
    );
    for (const { at, texts } of ports) assert.equal(texts.includes('free'), !cabled.has(at), at);
    assert.match(description, new RegExp(`24 ports, ${24 - cabled.size} free`));
  });

  it('counts ports along the rows or down the columns', () => {
    const at = (order: string): string[] => {
      const plan = planFrom(`devices: {p: {kind: patch-panel, rows: 2, order: ${order}, ports: {1-6: {}}}}\n`);
      return panel(plan, 'p')
        .words.filter(({ text }) => /^\d$/.test(text))
        .sort((a, b) => a.top - b.top || a.left - b.left)
        .map(({ text }) => text);
    };
    assert.deepEqual(at('by-row'), ['1', '2', '3', '4', '5', '6']);
    assert.deepEqual(at('by-column'), ['1', '3', '5', '2', '4', '6']);
  });

  it('has no box over another, and each label in its box, of any size', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 100 }),
        fc.integer({ min: 1, max: 4 }),
        fc.constantFrom('by-row', 'by-column'),
        fc.stringMatching(/^[a-z]{1,40}$/),
        (ports, rows, order, name) => {
          const plan = planFrom(
            `devices:\n  ${name}: {kind: patch-panel, rows: ${rows}, order: ${order}, ports: {1-${ports}: {}}}\n` +
              `  sw: {kind: switch, ports: {1-${ports}: {}}}\n  far-${name}: {kind: camera}\n` +
              `cables:\n  - {from: far-${name}, to: sw/${ports}, through: [${name}/${ports}], label: "${name}"}\n`,
          );
          const drawn = panel(plan, name);
          assert.deepEqual(faults(drawn), []);
          assert.equal(drawn.things.filter(({ names }) => names === 'ports').length, ports);
        },
      ),
      { numRuns: 60 },
    );
  });

  // Source: IEC 60297-3-100: 450 mm between the posts; 24 ports share them.
  it('is printed as large as it is', () => {
    const plan = planOf(readSite('samples/harrow-lane').folder.site());
    const drawing = panelPorts.draw(plan, 'panel-a', USUAL_OPTIONS);
    assert.match(svgFile(drawing), new RegExp(`@media print \\{ \\.drawing\\.w\\d+ \\{ width: ${drawing.paper}mm`));
    const [first, second] = picture(svgFile(drawing)).boxes;
    assert.ok(first && second && drawing.paper !== undefined);
    assert.equal(((second.left - first.left) * drawing.paper) / drawing.width, 450 / 24);
  });
});
