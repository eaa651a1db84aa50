// The report for people: as tables on a terminal, and as a page.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { placeOfName } from '../../server/src/features/place-of-name.ts';
import { reportHtml } from '../../server/src/report/html.ts';
import { asButton } from '../../server/src/report/page/cells.ts';
import { reportText } from '../../server/src/report/text.ts';
import { PADDOCK, planFrom } from './paddock.ts';

const ERROR = { severity: 'error', message: 'It breaks & burns.', where: 'site.site.yaml:3' } as const;
const WARNING = { severity: 'warning', message: 'It is near.', where: 'site.site.yaml:9' } as const;

/** A stream without a rate, on a link, on a volume and beside one that has a rate. */
const UNKNOWN = `
devices: {cam: {kind: camera, speed: 100 Mb/s}, pc: {kind: server, ports: {1: {speed: 100 Mb/s}, 2: {}}}, tv: {kind: display}}
cables: [{from: cam, to: pc/1}, {from: pc/2, to: tv}]
streams:
  known: {source: cam, transport: rtp, port: 5004, video: {bitrate: 6 Mb/s}, receivers: [pc]}
  unsaid: {source: cam, transport: rtp, port: 5006, video: {codec: h264}, receivers: [pc]}
volumes: {v: {host: pc}}
recordings: {r: {stream: unsaid, volume: v, keep: 2 d}, k: {stream: known, volume: v, keep: 2 d}}
`;

describe('the report as text', () => {
  it('has links, streams, volumes and power in columns', () => {
    assert.equal(
      reportText(planFrom(PADDOCK), [ERROR, WARNING]),
      `Harrow Lane: 1 error, 1 warning

The tightest (▲ over its limit, △ over what the site warns at)
  where            what                 at peak                of it  limit
  archive          room                 922 GB of 7.6 TB        12 %   90 %
  core             power over Ethernet  15.4 W of 130 W         12 %  100 %
  paddock-cam/eth  to core/1            9.78 Mb/s of 100 Mb/s  9.8 %   90 %
  recorder/cams    to core/2            9.96 Mb/s of 1 Gb/s      1 %   90 %
  core/2           to recorder/cams     9.78 Mb/s of 1 Gb/s      1 %   90 %

Links (line rate, with preamble and gaps)
  from    way  to                  speed    nominal  of it       peak  of it  streams
  core/1  →    paddock-cam/eth  100 Mb/s   228 kb/s  0.2 %   322 kb/s  0.3 %        1
          ←                               6.56 Mb/s  6.6 %  9.78 Mb/s  9.8 %        1
  core/2  →    recorder/cams      1 Gb/s  6.56 Mb/s  0.7 %  9.78 Mb/s    1 %        1
          ←                                6.7 Mb/s  0.7 %  9.96 Mb/s    1 %        2

Streams (line rate without a VLAN tag, one copy)
  stream        group          MAC                  nominal       peak  reaches
  paddock       unicast                           6.56 Mb/s  9.78 Mb/s  recorder
  paddock-live  239.192.20.31  01:00:5e:40:14:1f  6.47 Mb/s  9.63 Mb/s  recorder

  paddock-live does not reach kitchen-screen: kitchen-screen has no cable that carries a network; cable kitchen-screen to a switch

Volumes
  volume, recordings  usable    a day    kept  full after
  archive             7.6 TB  65.8 GB               115 d
    paddock                   65.8 GB  922 GB

Power over Ethernet (set aside at the switch)
  device    draw  budget  of it
  core    15.4 W   130 W   12 %
`,
    );
  });

  it('says so where a site has no name and nothing else', () => {
    assert.equal(reportText(planFrom(''), []), 'Site without a name: No errors or warnings\n');
  });

  it('has a question mark, and never 0, for what the site does not say', () => {
    const text = reportText(planFrom(UNKNOWN), []);
    // 6 Mb/s in packets of 1400 B, each 1478 B on the line (IEEE 802.3 as in RFC 5180 App. A.1).
    assert.match(
      text,
      /^ +cam\/eth +→ +pc\/1 +100 Mb\/s +6\.34 Mb\/s \+ \? +6\.3 % \+ \? +6\.34 Mb\/s \+ \? +6\.3 % \+ \? +2$/m,
    );
    assert.match(text, /^ +pc\/2 +→ +tv\/eth +\? +0 b\/s +\? /m);
    assert.match(text, /^ +unsaid +unicast +\? +\? +pc$/m);
    assert.match(text, /^ +v +\? +64\.8 GB \+ \? +\?$/m);
    assert.match(text, /^ +r +\? +\?$/m);
  });

  it('sends no control characters to the terminal', () => {
    assert.doesNotMatch(reportText(planFrom('site: {name: "\\e[31mred\\a"}'), []), /[^\P{Cc}\n]/u);
  });
});

