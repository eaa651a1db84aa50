import { Command } from 'commander';
import { USUAL_TOLERANCE, auditProbe } from '../../audit/probe/audit.ts';
import { FFPROBE_COMMAND } from '../../audit/probe/ffprobe.ts';
import { reading } from '../../machine/input.ts';
import { probeIn } from '../../machine/probe.ts';
import { quantity } from '../../text/quantity.ts';
import { CannotDo } from '../../machine/cannot-do.ts';
import { progress, progressDone } from '../progress.ts';
import { readSite } from '../sites.ts';
import { type PrintOptions, failOnOption, formatOption, printAudit } from './print.ts';

interface Given extends PrintOptions {
  readonly site: string;
  readonly stream?: string;
  readonly tolerance: string;
}

export function probeCommand(): Command {
  return new Command('probe')
    .description(
      'Compare the output of ffprobe with the streams of the site, with fixes that write the measured values.',
    )
    .argument('<FILE...>', 'the output of ffprobe as JSON, a file for each stream')
    .option('--site <folder>', 'the folder of the site', '.')
    .option('--stream <name>', 'the stream, if neither the address nor the name of the SDP file shows it')
    .option('--tolerance <percentage>', 'by how much bit rates may differ', `${USUAL_TOLERANCE / 100} %`)
    .addOption(formatOption())
    .addOption(failOnOption())
    .addHelpText(
      'after',
      `
A minute of a camera, of a group, or of a file; bit rates and keyframes want -show_packets:
  ${FFPROBE_COMMAND}
  ffprobe -v error -protocol_whitelist file,rtp,udp -read_intervals %+60 -show_streams -show_format -show_packets \\
    -of json gate-live.sdp > gate-live.json
A password in an address stays in the JSON, and shows in the list of processes while ffprobe runs.

Examples:
  plumbline audit probe gate.json yard.json --site samples/harrow-lane
  plumbline audit probe segment.json --stream paddock-live`,
    )
    .action(async (files: string[], given: Given) => {
      const tolerance = quantity(given.tolerance, 'percentage');
      if (tolerance === undefined)
        throw new CannotDo(`--tolerance is ${given.tolerance}: write a number, a space and %, such as '10 %'.`);
      if (given.stream !== undefined && files.length > 1)
        throw new CannotDo('--stream is about one FILE: give the others by themselves.');
      const folder = readSite(given.site);
      const site = folder.folder.site();
      const audits = [];
      for (const file of files) {
        const probed = await probeIn(file, { progress });
        audits.push(await reading(file, () => Promise.resolve(auditProbe(site, probed, given.stream, tolerance))));
      }
      progressDone();
      const all = { found: audits.flatMap(({ found }) => found), summary: audits.flatMap(({ summary }) => summary) };
      process.exitCode = printAudit(folder, all, given);
    });
}
