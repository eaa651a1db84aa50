// The ports of a switch: each once and in order, with the figures of the report.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { readSite } from '../../server/src/cli/sites.ts';
import { USUAL_OPTIONS } from '../../server/src/draw/drawing.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { switchPorts } from '../../server/src/draw/switch.ts';
import { planOf } from '../../server/src/plan.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { percent, watts } from '../../server/src/text/words.ts';
import { picture } from './picture.ts';

describe('the ports of a switch', () => {
  const plan = planOf(readSite('samples/harrow-lane').folder.site());
  const { links, poe } = reportOf(plan);

  for (const { name, ports } of plan.site.devices.filter(({ kind }) => kind === 'switch')) {
    const drawn = picture(svgFile(switchPorts.draw(plan, name, USUAL_OPTIONS))).things.filter(
      ({ names }) => names === 'ports',
    );

    it(`of ${name} are there once, in their order`, () => {
      assert.deepEqual(
        drawn.map(({ at }) => at),
        ports.map((port) => `${name}/${port.name}`),
      );
    });

    it(`of ${name} have the loads of the report, or say that they are free or blocked`, () => {
      for (const { at, texts } of drawn) {
        const link = links.find(({ from, to }) => from === at || to === at);
        if (link === undefined) assert.ok(texts.includes('free'), at);
        else if (link.blocked) assert.ok(texts.includes('blocked'), at);
        else {
          const [out, into] = link.from === at ? [link.forward, link.backward] : [link.backward, link.forward];
          assert.deepEqual(
            texts.slice(-2).map((text) => text.replace(/ ?[▲△]?$/, '').trim()),
            [`▸ ${percent(out.line.peak, link.capacity ?? 0)}`, `◂ ${percent(into.line.peak, link.capacity ?? 0)}`],
            at,
          );
        }
      }
    });

    it(`of ${name} feed together what the report says`, () => {
      const fed = drawn.flatMap(({ texts }) => texts.flatMap((text) => /^PoE ([\d.]+) W$/.exec(text)?.[1] ?? []));
      const draw = fed.reduce((sum, each) => sum + Number(each) * 1000, 0);
      assert.equal(watts(draw), `${poe.find(({ device }) => device === name)?.draw} W`);
    });
  }
});