describe('the report as a page', () => {
  it('needs nothing from anywhere, and runs nothing', () => {
    const page = reportHtml(planFrom(PADDOCK), [ERROR]);
    assert.doesNotMatch(page, /<script|<link|<img|<iframe|@import|url\(|https?:|\son\w+=/i);
    assert.match(page, /default-src 'none'/);
  });

  it('has the figures, and is light or dark as the reader has it', () => {
    const page = reportHtml(planFrom(PADDOCK), [ERROR]);
    for (const part of [
      '9.78 Mb/s',
      '01:00:5e:40:14:1f',
      '115 d',
      '15.4 W',
      'color-scheme: light dark',
      '@media print',
    ])
      assert.ok(page.includes(part), part);
  });

  it('begins with the verdict and the five tightest things, then what is wrong', () => {
    const page = reportHtml(planFrom(PADDOCK), [ERROR, WARNING]);
    const heads = [...page.matchAll(/<h1>(.*?)<|class="verdict">(.*?)<|<h2>(.*?)</g)].map(([, a, b, c]) => a ?? b ?? c);
    assert.deepEqual(heads.slice(0, 5), [
      'Harrow Lane',
      '✗ 1 error, 1 warning',
      'The tightest',
      'Errors and warnings',
      'Links',
    ]);
    assert.equal(page.split('<h2>')[1]?.match(/<tr>/g)?.length, 6, 'the head, and five rows');
    assert.match(page, /<b>Error<\/b> It breaks &#38; burns\. .*site\.site\.yaml:3/);
  });

  it('has a heading for each column of each table', () => {
    for (const site of [PADDOCK, UNKNOWN]) {
      const page = reportHtml(planFrom(site), []);
      const tables = page.split('<table>').slice(1);
      assert.ok(tables.length > 3);
      for (const one of tables) {
        const heads = [...one.matchAll(/<th [^>]*>(.*?)<\/th>/g)].map(([, head]) => head);
        assert.ok(
          heads.every((head) => head !== ''),
          one,
        );
        for (const [row] of one.matchAll(/<tr[^>]*><td.*?<\/tr>/g))
          assert.equal(row.match(/<td/g)?.length, heads.length);
      }
    }
  });

  it('has a question mark, and never 0, for what the site does not say', () => {
    const page = reportHtml(planFrom(UNKNOWN), []);
    const row = (name: string): string[] => {
      const found = [...page.matchAll(/<tr[^>]*>(<td.*?)<\/tr>/g)]
        .map(([, cells = '']) => cells)
        .find((cells) => cells.includes(`>${name}</td>`));
      return [...(found ?? '').matchAll(/<td[^>]*>(.*?)<\/td>/g)].map(([, cell = '']) => cell.replace(/<[^>]*>/g, ''));
    };
    assert.deepEqual(row('unsaid').slice(3, 5), ['?', '?']);
    assert.deepEqual(row('cam/eth → pc/1').slice(2, 5), ['6.34 Mb/s + ?', '6.34 Mb/s + ?', '6.3 % + ?']);
    assert.deepEqual(row('pc/2 → tv/eth').slice(1), ['?', '0 b/s', '0 b/s', '?', '']);
    assert.deepEqual(row('r').slice(1), ['', '?', '?', '?', '']);
    assert.deepEqual(row('v').slice(1), ['?', '64.8 GB + ?', '130 GB + ?', '?', '?']);
  });

  it('marks what is over its limit by a sign and weight, not by colour alone', () => {
    const page = reportHtml(
      planFrom(
        PADDOCK.replace('poe-budget: 130 W', 'poe-budget: 15 W').replace('speed: 100 Mb/s, poe', 'speed: 10 Mb/s, poe'),
      ),
      [],
    );
    assert.match(page, /<strong>▲ 103 %<\/strong>/);
    assert.match(page, /<strong>▲ 98 %<\/strong>/);
    assert.match(page, /▲ over the limit of 90 %, △ over 70 %/);
    assert.doesNotMatch(reportHtml(planFrom(PADDOCK), []), /<strong>|<b>△/);
  });

  it('leads from each name to its place where there is an editor, and nowhere else', () => {
    const plan = planFrom(PADDOCK);
    assert.doesNotMatch(reportHtml(plan, [ERROR]), /<button|data-name=/);
    const page = reportHtml(
      plan,
      [{ ...ERROR, target: { uri: 'file:///a b.site.yaml', line: 2, character: 4 } }],
      asButton,
    );
    assert.match(page, /data-uri="file:\/\/\/a b\.site\.yaml" data-line="2" data-character="4"/);
    const named = [...page.matchAll(/data-names="(\w+)" data-name="([^"]+)"/g)].map(([, names = '', name = '']) => ({
      names,
      name,
    }));
    assert.ok(new Set(named.map(({ names }) => names)).size >= 4);
    for (const { names, name } of named)
      assert.ok(placeOfName(plan.site, names, name) !== undefined, `${names} ${name}`);
    assert.equal(placeOfName(plan.site, 'devices', 'gone'), undefined);
    assert.equal(placeOfName(plan.site, 'toString', 'toString'), undefined);
  });

  it('shows text of the site as it is', () => {
    const page = reportHtml(
      planFrom(`
site: {name: "</title><script>alert(1)</script>"}
volumes: {"\\"><img src=x>": {}, "a'b&c": {}}
`),
      [{ ...ERROR, message: '<script>' }],
      asButton,
    );
    assert.doesNotMatch(page, /<script|<img/);
    assert.match(page, /<title>&#60;\/title&#62;&#60;script&#62;/);
    assert.match(page, /a&#39;b&#38;c/);
  });
});
