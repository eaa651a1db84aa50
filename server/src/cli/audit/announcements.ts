import { Command, InvalidArgumentError } from 'commander';
import { auditAnnouncements } from '../../audit/announcements/audit.ts';
import { heardIn } from '../../machine/capture.ts';
import { reading } from '../../machine/input.ts';
import { planOf } from '../../plan.ts';
import { SAP_BANDWIDTH, SAP_INTERVAL } from '../../standards/sap.ts';
import { progress, progressDone } from '../progress.ts';
import { readSite } from '../sites.ts';
import { type PrintOptions, failOnOption, formatOption, printAudit } from './print.ts';

interface Given extends PrintOptions {
  readonly site: string;
  readonly bandwidth: number;
  readonly atLeast: number;
}

export function announcementsCommand(): Command {
  return new Command('announcements')
    .description('Compare a capture of announcements (SAP) with the multicast streams.')
    .argument('<FILE>', 'a capture as tcpdump or tshark writes it, pcap or pcapng; - for standard input')
    .option('--site <folder>', 'the folder of the site', '.')
    .option('--bandwidth <bit/s>', 'the limit that the announcers share', positive, SAP_BANDWIDTH)
    .option('--at-least <seconds>', 'the shortest interval that the announcers keep', positive, SAP_INTERVAL)
    .addOption(formatOption())
    .addOption(failOnOption())
    .addHelpText(
      'after',
      `
On a host in the network of the streams, for ten minutes. A switch sends it announcements only where it has joined their
group, as the first command makes it, until the machine starts again. The queries of IGMP show how long the capture lasts:
  ip address add 239.195.255.255/32 dev eth0 autojoin
  timeout 600 tcpdump -i eth0 -w announcements.pcap igmp or udp port 9875

Examples:
  plumbline audit announcements announcements.pcap --site samples/harrow-lane
  tcpdump -r long.pcapng -w - udp port 9875 | plumbline audit announcements -`,
    )
    .action(async (file: string, given: Given) => {
      const site = readSite(given.site);
      const heard = await heardIn(file, { progress }, file === '-' ? process.stdin : undefined);
      progressDone();
      const pace = { bandwidth: given.bandwidth, leastInterval: given.atLeast };
      const audited = await reading(file, () =>
        Promise.resolve(auditAnnouncements(planOf(site.folder.site()), heard, heard.end(), pace)),
      );
      process.exitCode = printAudit(site, audited, given);
    });
}

function positive(text: string): number {
  const value = Number(text);
  if (!(value > 0 && value < 1e9)) throw new InvalidArgumentError('It is a number above 0.');
  return value;
}
