// Every figure of a picture is that of the report: of each kind, on all samples and houses. Read back from the SVG, and
// held against what `plumbline report --format json` prints, which the pictures do not ask.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { readSite } from '../../server/src/cli/sites.ts';
import { type DrawingKind, USUAL_OPTIONS, subjectsOf } from '../../server/src/draw/drawing.ts';
import { aerialSystem } from '../../server/src/draw/aerial.ts';
import { failurePicture } from '../../server/src/draw/failure.ts';
import { panelPorts } from '../../server/src/draw/panel.ts';
import { powerTree } from '../../server/src/draw/power.ts';
import { rackFronts } from '../../server/src/draw/rack.ts';
import { subnetMap } from '../../server/src/draw/subnet.ts';
import { svgFile } from '../../server/src/draw/svg.ts';
import { switchPorts } from '../../server/src/draw/switch.ts';
import { volumeFill } from '../../server/src/draw/volume.ts';
import { elementNamed } from '../../server/src/failure/element.ts';
import { failureOf } from '../../server/src/failure/failure.ts';
import { failureReport } from '../../server/src/outlook/figures.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { type Report, reportOf } from '../../server/src/report/report.ts';
import { decibels, level } from '../../server/src/text/radio-words.ts';
import { bitRate, bytes, percent, runtime } from '../../server/src/text/words.ts';
import { houses } from '../houses/read.ts';
import { planFrom } from '../report/paddock.ts';
import { type Picture, type PictureThing, picture } from './picture.ts';

interface House {
  readonly name: string;
  readonly plan: Plan;
  readonly report: Report;
}

const ALL: readonly House[] = [
  ...['harrow-lane', 'first-draft', 'cottages'].map(
    (name) => [name, planOf(readSite(`samples/${name}`).folder.site())] as const,
  ),
  ...[...houses].map(([name, text]) => [name, planFrom(text)] as const),
].map(([name, plan]) => ({ name, plan, report: reportOf(plan) }));

/** Of every house, each picture of a kind; there are some. */
function eachOf(
  kind: DrawingKind,
  look: (house: House, subject: string, seen: Picture) => void,
  most: (house: House) => number = () => Infinity,
): void {
  let count = 0;
  for (const house of ALL)
    for (const subject of subjectsOf(kind, house.plan).slice(0, most(house))) {
      look(house, subject, picture(svgFile(kind.draw(house.plan, subject, USUAL_OPTIONS))));
      count++;
    }
  assert.ok(count > 2, `${kind.kind}: ${count} pictures`);
}

function thingsOf({ things }: Picture, names: string): PictureThing[] {
  return things.filter((thing) => thing.names === names);
}

/** As the figure is where all is known; `?` says that a part of it is not. */
function mustBe(shown: string | undefined, wanted: string, of: string): void {
  if (shown === '?') return;
  assert.equal(shown?.replace(/ \+ \?$/, ''), wanted, of);
}

/** `19.5 W` as a number. */
function watts(text: string): number {
  return Number(/^([\d.]+) W/.exec(text)?.[1]);
}

