import assert from 'node:assert/strict';
import fc from 'fast-check';
import { IfMibTable } from '../../../server/src/audit/counters/if-mib-table.ts';
import { LinkLines } from '../../../server/src/audit/counters/ip-link.ts';
import { Unreadable } from '../../../server/src/audit/unreadable.ts';
import { csvFields } from '../../../server/src/standards/csv.ts';
import { parseInstant } from '../../../server/src/standards/rfc3339.ts';
import { readingsOf } from './counted.ts';

const linux = (text: string) => readingsOf(new LinkLines(), text);
const ifMib = (text: string) => readingsOf(new IfMibTable(), text);

/** As `ip -s -j link show eth0` of iproute2 6.1 prints it. */
const ETH0 =
  '{"ifindex":2,"ifname":"eth0","flags":["BROADCAST","MULTICAST","UP","LOWER_UP"],"mtu":1500,"qdisc":"mq","operstate":"UP",' +
  '"linkmode":"DEFAULT","group":"default","txqlen":1000,"link_type":"ether","address":"02:00:00:00:20:05","broadcast":"ff:ff:ff:ff:ff:ff",' +
  '"stats64":{"rx":{"bytes":1096388639,"packets":145274,"errors":1,"dropped":20,"over_errors":0,"multicast":0},' +
  '"tx":{"bytes":9223372036854775807,"packets":145274,"errors":0,"dropped":3,"carrier_errors":0,"collisions":0}}}';

describe('Counters of Linux', () => {
  it('have a time, a name, octets without check sequence, and what was lost', () => {
    const { samples, notes } = linux(`{"time": 1767261600.25, "links": [${ETH0}, {}]}`);
    assert.equal(samples.length, 1);
    const [one] = samples;
    assert.deepEqual(notes, []);
    assert.equal(one?.time, Date.UTC(2026, 0, 1, 10) + 250);
    assert.deepEqual(one.names, ['eth0']);
    assert.deepEqual(one.received, { value: 1096388639n, bits: 64 });
    assert.deepEqual(one.sent?.bits, 64);
    assert.equal(one.withFcs, false);
    // 20 were dropped on receipt: frames that nothing on the host has asked for are among them.
    assert.deepEqual(
      [...one.lost],
      [
        ['rx errors', 1],
        ['tx errors', 0],
        ['tx dropped', 3],
      ],
    );
  });

  it('may say whose they are, and the time as RFC 3339 has it', () => {
    const { samples } = linux(`{"time": "2026-01-01T11:00:00.25+01:00", "device": "recorder", "links": [${ETH0}]}\n\n`);
    assert.deepEqual([samples[0]?.time, samples[0]?.device], [Date.UTC(2026, 0, 1, 10) + 250, 'recorder']);
  });

  it('may end in a line that is cut off, as one that is still written is', () => {
    const whole = `{"time": 1767261600, "links": [${ETH0}]}`;
    const { samples, notes } = linux(`${whole}\n${whole.slice(0, 200)}`);
    assert.equal(samples.length, 1);
    assert.match(notes.join(), /^Line 2, the last one, is cut off/);
  });

  for (const [title, text, why] of [
    ['what ip prints, without a time', `[${ETH0}]`, /^Line 1 is what ip prints, without the time .*jq -c/],
    ['a line that is cut off with more behind it', '{"time": 1\n{"time": 2}', /^Line 1 is not whole JSON/],
    ['nothing but a line that is cut off', '{"time": 17672616', /^Line 1 is not whole JSON/],
    ['no object', '"links"', /^Line 1 is no JSON object/],
    ['no time', `{"links": [${ETH0}]}`, /^Line 1: there is no time\. Write it as/],
    ['milliseconds', `{"time": 1767261600000, "links": []}`, /the time is 1767261600000/],
    ['a time without offset', `{"time": "2026-01-01T11:00:00", "links": []}`, /offset from UTC/],
    ['no links', '{"time": 1767261600}', /links is not the list/],
    ['links of numbers', '{"time": 1767261600, "links": [7]}', /a link is no object/],
    [
      'statistics of text',
      '{"time": 1767261600, "links": [{"ifname": "eth0", "stats64": "much"}]}',
      /statistics of eth0 have no rx and tx/,
    ],
    [
      'half a byte',
      `{"time": 1767261600, "links": [${ETH0.replace('1096388639', '0.5')}]}`,
      /bytes of eth0 is no whole number/,
    ],
    [
      'less than nothing',
      `{"time": 1767261600, "links": [${ETH0.replace('1096388639', '-5')}]}`,
      /bytes of eth0 is no whole number/,
    ],
    ['a device that is a list', '{"time": 1767261600, "device": ["a"], "links": []}', /device is no text/],
  ] as const) {
    it(`are not ${title}`, () =>
      assert.throws(
        () => linux(text),
        (error) => error instanceof Unreadable && why.test(error.message),
      ));
  }

  it('of names that every object knows are names like others', () => {
    const names = ['__proto__', 'constructor', 'toString', '\u001b[31mred'];
    const links = names.map((name) => ETH0.replace('"eth0"', JSON.stringify(name)));
    const { samples } = linux(`{"time": 1767261600, "__proto__": {"device": "x"}, "links": [${links.join()}]}`);
    assert.deepEqual(
      samples.map(({ names: [name], device }) => [name, device]),
      names.map((name) => [name, undefined]),
    );
  });

  it('of any text are read or reported, and nothing else', () => {
    const values = fc.oneof(
      fc.json(),
      fc.string(),
      fc.constantFrom(ETH0, '[]', '{"links":[{"ifname":"a","stats64":{"rx":{},"tx":{}}}],"time":1767261600}'),
    );
    fc.assert(fc.property(fc.array(values), (lines) => tolerates(() => linux(lines.join('\n')))));
  });
});

