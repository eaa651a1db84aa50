/** Each kind of audit of a file or folder that a person chose, which is read once; nothing else is read. */

import { auditAnnouncements } from '../audit/announcements/audit.ts';
import type { Audit, AuditKind, Audited, Saying } from '../audit/audited.ts';
import { auditCounters } from '../audit/counters/audit.ts';
import { USUAL_LIMITS } from '../audit/counters/compare.ts';
import type { Measured } from '../audit/measured.ts';
import { USUAL_TOLERANCE, auditProbe } from '../audit/probe/audit.ts';
import { auditRecordings } from '../audit/recordings/audit.ts';
import { lookedAt } from '../audit/recordings/looked.ts';
import { afterEdit } from '../audit/recordings/survey.ts';
import { Unreadable, Untold } from '../audit/unreadable.ts';
import type { Plan } from '../plan.ts';
import type { Site, Volume } from '../site/model.ts';
import { SAP_BANDWIDTH, SAP_INTERVAL } from '../standards/sap.ts';
import { heardIn } from './capture.ts';
import { countersIn } from './counters.ts';
import type { Waiting } from './input.ts';
import { probeIn } from './probe.ts';
import { newestOf, readChosen } from './volumes.ts';

type Begin = (path: string, plan: Plan, saying: Saying, waiting: Waiting) => Promise<Audit>;

/**
 * Audits with the command line's default allowances.
 *
 * @throws Unreadable where nothing shows which part of the site it belongs to
 * @throws CannotDo where it cannot be read
 */
export const audits: Readonly<Record<AuditKind, Begin>> = {
  async recordings(path, plan, { of, isCopy = false }, waiting) {
    const { name } = volumeOf(plan.site, of);
    const read = await readChosen(plan.site, volumeOf(plan.site, name), path, waiting);
    const now = isCopy ? newestOf([read]) : Date.now();
    const audit = (plan: Plan): Audited => {
      const survey = afterEdit(read.survey, plan.site);
      return auditRecordings(plan, [{ ...read, volume: volumeOf(plan.site, name), survey }], { now });
    };
    const measured = ({ site }: Plan): Measured => ({
      recordings: { looked: lookedAt(afterEdit(read.survey, site), now), now },
    });
    return Object.assign(audit, { measured });
  },

  async counters(path, _plan, { of }, waiting) {
    const readings = await countersIn(path, waiting);
    const measured = (): Measured => ({ counters: { readings, device: of } });
    return Object.assign((plan: Plan) => auditCounters(plan, readings, of, USUAL_LIMITS), { measured });
  },

  async announcements(path, _plan, _saying, waiting) {
    const heard = await heardIn(path, waiting);
    const pace = { bandwidth: SAP_BANDWIDTH, leastInterval: SAP_INTERVAL };
    return (plan) => auditAnnouncements(plan, heard, heard.end(), pace);
  },

  async probe(path, _plan, { of }, waiting) {
    const probed = await probeIn(path, waiting);
    return ({ site }) => auditProbe(site, probed, of, USUAL_TOLERANCE);
  },
};

/** The volume of that name, or the only one that is recorded to. */
function volumeOf(site: Site, name: string | undefined): Volume {
  const used = site.volumes.filter((volume) => site.recordings.some((recording) => recording.volume === volume.name));
  const [volume, ...others] = name === undefined ? used : site.volumes.filter((each) => each.name === name);
  const names = used.map((each) => each.name);
  if (volume === undefined)
    throw new Unreadable(
      name === undefined ? 'the site records nothing to any volume.' : `the site has no volume ${name}.`,
    );
  if (others.length > 0) throw new Untold(`it may be of ${names.join(', ')}.`, names);
  return volume;
}