describe('the figures of each picture are those of the report', () => {
  it('of the ports of a switch: each port once, its load both ways, and the watts of all', () => {
    eachOf(switchPorts, ({ name, plan, report }, device, seen) => {
      const ports = thingsOf(seen, 'ports');
      const own = plan.site.deviceByName.get(device)?.ports ?? [];
      assert.deepEqual(ports.map(({ at }) => at).toSorted(), own.map((port) => `${device}/${port.name}`).toSorted());
      for (const { at, texts } of ports) {
        const of = `${name}: ${at}`;
        const link = report.links.find(({ from, to }) => from === at || to === at);
        if (link === undefined) {
          // Of aggregated ports the report names one.
          if (!report.links.some(({ cables = 1, from, to }) => cables > 1 && `${from} ${to}`.includes(`${device}/`)))
            assert.ok(texts.includes('free'), of);
          continue;
        }
        assert.ok(texts.includes((link.from === at ? link.to : link.from).split('/')[0] ?? ''), of);
        if (link.blocked) {
          assert.ok(texts.includes('blocked'), of);
          continue;
        }
        const [out, into] = link.from === at ? [link.forward, link.backward] : [link.backward, link.forward];
        const words = ({ line }: typeof out): string =>
          link.capacity === null ? bitRate(line.peak) : percent(line.peak, link.capacity);
        const shown = (sign: string): string | undefined =>
          texts
            .find((text) => text.startsWith(sign))
            ?.slice(1)
            .replace(/[▲△]/, '')
            .trim();
        mustBe(shown('▸'), words(out), of);
        mustBe(shown('◂'), words(into), of);
      }
      const fed = ports.flatMap(({ texts }) => texts.filter((text) => /^PoE [\d.]+ W$/.test(text)));
      const sum = fed.reduce((total, text) => total + watts(text.slice(4)), 0);
      const poe = report.poe.find((source) => source.device === device)?.draw ?? 0;
      assert.ok(Math.abs(sum - poe) <= 0.06 * fed.length, `${name}: ${device} feeds ${sum} W, ${poe} W in the report`);
    });
  });

  it('of the addresses of a subnet: each address of the text that is in it', () => {
    let found = 0;
    eachOf(subnetMap, ({ name, plan }, vlan, seen) => {
      const shown = new Map(seen.things.map(({ label }) => [label.split(':')[0] ?? '', label]));
      const prefix = /^Addresses of \S+, ((?:\d+\.){3})\d+\/24$/.exec(seen.title)?.[1];
      if (prefix === undefined) return;
      for (const port of plan.site.ports)
        for (const address of JSON.stringify(port, ['name', 'address', 'addresses']).match(/\d+\.\d+\.\d+\.\d+/g) ?? [])
          if (address.startsWith(prefix)) {
            assert.ok(shown.get(address)?.includes(port.device.name), `${name}: ${vlan}, ${address}`);
            found++;
          }
      const text = houses.get(name);
      for (const [, device = '', address = ''] of text?.matchAll(/^ {2}([\w-]+): \{.*?\baddress: ([\d.]+)/gm) ?? [])
        if (address.startsWith(prefix)) {
          assert.ok(shown.get(address)?.includes(device), `${name}: ${vlan}, ${device} ${address}`);
          found++;
        }
    });
    assert.ok(found > 100, `${found} addresses`);
  });

  it('of a rack: what is in which unit, what is free, and the weight', () => {
    eachOf(rackFronts, ({ name, report }, rack, seen) => {
      const own = report.racks.find((one) => one.name === rack);
      assert.ok(own, name);
      const rear = seen.words.find(({ text }) => text === 'Rear')?.left ?? 0;
      const numbers = seen.words.filter(({ text, left }) => /^\d+$/.test(text) && left < rear - 40);
      const numbersIn = (top: number, bottom: number): number[] =>
        numbers.filter((one) => one.top >= top - 1 && one.bottom <= bottom + 1).map(({ text }) => Number(text));
      for (const { name: device, unit, units, side } of own.devices) {
        if (unit === null) continue;
        const box = seen.things
          .filter(({ at }) => at === device)
          .flatMap(({ boxes }) => boxes)
          .find(({ left }) => left < rear - 1 === (side === 'front'));
        assert.ok(box, `${name}: ${device}`);
        assert.deepEqual(
          numbersIn(box.top, box.bottom).toSorted((a, b) => a - b),
          Array.from({ length: units }, (_, index) => unit + index),
          `${name}: ${device}`,
        );
      }
      const frees = seen.words.filter(({ text, left }) => text === 'free' && left < rear);
      assert.deepEqual(
        frees.flatMap(({ top, bottom }) => numbersIn(top - 4, bottom + 4)).toSorted((a, b) => a - b),
        own.free.front,
        name,
      );
      if (own.weight > 0) assert.match(seen.description, new RegExp(`\\b${own.weight} kg`), name);
    });
  });

  it('of a patch panel: each port once, and those free that no cable is led through', () => {
    eachOf(panelPorts, ({ name, plan }, panel, seen) => {
      const ports = thingsOf(seen, 'ports');
      const own = plan.site.deviceByName.get(panel)?.ports ?? [];
      assert.deepEqual(ports.map(({ at }) => at).toSorted(), own.map((port) => `${panel}/${port.name}`).toSorted());
      for (const { at, texts } of ports) {
        const cables = plan.site.cables.filter((cable) =>
          [...cable.through, cable.from, cable.to].some(
            (end) => end !== undefined && `${end.device}/${end.port ?? ''}` === at,
          ),
        );
        assert.equal(texts.includes('free'), cables.length === 0, `${name}: ${at}`);
        for (const { from, to } of cables.slice(0, 1))
          for (const end of [from, to])
            if (end !== undefined && end.device !== panel)
              assert.ok(texts.join(' ').includes(end.device), `${name}: ${at} to ${end.device}`);
      }
    });
  });

  it('of a volume: what may be used, and what each recording writes a day', () => {
    eachOf(volumeFill, ({ name, report }, volume, seen) => {
      const own = report.volumes.find((one) => one.name === volume);
      assert.ok(own, name);
      if (own.usableBytes !== null && own.usableBytes > 0)
        assert.ok(
          seen.words.some(({ text }) => text === `usable ${bytes(own.usableBytes ?? 0)}`),
          `${name}: ${volume}`,
        );
      for (const { at, label } of thingsOf(seen, 'recordings')) {
        const daily: number = own.recordings[at]?.bytesPerDay ?? 0;
        const shown = /: (.+) a day/.exec(label)?.[1];
        assert.equal(shown, daily === 0 ? '?' : bytes(daily), `${name}: ${at}`);
      }
    });
  });

  it('of the aerial system: the levels and the least margin at each outlet and receiver', () => {
    eachOf(aerialSystem, ({ name, report: { rf } }, _, seen) => {
      const ends = rf.points.filter(({ place }) => place !== 'way');
      for (const at of new Set(ends.map((point) => point.at))) {
        const own = ends.filter((point) => point.at === at);
        const said = seen.things.find((thing) => thing.names === 'ports' && thing.at === at)?.texts.join(' ') ?? '';
        const margins = own.flatMap(({ margin }) => margin ?? []);
        if (margins.length === own.length)
          assert.ok(said.includes(`margin ${decibels(Math.min(...margins))}`), `${name}: ${at}: ${said}`);
        for (const of of [Math.min, Math.max])
          assert.ok(
            said.includes(level(of(...own.map((point) => point.level))).replace(' dBµV', '')),
            `${name}: ${at}: ${said}`,
          );
      }
      for (const amplifier of rf.amplifiers) {
        const said = seen.things.find(({ at }) => at === amplifier.name)?.texts.join(' ') ?? '';
        if (amplifier.headroom !== null)
          assert.ok(said.includes(decibels(Math.abs(amplifier.headroom))), `${name}: ${amplifier.name}: ${said}`);
      }
    });
  });

  it('of power: the watts of each device, how long it lasts, and the load of each UPS', () => {
    eachOf(powerTree, ({ name, report: { power } }, _, seen) => {
      if (power === null) return;
      const lasting = power.ups.length > 0;
      for (const { device, taken, lasts, own } of power.devices) {
        const rows = seen.things.filter(({ at }) => at === device);
        assert.ok(rows.length > 0, `${name}: ${device}`);
        const [row] = rows;
        const figure = row?.texts[1] ?? '';
        if (figure === 'not said') assert.deepEqual([own, taken.most], [null, 0], `${name}: ${device}`);
        else assert.ok(Math.abs(watts(figure) - taken.most) <= taken.most / 200 + 0.01, `${name}: ${device} ${figure}`);
        const time = lasts === null ? '?' : lasts === 0 ? '✕ ends at once' : runtime(lasts * 1000);
        if (lasting) assert.equal(row?.texts[2], time, `${name}: ${device}`);
      }
      for (const ups of power.ups) {
        const box = seen.things.filter(({ at }) => at === ups.device).at(-1);
        const said = box?.texts.slice(1).join(' ') ?? '';
        assert.ok(
          Math.abs(Number(/ ([\d.]+) W/.exec(said)?.[1]) - ups.load) <= ups.load / 200 + 0.01,
          `${name}: ${said}`,
        );
        assert.ok(
          said.includes(`lasts ${ups.runtime === null ? '?' : runtime(ups.runtime * 1000)}`),
          `${name}: ${said}`,
        );
        assert.ok(said.includes(`${ups.cameras.length} of ${power.cameras.length} camera`), `${name}: ${said}`);
      }
    });
  });

  it('of what fails: what is lost, and what each standby carries then', () => {
    let standbys = 0;
    eachOf(
      failurePicture,
      ({ name, plan }, subject, seen) => {
        const element = elementNamed(plan, subject);
        assert.ok(element);
        const { dark, takesOver } = failureReport(failureOf(plan, element));
        for (const device of dark) {
          const box = seen.things.filter(({ names, at }) => names === 'devices' && at === device);
          for (const { label } of box) assert.match(label, /✕ fails$/, `${name}: ${subject}, ${device}`);
        }
        for (const { at, after, capacity } of takesOver) {
          if (capacity === null) continue;
          const ends = at.split(' → ');
          const rows = seen.things.filter(({ names, at: port }) => names === 'ports' && ends.includes(port));
          const shown = rows.flatMap(({ texts }) => texts.map((text) => text.replace(/^[▲△] | \+ \?$/g, '')));
          assert.ok(shown.includes(percent(after, capacity)), `${name}: ${subject}, ${at}`);
          standbys++;
        }
      },
      // Where nothing is blocked, nothing takes over.
      ({ report: { links } }) => (links.some(({ blocked }) => blocked) ? 6 : 1),
    );
    assert.ok(standbys > 10, `${standbys} links take over`);
  });
});
