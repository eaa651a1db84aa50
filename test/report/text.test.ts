// The report for people: as tables on a terminal, and as a page.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { reportHtml } from '../../server/src/report/html.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { reportText } from '../../server/src/report/text.ts';
import { PADDOCK, planFrom } from './paddock.ts';

describe('the report as text', () => {
  it('has links, streams, volumes and power in columns', () => {
    assert.equal(
      reportText(reportOf(planFrom(PADDOCK))),
      `Harrow Lane

Links (line rate, with preamble and gaps)
  from       to                  speed    nominal              peak         streams
  core/1  →  paddock-cam/eth  100 Mb/s   228 kb/s  0.2 %   322 kb/s  0.3 %        1
          ←                             6.56 Mb/s  6.6 %  9.78 Mb/s  9.8 %        1
  core/2  →  recorder/cams      1 Gb/s  6.56 Mb/s  0.7 %  9.78 Mb/s    1 %        1
          ←                              6.7 Mb/s  0.7 %  9.96 Mb/s    1 %        2

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
  device    draw  budget
  core    15.4 W   130 W  12 %
`,
    );
  });

  it('says so where a site has no name and nothing else', () => {
    assert.equal(reportText(reportOf(planFrom(''))), 'Site without a name\n');
  });

  it('sends no control characters to the terminal', () => {
    assert.doesNotMatch(reportText(reportOf(planFrom('site: {name: "\\e[31mred\\a"}'))), /[^\P{Cc}\n]/u);
  });
});

describe('the report as a page', () => {
  it('needs nothing from anywhere, and runs nothing', () => {
    const page = reportHtml(reportOf(planFrom(PADDOCK)));
    assert.doesNotMatch(page, /<script|<link|<img|<iframe|@import|url\(|https?:|\son\w+=/i);
    assert.match(page, /default-src 'none'/);
  });

  it('has the figures, and is light or dark as the reader has it', () => {
    const page = reportHtml(reportOf(planFrom(PADDOCK)));
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

  it('shows text of the site as it is', () => {
    const page = reportHtml(
      reportOf(
        planFrom(`
site: {name: "</title><script>alert(1)</script>"}
volumes: {"\\"><img src=x>": {}, "a'b&c": {}}
`),
      ),
    );
    assert.doesNotMatch(page, /<script|<img/);
    assert.match(page, /<title>&#60;\/title&#62;&#60;script&#62;/);
    assert.match(page, /a&#39;b&#38;c/);
  });
});