describe('Values of the Interfaces MIB', () => {
  it('have the names of the MIB, in any order', () => {
    const { samples } = ifMib(
      'ifHCOutOctets,time,ifHighSpeed,ifName,note,ifHCInOctets,device,sysUpTime,ifInDiscards\n18446744073709551615,2026-03-01T12:00:00Z,1000,"Gi 1/0/5","a, b",5,core,4711,6\n',
    );
    const [one] = samples;
    assert.deepEqual(
      [one?.time, one?.device, one?.names, one?.speed, one?.upTime],
      [Date.UTC(2026, 2, 1, 12), 'core', ['Gi 1/0/5'], 1e9, 4711],
    );
    assert.deepEqual(
      [one?.received, one?.sent],
      [
        { value: 5n, bits: 64 },
        { value: (1n << 64n) - 1n, bits: 64 },
      ],
    );
    assert.deepEqual([...(one?.lost ?? [])], [['ifInDiscards', 6]]);
    assert.equal(one?.withFcs, true);
  });

  it('of 32 bits are taken where there are none of 64', () => {
    const { samples } = ifMib(
      'time,ifName,ifDescr,ifInOctets,ifHCInOctets,ifSpeed\r\n1772366400,5,port 5,77,,4294967295\r\n1772366410,5,,,99,100000000\r\n',
    );
    assert.deepEqual(
      samples.map(({ received }) => received),
      [
        { value: 77n, bits: 32 },
        { value: 99n, bits: 64 },
      ],
    );
    assert.deepEqual(
      samples.map(({ names }) => names),
      [['5', 'port 5'], ['5']],
    );
    // ifSpeed of 4,294,967,295 says no more than that it is faster (RFC 2863, from memory).
    assert.deepEqual(
      samples.map(({ speed }) => speed),
      [undefined, 1e8],
    );
  });

  for (const [title, text, why] of [
    ['another table', 'when,port,bytes\n', /does not name time, nor ifName or ifDescr, nor ifHCInOctets/],
    ['a picture', '\u0089PNG\u001a\n', /does not name time.*begins with \ufffdPNG/],
    ['a name twice', 'time,ifName,ifName,ifInOctets\n', /names ifName twice/],
    ['a short row', 'time,ifName,ifInOctets\n1772366400,5\n', /Line 2 has 2 fields, and the first line 3/],
    ['an open quote', 'time,ifName,ifInOctets\n1772366400,"5,7\n', /Line 2: a quotation mark is not closed/],
    [
      'no number',
      'time,ifName,ifInOctets\n1772366400,5,No Such Instance\n',
      /ifInOctets is No Such Instance, no whole number of 32 bits/,
    ],
    ['too much for 32 bits', 'time,ifName,ifInOctets\n1772366400,5,4294967296\n', /no whole number of 32 bits/],
    [
      'too much for 64 bits',
      'time,ifName,ifHCInOctets\n1772366400,5,18446744073709551616\n',
      /no whole number of 64 bits/,
    ],
    ['no interface', 'time,ifName,ifInOctets\n1772366400,,5\n', /Line 2 names no interface/],
    ['no time', 'time,ifName,ifInOctets\nnoon,5,5\n', /Line 2: the time is noon/],
  ] as const) {
    it(`are not ${title}`, () =>
      assert.throws(
        () => ifMib(text),
        (error) => error instanceof Unreadable && why.test(error.message),
      ));
  }

  it('of any text are read or reported, and nothing else', () => {
    const cell = fc.oneof(fc.constantFrom('1772366400', '5', '', '"', '4294967295', '__proto__'), fc.string());
    fc.assert(
      fc.property(fc.array(fc.array(cell, { minLength: 3, maxLength: 3 })), (rows) =>
        tolerates(() => ifMib(`time,ifName,ifInOctets\n${rows.map((row) => row.join()).join('\n')}`)),
      ),
    );
  });
});

function tolerates(read: () => unknown): void {
  try {
    read();
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
  }
}

describe('Comma-separated values (RFC 4180 §2)', () => {
  // The examples of §2.5 to §2.7, read.
  it('are cut at commas outside of quotes', () => {
    assert.deepEqual(csvFields('"aaa","bbb","ccc"'), ['aaa', 'bbb', 'ccc']);
    assert.deepEqual(csvFields('"aaa","b""bb",ccc'), ['aaa', 'b"bb', 'ccc']);
    assert.deepEqual(csvFields('zzz,,"y,y"'), ['zzz', '', 'y,y']);
    assert.deepEqual(csvFields('zzz,'), ['zzz', '']);
    assert.deepEqual(csvFields(''), ['']);
  });
  it('have quotes that are closed', () =>
    assert.deepEqual([csvFields('"a'), csvFields('"a"b'), csvFields('x,"')], [undefined, undefined, undefined]));
});

describe('A time of RFC 3339', () => {
  // The examples of §5.8, read; their instants by the JavaScript engine.
  for (const text of ['1985-04-12T23:20:50.52Z', '1996-12-19T16:39:57-08:00', '1937-01-01T12:00:27.87+00:20'])
    it(text, () => assert.equal(parseInstant(text), Date.parse(text)));
  for (const text of [
    '2026-02-30T00:00:00Z',
    '2026-03-01T24:00:00Z',
    '2026-03-01T12:00:00',
    '2026-03-01',
    '2026-03-01T12:00:00+25:00',
  ])
    it(`is not ${text}`, () => assert.equal(parseInstant(text), undefined));
});
