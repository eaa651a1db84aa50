// The tables for paper and spreadsheets: their figures are those of the report, and nothing is left out or said twice.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { before, describe, it } from 'mocha';
import { addressPlan } from '../../../server/src/make/addresses/address-plan.ts';
import type { Made } from '../../../server/src/make/output.ts';
import { cableLabels } from '../../../server/src/make/wiring/cable-labels.ts';
import { patchSchedule } from '../../../server/src/make/wiring/patch-schedule.ts';
import { portTable } from '../../../server/src/make/wiring/port-table.ts';
import type { Plan } from '../../../server/src/plan.ts';
import { reportOf } from '../../../server/src/report/report.ts';
import { portName } from '../../../server/src/site/model.ts';
import { broadcast, parseAddress } from '../../../server/src/standards/ipv4.ts';
import { visible } from '../../../server/src/text/visible.ts';
import { entriesOf, planFrom, smallSite, textOf } from '../../properties/small-site.ts';
import { needs } from '../../availability.ts';
import { hostileText } from '../hostile.ts';
import { fileOf, planOfData, planOfText, planOfTexts, sampleTexts } from '../made.ts';
import { readCsv } from '../read-csv.ts';
import { readPages } from '../read-html.ts';

const TABLES = [portTable, patchSchedule, cableLabels, addressPlan];

type Records = Readonly<Record<string, string>>[];

/** The records of each output's CSV, by the names of the columns; all are read at once. */
function recordsOf(...all: readonly Made[]): Records[] {
  const files = all.map(({ files: own }) => own.filter(({ path }) => path.endsWith('.csv')));
  const read = readCsv(...files.flat().map(({ text }) => text));
  return files.map((own) =>
    read
      .splice(0, own.length)
      .flatMap(([head = [], ...rows]) =>
        rows.map((row) => Object.fromEntries(row.map((cell, index) => [head[index] ?? '', cell]))),
      ),
  );
}

/** What must hold of the tables of any site. */
function holds(plan: Plan): void {
  const { site } = plan;
  const report = reportOf(plan);
  const [ports = [], walk = [], labels = [], plans = []] = recordsOf(...TABLES.map((table) => table.make(plan)));
  const named = (record: Records[number]): string => `${record['Switch']}/${record['Port']}`;
  const ofSwitches = site.ports.filter(({ device }) => device.kind === 'switch').map(portName);
  assert.deepEqual(ports.map(named).sort(), [...ofSwitches].sort());
  const byPort = new Map(ports.map((record) => [named(record), record]));
  for (const { from, to, forward, backward, capacity, blocked } of report.links) {
    for (const [end, out, into] of [
      [from, forward, backward],
      [to, backward, forward],
    ] as const) {
      if (!ofSwitches.includes(end)) continue;
      const record = byPort.get(end);
      assert.equal(record?.['Peak out (bit/s)'], String(out.line.peak), end);
      assert.equal(record['Peak in (bit/s)'], String(into.line.peak), end);
      assert.equal(record['Link speed (bit/s)'], String(capacity ?? ''), end);
      assert.equal(record['Idle by spanning tree'], blocked ? 'yes' : '', end);
    }
  }
  for (const { device, draw } of report.poe) {
    const own = ports.filter((record) => record['Switch'] === device);
    if (own.length > 0)
      assert.equal(
        Number(own.reduce((sum, record) => sum + Number(record['PoE set aside (W)']), 0).toFixed(3)),
        draw,
        device,
      );
  }

  assert.equal(walk.length, site.cables.length);
  const ends = (record: Records[number], here: string, there: string): string =>
    [record[here] ?? '', record[there] ?? ''].sort().join(' – ');
  const short = (end: string): string =>
    site.deviceByName.get(end.split('/')[0] ?? '')?.ports.length === 1 ? (end.split('/')[0] ?? '') : end;
  for (const { from, to, forward, backward, capacity } of report.links) {
    const [record, ...more] = walk.filter(
      (each) => ends(each, 'From', 'To') === [short(from), short(to)].sort().join(' – '),
    );
    assert.equal(more.length, 0, `${from} – ${to}`);
    const [out, into] = record?.['From'] === short(from) ? [forward, backward] : [backward, forward];
    assert.equal(record?.['Peak from here (bit/s)'], String(out.line.peak));
    assert.equal(record['Peak to here (bit/s)'], String(into.line.peak));
    assert.equal(record['Speed (bit/s)'], String(capacity ?? ''));
  }

  assert.equal(labels.length, 2 * site.cables.length);
  assert.deepEqual(
    labels.map((each) => ends(each, 'Here', 'There')).sort(),
    [...walk, ...walk].map((each) => ends(each, 'From', 'To')).sort(),
  );

  const addresses = plans.filter(({ What }) => What !== undefined);
  assert.deepEqual(
    addresses
      .filter(({ What }) => What === 'address')
      .map(({ First = '' }) => parseAddress(First) ?? 0)
      .sort((a, b) => a - b),
    plan.network.addressUses.map(({ address }) => address).sort((a, b) => a - b),
  );
  for (const { name, subnet, pool } of site.vlans) {
    // Every address that a host may have is somebody's, in the pool or free, and no free one is anything else.
    const own = addresses
      .filter(({ VLAN }) => VLAN === name)
      .map(({ What, First = '', Last = '' }) => ({
        What,
        first: parseAddress(First) ?? 0,
        last: parseAddress(Last) ?? 0,
      }));
    assert.deepEqual(
      own.map(({ first }) => first),
      own.map(({ first }) => first).sort((a, b) => a - b),
    );
    if (subnet === undefined || subnet.prefix < 20) continue;
    for (
      let address = subnet.network + (subnet.prefix < 31 ? 1 : 0);
      address <= broadcast(subnet) - (subnet.prefix < 31 ? 1 : 0);
      address++
    ) {
      const at = own.filter(({ first, last }) => first <= address && address <= last).map(({ What }) => What);
      assert.ok(at.length > 0 && (at.length === 1 || !at.includes('free')), `${name} ${address}: ${at.join()}`);
      if (pool !== undefined && pool.first <= address && address <= pool.last) assert.ok(at.includes('pool'));
    }
  }
  const groups = plans.filter(({ Group }) => Group !== undefined);
  assert.deepEqual(
    groups.map(({ Stream = '' }) => Stream).sort(),
    site.streams
      .filter(({ group }) => group !== undefined)
      .map(({ name }) => name)
      .sort(),
  );
}

