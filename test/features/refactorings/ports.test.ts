// Ranges of ports written as entries, and the other way round.
import assert from 'node:assert/strict';
import { assertSameSite, plain, refactored, titlesAt } from './refactored.ts';

const HOME = 'file:///harrow-lane/home.site.yaml';

const PORTS = (ports: string): string => `devices:
  core:
    kind: switch
    ports:
${ports}`;

describe('A range of ports', () => {
  const wide = 'Write 1-3 as an entry for each port';

  for (const [how, before, after] of [
    [
      'on a line',
      '      1-$03: {speed: 1 Gb/s}   # screens\n      4: {}\n',
      '      1: {speed: 1 Gb/s}   # screens\n      2: {speed: 1 Gb/s}   # screens\n      3: {speed: 1 Gb/s}   # screens\n      4: {}\n',
    ],
    [
      'on several lines',
      '      # in the loft\n      1-3:   # screens\n        speed: 1 G$0b/s   # all\n',
      '      # in the loft\n      1:   # screens\n        speed: 1 Gb/s   # all\n      2:   # screens\n        speed: 1 Gb/s   # all\n      3:   # screens\n        speed: 1 Gb/s   # all\n',
    ],
    ['in quotes', '      "$01-3": {}\n', '      "1": {}\n      "2": {}\n      "3": {}\n'],
  ] as const) {
    it(`${how} becomes an entry for each port, and one again`, () => {
      const texts = { [HOME]: PORTS(before) };
      const expanded = refactored(texts, wide);
      assert.equal(expanded[HOME], PORTS(after));
      assertSameSite(plain(texts), expanded);
      const at = { [HOME]: PORTS(after).replace(/(\n +"?)2/, '$1$$02') };
      const contracted = refactored(at, 'Write 1, 2 and 3 as the range 1-3');
      assert.deepEqual(contracted, plain(texts));
    });
  }

  for (const [how, before, after] of [
    [
      'on one line',
      '{0: {}, 1-$03: {speed: 1 Gb/s}, up: {}}',
      '{0: {}, 1: {speed: 1 Gb/s}, 2: {speed: 1 Gb/s}, 3: {speed: 1 Gb/s}, up: {}}',
    ],
    [
      'on lines of its own',
      '{\n    1-$03: {speed: 1 Gb/s},\n    up: {}   # to the barn\n    }',
      '{\n    1: {speed: 1 Gb/s},\n    2: {speed: 1 Gb/s},\n    3: {speed: 1 Gb/s},\n    up: {}   # to the barn\n    }',
    ],
  ] as const) {
    it(`in braces ${how} does too`, () => {
      const text = (ports: string): string => `devices:\n  core: {kind: switch, ports: ${ports}}\n`;
      const texts = { [HOME]: text(before) };
      const expanded = refactored(texts, wide);
      assert.equal(expanded[HOME], text(after));
      assertSameSite(plain(texts), expanded);
      const contracted = refactored({ [HOME]: text(after).replace('2:', '$02:') }, 'Write 1, 2 and 3 as the range 1-3');
      assert.deepEqual(contracted, plain(texts));
    });
  }

  it('gives each port the address that the range gives it, and takes them together again', () => {
    const text = (ports: string): string => `devices:\n  recorder:\n    kind: server\n    ports:\n${ports}`;
    const texts = { [HOME]: text('      1-$03: {address: 192.168.20.9, addresses: {video: "10.0.0.255"}}\n') };
    const expanded = refactored(texts, wide);
    assert.equal(
      expanded[HOME],
      text(
        [0, 1, 2]
          .map(
            (i) =>
              `      ${i + 1}: {address: 192.168.20.${9 + i}, addresses: {video: "${['10.0.0.255', '10.0.1.0', '10.0.1.1'][i]}"}}\n`,
          )
          .join(''),
      ),
    );
    assertSameSite(plain(texts), expanded);
    assert.deepEqual(
      refactored({ [HOME]: (expanded[HOME] ?? '').replace('3:', '$03:') }, 'Write 1, 2 and 3 as'),
      plain(texts),
    );
  });

  it('joins ranges that follow one another, and keys in another order', () => {
    const texts = {
      [HOME]: PORTS(
        '      1-4: {speed: 1 Gb/s, vlan: a}\n      5$0: {vlan: a, speed: 1 Gb/s}\n      7: {speed: 1 Gb/s, vlan: a}\n',
      ),
    };
    const after = refactored(texts, 'Write 1-4 and 5 as the range 1-5');
    assert.equal(after[HOME], PORTS('      1-5: {speed: 1 Gb/s, vlan: a}\n      7: {speed: 1 Gb/s, vlan: a}\n'));
    assertSameSite(plain(texts), after);
  });

  for (const [why, ports] of [
    ['holds an anchor', '      1-$03: &port {speed: 1 Gb/s}\n      4: *port\n'],
    ['takes an address from elsewhere', '      lan: &lan {address: 192.168.20.9}\n      1-$03: {<<: *lan}\n'],
    ['is no range', '      $01: {}\n'],
    ['has a port that stands in another entry too', '      1-$03: {}\n      2: {}\n'],
    ['is of more ports than anybody reads', '      1-$01000: {}\n'],
  ] as const) {
    it(`is not expanded where it ${why}`, () => {
      assert.deepEqual(
        titlesAt(PORTS(ports)).filter((title) => title.includes('each port')),
        [],
      );
    });
  }

  it('is expanded where all ports refer to the same', () => {
    const texts = {
      [HOME]: PORTS('      up: &up {speed: 1 Gb/s}\n      1-$03: {<<: *up, description: spare}\n      4-5: *up\n'),
    };
    assertSameSite(plain(texts), refactored(texts, wide));
  });

  for (const [why, ports] of [
    ['are set differently', '      1$0: {speed: 1 Gb/s}\n      2: {speed: 100 Mb/s}\n'],
    ['have comments of their own', '      1$0: {}   # gate\n      2: {}   # drive\n'],
    ['have a comment between them', '      1$0: {}\n      # the drive\n      2: {}\n'],
    ['do not follow one another', '      1$0: {}\n      3: {}\n'],
    ['have names', '      a$0: {}\n      b: {}\n'],
    [
      'hold an anchor that something needs',
      '      1$0: {speed: 1 Gb/s}\n      2: &port {speed: 1 Gb/s}\n      up: *port\n',
    ],
  ] as const) {
    it(`is not made of ports that ${why}`, () => {
      assert.deepEqual(
        titlesAt(PORTS(ports)).filter((title) => title.includes('as the range')),
        [],
      );
    });
  }
});
