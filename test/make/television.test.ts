/** What is made for television: the list of channels, the outlets to hold a meter against, labels of coax. */

import assert from 'node:assert/strict';
import fc from 'fast-check';
import { before, describe, it } from 'mocha';
import { channelList } from '../../server/src/make/announcements/channel-list.ts';
import { outletSchedule } from '../../server/src/make/television/outlet-schedule.ts';
import { cableLabels } from '../../server/src/make/wiring/cable-labels.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { needs } from '../availability.ts';
import { needsXmllint, validated } from './announcements/xspf.ts';
import { hostileText } from './hostile.ts';
import { fileOf, planOfData, planOfText, planOfTexts, sampleTexts } from './made.ts';
import { readCsv } from './read-csv.ts';
import { readPages } from './read-html.ts';

const harrowLane = planOfTexts(sampleTexts('harrow-lane'));

function texts(xml: string, element: string): string[] {
  return [...xml.matchAll(new RegExp(`<${element}>(.*)</${element}>`, 'g'))].map((match) => match[1] ?? '');
}

describe('make channel-list', () => {
  it('has the services that are sent as groups, with what carries them on the air', () => {
    const made = channelList.make(harrowLane);
    const xml = fileOf(made, 'channel-list.xspf');
    const sent = harrowLane.site.streams.filter(({ service, group }) => service !== undefined && group !== undefined);
    assert.deepEqual(
      texts(xml, 'title').slice(1).sort(),
      [...new Set(sent.map(({ service }) => service ?? ''))].sort(),
    );
    assert.match(xml, /<annotation>two in hill-1 \(dvb-t, 490 MHz\)<\/annotation>/);
  });

  it('takes a whole multiplex for what is not sent alone, both where it is sent twice, and notes the rest', () => {
    const made = channelList.make(
      planOfText(`
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-b: {system: dvb-t, channel: 40, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
services:
  news: {multiplex: mux-a, rate: 4 Mb/s, description: News & weather}
  film: {multiplex: mux-a, rate: 4 Mb/s}
  sport: {multiplex: mux-b, rate: 4 Mb/s}
devices:
  tv-tuner: {kind: tuner, address: 192.168.20.9}
  recorder: {kind: server, address: 192.168.20.5}
  screen: {kind: display, address: 192.168.20.61}
streams:
  tv-news: {source: tv-tuner, service: news, transport: ts-rtp, group: 239.192.30.1, port: 5004, receivers: [screen, recorder]}
  news-again: {source: recorder, carries: tv-news, transport: ts-udp, group: 239.192.30.2, port: 1234, receivers: [screen]}
  all-a: {source: tv-tuner, multiplex: mux-a, transport: ts-rtp, group: 239.192.30.3, port: 5004, receivers: [recorder]}
  tv-sport: {source: tv-tuner, service: sport, transport: ts-udp, port: 1234, receivers: [screen]}
`),
    );
    const xml = fileOf(made, 'channel-list.xspf');
    assert.deepEqual(texts(xml, 'title').slice(1), ['News &amp; weather', 'film']);
    assert.deepEqual(texts(xml, 'location'), [
      'rtp://@239.192.30.1:5004',
      'udp://@239.192.30.2:1234',
      'rtp://@239.192.30.3:5004',
    ]);
    assert.match(made.notes.join(), /no group is sent of sport/);
  });

  it('makes nothing, and refuses nothing, where there is no television', () =>
    assert.deepEqual(channelList.make(planOfText('devices: {}\n')), { files: [], refused: [], notes: [] }));

  describe('by libxml2', () => {
    before(function () {
      needsXmllint(this);
    });

    it('is valid, with the names as they are', async () => {
      const { complaints, texts: titles } = await validated(fileOf(channelList.make(harrowLane), 'channel-list.xspf'));
      assert.equal(complaints, '');
      assert.match(titles, /Harrow Lane: television/);
    });

    it('is valid whatever the site, its services and their descriptions are called', async () => {
      await fc.assert(
        fc.asyncProperty(hostileText, hostileText, async (name, description) => {
          const plan = planOfData({
            site: { name },
            multiplexes: { a: { system: 'dvb-t', channel: 46 } },
            services: { news: { multiplex: 'a', rate: '4 Mb/s', description } },
            devices: { box: { kind: 'tuner', address: '192.168.20.9' } },
            streams: {
              news: { source: 'box', service: 'news', transport: 'ts-udp', group: '239.192.20.1', port: 1234 },
            },
          });
          const { complaints } = await validated(channelList.make(plan).files[0]?.text ?? '');
          assert.equal(complaints, '');
        }),
        { numRuns: 25 },
      );
    });
  });
});