describe('tables', () => {
  before(function () {
    needs(this, 'python3');
  });

  for (const sample of ['harrow-lane', 'first-draft']) {
    it(`show the report's figures, each port and each cable once: ${sample}`, () =>
      holds(planOfTexts(sampleTexts(sample))));
  }

  it("show the report's figures, each port and each cable once: sites at random", () => {
    fc.assert(
      fc.property(smallSite(), (site) => holds(planFrom(textOf(entriesOf(site))))),
      { numRuns: 25 },
    );
  });

  it('have on paper what they have in cells', () => {
    const plan = planOfTexts(sampleTexts('harrow-lane'));
    const [ports, walk, labels, addresses] = readPages(
      ['port-table/core.html', 'patch-schedule.html', 'cable-labels.html', 'address-plan.html'].map((path, index) =>
        fileOf(TABLES[index]?.make(plan) ?? { files: [], refused: [], notes: [] }, path),
      ),
    );
    assert.deepEqual(ports?.rows[1], [
      '1',
      'cameras round the farmhouse',
      'access',
      'video (20)',
      '',
      '100 Mb/s',
      'at, 15.4 W',
      'gate-cam via panel-a/1',
      'P-01',
      'cat6, 84 m',
      '286 kb/s 0.3 %',
      '9.68 Mb/s 9.7 %',
    ]);
    assert.deepEqual(ports?.rows[8]?.slice(4, 8), ['', '100 Mb/s of 1 Gb/s', '', 'parlour-screen via panel-a/8']);
    assert.deepEqual(ports?.rows[16]?.slice(0, 5), [
      '16',
      'fibre to the stable',
      'trunk',
      '',
      'house (10), video (20), guests (30)',
    ]);
    assert.deepEqual(walk?.headings, [
      'Patch schedule Harrow Lane',
      'Before you begin',
      'farmhouse, chimney',
      'farmhouse, cupboard under the stairs',
      'farmhouse, kitchen',
      'farmhouse, loft hatch',
      'farmhouse, parlour',
      'farmhouse, south wall',
      'glasshouse, in the dry cabinet by the door',
      'stable, on the tack room wall out of reach of the hose',
    ]);
    assert.deepEqual(
      walk?.rows.find(([, label]) => label === 'P-01'),
      ['', 'P-01', 'core/1', 'panel-a/1', 'gate-cam', 'gatepost', 'cat6', '84 m', '100 Mb/s', ''],
    );
    assert.equal(labels?.labels, 72);
    assert.deepEqual(addresses?.rows[2], ['192.168.10.2', '', '', '', '', '1 free']);
    assert.deepEqual(addresses?.headings, [
      'Address plan Harrow Lane',
      'house, VLAN 10',
      'video, VLAN 20',
      'guests, VLAN 30',
      'Multicast groups',
    ]);
  });

  it('say what is planned of a port with two cables, one without a link, and one kept idle', () => {
    const plan = planOfText(`
devices:
  core: {kind: switch, spanning-tree: true, ports: {1-4: {}}}
  stable: {kind: switch, spanning-tree: true, ports: {1-2: {}}}
  gate-cam: {kind: camera}
cables:
  - {from: core/1, to: stable/1}
  - {from: core/2, to: stable/2}
  - {from: core/3, to: gate-cam}
  - {from: core/3, to: nobody}
  - {from: nobody/7, to: core/9}
`);
    const [core = [], all = [], walk = []] = recordsOf(
      portTable.make(plan, 'core'),
      portTable.make(plan),
      patchSchedule.make(plan),
    );
    assert.deepEqual(
      core.map((record) => record['Cabled to']),
      ['stable/1', 'stable/2', 'gate-cam; nobody', ''],
    );
    assert.equal(all.filter((record) => record['Idle by spanning tree'] === 'yes').length, 2);
    assert.deepEqual(
      walk.map(({ From, To }) => `${From} – ${To}`),
      ['core/1 – stable/1', 'core/2 – stable/2', 'core/3 – gate-cam', 'core/3 – nobody', 'core/9 – nobody/7'],
    );
  });

  it('caution of what the work has to do with, and defer to local codes', () => {
    const cautions = (text: string): string =>
      fileOf(patchSchedule.make(planOfText(text)), 'patch-schedule.html').replaceAll('&#39;', "'");
    const all = cautions(`
devices:
  core: {kind: switch, ports: {1: {poe: bt}, 2: {}}}
  gate-cam: {kind: camera}
  stable: {kind: switch, ports: {1: {}}}
cables: [{from: core/1, to: gate-cam, type: cat6}, {from: core/2, to: stable/1, type: os2}]
`);
    for (const about of [
      'Mains',
      'Power over Ethernet:</b> the ports so marked put up to 60 W',
      'Fibre',
      'Lightning and earth',
      'Heights',
      'Cameras',
      'Local codes and licensed practice decide',
    ])
      assert.ok(all.includes(about), about);
    const few = cautions(
      'devices: {office-pc: {kind: computer}, printer: {kind: computer}}\ncables: [{from: office-pc, to: printer, type: cat6}]\n',
    );
    for (const about of ['Power over Ethernet', 'Fibre', 'Lightning', 'Heights', 'Cameras'])
      assert.ok(!few.includes(about), about);
    assert.ok(few.includes('Mains') && few.includes('Local codes and licensed practice decide'));
  });

  it('hold hostile text as text, on paper and in cells', () => {
    const name = fc.oneof(
      { arbitrary: fc.stringMatching(/^[A-Za-z0-9_-]{1,10}$/), weight: 3 },
      hostileText,
      fc.constant('x'.repeat(200)),
    );
    const texts = fc.record({
      site: hostileText,
      description: hostileText,
      label: hostileText,
      location: hostileText,
      model: hostileText,
      device: name,
      port: name,
      vlan: name,
    });
    fc.assert(
      fc.property(fc.array(texts, { minLength: 10, maxLength: 10 }), (all) => {
        const plans = all.map(({ site, description, label, location, model, device, port, vlan }) =>
          planOfData({
            site: { name: site },
            vlans: { [vlan]: { id: 20, subnet: '192.168.20.0/24', description } },
            devices: {
              [device]: {
                kind: 'switch',
                location,
                model,
                description,
                address: '192.168.20.2',
                ports: { [port]: { vlan: 'video', description, poe: 'at' }, 2: {} },
              },
              'core': { kind: 'switch', location, model, ports: { 1: { description, poe: 'at' }, 2: {} } },
              'gate-cam': { kind: 'camera', location, address: '192.168.20.31' },
            },
            cables: [
              { from: 'core/1', to: 'gate-cam', label, description, through: ['panel-a/1'] },
              { from: 'core/2', to: `${device}/2`, label },
            ],
            streams: { live: { source: 'gate-cam', group: '239.192.20.31', port: 5004, description } },
          }),
        );
        const made = plans.flatMap((plan) => TABLES.map((table) => table.make(plan)));
        const pages = readPages(
          made
            .flatMap(({ files }) => files)
            .filter(({ path }) => path.endsWith('.html'))
            .map(({ text }) => text),
        );
        for (const { tags, attributes } of pages) {
          assert.deepEqual(
            tags.filter((tag) => !TAGS.includes(tag)),
            [],
          );
          assert.deepEqual(
            attributes.filter((each) => !/^(\w+ class|html lang|meta (charset|http-equiv|content|name))$/.test(each)),
            [],
          );
        }
        for (const { path } of made.flatMap(({ files }) => files))
          assert.match(path, /^(port-table\/[A-Za-z0-9_-]{1,200}|[a-z-]+)\.(csv|html)$/);
        const cores = plans.map((plan) => portTable.make(plan, 'core'));
        const shown = readPages(cores.map((core) => fileOf(core, 'port-table/core.html')));
        const records = recordsOf(...cores, ...plans.map((plan) => patchSchedule.make(plan)));
        all.forEach(({ description, label, device }, index) => {
          // The first of two devices of one name counts.
          if (device === 'core') return;
          const row = shown[index]?.rows.find(([first]) => first === '1');
          assert.equal(row?.[1], visible(description, 1000));
          assert.equal(row[8], visible(label, 200));
          const record = records[index]?.find(({ Port }) => Port === '1');
          assert.equal(record?.['Label']?.replace(/^'(?=[=+\-@])/, ''), visible(label, 200));
          assert.equal(records[plans.length + index]?.length, 2);
        });
      }),
      { numRuns: 8 },
    );
  });
});

const TAGS = [
  'aside',
  'b',
  'body',
  'br',
  'div',
  'h1',
  'h2',
  'head',
  'header',
  'html',
  'li',
  'meta',
  'p',
  'section',
  'small',
  'span',
  'style',
  'table',
  'tbody',
  'td',
  'th',
  'thead',
  'title',
  'tr',
  'ul',
  'wbr',
];
