import { placeOf } from '../../site/item.ts';
import type { BusLoad } from '../../television/usb.ts';
import { bitRate, few, percent, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const usbLoad: Rule = {
  id: 'usb-load',
  severity: 'error',
  summary: 'Tuners on one USB controller send more than it carries.',
  why: `All that is plugged into one controller shares it, hubs included. A full one loses packets without an error
message, and pictures break up on all tuners of it. Plug one into another controller, or have the tuner send single
services instead of whole multiplexes. \`usable\` says what a controller carries where it is known. Where only peaks
exceed it, it is a warning.`,
  source: 'USB 2.0 §5.8.4, 425.984 Mb/s at most, by a training page; what hosts sustain is common practice',
  check({ plan }: RuleContext, report: Report): void {
    for (const load of plan.television.buses) {
      if (load.peak <= load.usable) continue;
      const { host, bus, usable, nominal, peak, shares } = load;
      const isFull = nominal > usable;
      report({
        at: placeOf(host.item, ['buses', bus.name], 'key'),
        severity: isFull ? 'error' : 'warning',
        message:
          `The streams of ${few(namesOf(load))} take ${bitRate(isFull ? nominal : peak)}${isFull ? '' : ' at peak'} of ${asName(bus.name)} of ` +
          `${asName(host.name)}, ${percent(isFull ? nominal : peak, usable)} of the ${bitRate(usable)} that it carries: ` +
          'packets get lost. Plug a tuner into another controller, or send fewer services.',
        acceptAt: [host.name, ...namesOf(load)],
        related: shares.map(({ tuner, nominal: own }) => ({
          at: placeOf(tuner.item, ['bus']),
          message: `${asName(tuner.name)} puts ${bitRate(own)} on it`,
        })),
      });
    }
  },
};

function namesOf({ shares }: BusLoad): string[] {
  return shares.map(({ tuner }) => tuner.name);
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t2, channel: 21, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
  mux-b: {system: dvb-t2, channel: 24, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
devices:
  recorder: {kind: server, address: 192.168.20.5, buses: {usb-a: {kind: usb-2, usable: 60 Mb/s}}}
#                                                         ^^^^^ The streams of stick-1 and stick-2 take 80.4 Mb/s of usb-a of recorder, 134 % of the 60 Mb/s that it carries
  stick-1: {kind: tuner, host: recorder, bus: usb-a, tuners: {1: {systems: [dvb-t2]}}}
  stick-2: {kind: tuner, host: recorder, bus: usb-a, tuners: {1: {systems: [dvb-t2]}}}
streams:
  all-a: {source: stick-1, multiplex: mux-a, transport: ts-rtp, group: 239.192.30.1, port: 5004, receivers: [recorder]}
  all-b: {source: stick-2, multiplex: mux-b, transport: ts-rtp, group: 239.192.30.2, port: 5004, receivers: [recorder]}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t2, channel: 21, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
  mux-b: {system: dvb-t2, channel: 24, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
services:
  news: {multiplex: mux-a, rate: 4.2 Mb/s, peak-rate: 7 Mb/s}
devices:
  recorder: {kind: server, address: 192.168.20.5, buses: {usb-a: {kind: usb-2, usable: 60 Mb/s}}}
  stick-1: {kind: tuner, host: recorder, bus: usb-a, tuners: {1: {systems: [dvb-t2]}}}
  stick-2: {kind: tuner, host: recorder, bus: usb-a, tuners: {1: {systems: [dvb-t2]}}}
streams:
  tv-news: {source: stick-1, service: news, transport: ts-rtp, group: 239.192.30.1, port: 5004, receivers: [recorder]}
  all-b: {source: stick-2, multiplex: mux-b, transport: ts-rtp, group: 239.192.30.2, port: 5004, receivers: [recorder]}
`,
  },
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t2, channel: 21, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
services:
  news: {multiplex: mux-a, rate: 4.2 Mb/s, peak-rate: 12 Mb/s}
devices:
  recorder: {kind: server, address: 192.168.20.5, buses: {usb-a: {kind: usb-2, usable: 10 Mb/s}}}
#                                                         ^^^^^ The streams of stick-1 take 12 Mb/s at peak of usb-a of recorder, 120 %
  stick-1: {kind: tuner, host: recorder, bus: usb-a, tuners: {1: {systems: [dvb-t2]}}}
streams:
  tv-news: {source: stick-1, service: news, transport: ts-rtp, group: 239.192.30.1, port: 5004, receivers: [recorder]}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t2, channel: 21, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
services:
  news: {multiplex: mux-a, rate: 4.2 Mb/s, peak-rate: 12 Mb/s}
devices:
  recorder: {kind: server, address: 192.168.20.5, buses: {usb-a: {kind: usb-2}}}
  stick-1: {kind: tuner, host: recorder, bus: usb-a, tuners: {1: {systems: [dvb-t2]}}}
streams:
  tv-news: {source: stick-1, service: news, transport: ts-rtp, group: 239.192.30.1, port: 5004, receivers: [recorder]}
`,
  },
];