describe('make outlet-schedule', () => {
  before(function () {
    needs(this, 'python3');
  });

  it("has the report's figures of each outlet and receiver, each multiplex once", () => {
    for (const sample of ['harrow-lane', 'first-draft']) {
      const plan = planOfTexts(sampleTexts(sample));
      const [table = []] = readCsv(fileOf(outletSchedule.make(plan), 'outlet-schedule.csv'));
      const [head = [], ...rows] = table;
      const records = rows.map((row) => Object.fromEntries(head.map((name, index) => [name, row[index] ?? ''])));
      const points = reportOf(plan).rf.points.filter(({ place }) => place !== 'way');
      assert.equal(records.length, points.length);
      for (const { at, multiplex, level, margin, frequency } of points) {
        const [record, ...more] = records.filter((one) => one['At'] === at && one['Multiplex'] === multiplex);
        assert.equal(more.length, 0);
        assert.equal(record?.['Level (dBµV)'], String(Number(level.toFixed(1))), `${multiplex} at ${at}`);
        assert.equal(record['Margin (dB)'], margin === null ? '' : String(Number(margin.toFixed(1))));
        assert.equal(Number(record['Frequency on the coax (MHz)']), frequency / 1e6);
      }
    }
  });

  it('has on paper what is in cells, a place for the meter, and the cautions', () => {
    const page = fileOf(outletSchedule.make(harrowLane), 'outlet-schedule.html');
    const [read] = readPages([page]);
    assert.deepEqual(read?.headings.slice(0, 4), [
      'Outlet schedule Harrow Lane',
      'Before you begin',
      'kitchen-outlet/tv, farmhouse, kitchen',
      'kitchen-set/rf, farmhouse, kitchen',
    ]);
    assert.equal(read.rows[0]?.at(-1), 'As metered');
    // 47 dBµV at the aerial, amplifier 20, splitter 7.5, outlet 1, filter 1, inserter 0.5, earth 0.3, and coax by hand.
    const coax = (metres: number): number => ((0.66 * Math.sqrt(490) + 0.0008 * 490) * metres) / 100;
    const level = 47 + 20 - 7.5 - 1 - 1 - 0.5 - 0.3 - coax(1 + 0.5 + 12 + 17);
    assert.equal(read.rows[1]?.[5], `${level.toFixed(1)} dBµV`);
    for (const about of ['Heights', 'Lightning and earth', 'Mains', 'Current on the coax', 'Local codes'])
      assert.ok(page.includes(about), about);
  });

  it('says nothing that a spreadsheet runs, or a page shows as more than text', () => {
    // All at once, since each reading starts a program.
    fc.assert(
      fc.property(fc.array(fc.tuple(hostileText, hostileText), { minLength: 25, maxLength: 25 }), (pairs) => {
        const made = pairs.map(([name, location]) =>
          outletSchedule.make(
            planOfData({
              site: { name },
              multiplexes: { a: { 'system': 'dvb-t', 'channel': 46, 'modulation': '64qam', 'code-rate': '2/3' } },
              devices: {
                roof: { kind: 'aerial', receives: { a: '60 dBµV' } },
                parlour: { kind: 'outlet', loss: '1 dB', location },
              },
              cables: [{ from: 'roof', to: 'parlour/in', type: 'coax-6', length: '10 m' }],
            }),
          ),
        );
        for (const table of readCsv(...made.map((one) => fileOf(one, 'outlet-schedule.csv'))))
          for (const cell of table.flat()) assert.doesNotMatch(cell, /^[=+@\t\r]/);
        for (const { tags } of readPages(made.map((one) => fileOf(one, 'outlet-schedule.html'))))
          assert.ok(tags.every((tag) => !['script', 'img', 'iframe', 'a'].includes(tag)));
      }),
      { numRuns: 2 },
    );
  });
});

describe('make cable-labels', () => {
  it('has two labels for each coax, with the inserters that it is led through', () => {
    const csv = fileOf(cableLabels.make(harrowLane), 'cable-labels.csv');
    assert.match(csv, /^T-03,mast-amp\/out,loft-splitter\/in,aerial-earth; loft-supply,/m);
    assert.match(csv, /^T-03,loft-splitter\/in,mast-amp\/out,loft-supply; aerial-earth,/m);
  });
});
