// What would be, in the report: the same answers as the commands give, and JSON that fits its schema.
import assert from 'node:assert/strict';
import { Ajv2020 } from 'ajv/dist/2020.js';
import questionsSchema from '../../schemas/questions.schema.json' with { type: 'json' };
import reportSchema from '../../schemas/report.schema.json' with { type: 'json' };
import { check } from '../../server/src/check.ts';
import { compare } from '../../server/src/compare/compare.ts';
import { elementsOf } from '../../server/src/failure/element.ts';
import { failureOf } from '../../server/src/failure/failure.ts';
import { rankingOf } from '../../server/src/failure/ranking.ts';
import { headroomOf } from '../../server/src/headroom/headroom.ts';
import { explainOutlook } from '../../server/src/outlook/explain.ts';
import { failureReport, headroomReport, outlookReport, rankingReport } from '../../server/src/outlook/figures.ts';
import { outlookOf, outlookSteps } from '../../server/src/outlook/outlook.ts';
import { outlookHtml } from '../../server/src/outlook/page.ts';
import { outlookSections } from '../../server/src/outlook/text.ts';
import { type Plan, planOf } from '../../server/src/plan.ts';
import { asText } from '../../server/src/report/page/cells.ts';
import { explanationText } from '../../server/src/report/explain/explanation.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { supplyReport } from '../../server/src/report/supply/figures.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';
import { siteOf } from '../site-of.ts';

const SITE = `
vlans: {video: {id: 20, subnet: 10.0.0.0/24, querier: core}}
devices:
  core: {kind: switch, address: 10.0.0.2, poe-budget: 40 W, ports: {1-4: {speed: 1 Gb/s, vlan: video, poe: at}}}
  cam: {kind: camera, address: 10.0.0.11, speed: 100 Mb/s, poe: {class: 3}}
  recorder: {kind: server, address: 10.0.0.5, speed: 1 Gb/s}
cables:
  - {from: core/1, to: cam, type: cat6, length: 20 m, label: C-01}
  - {from: core/2, to: recorder, type: cat6, length: 2 m}
streams:
  gate: {source: cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
volumes: {archive: {host: recorder, capacity: 4 TB}}
recordings: {gate: {stream: gate, volume: archive, segment: 60 s, keep: 9 d, file: "gate/%Y-%m-%d_%H-%M-%S%z.mp4"}}
`;

function checked(text: string): ReturnType<typeof check> {
  const folder = new SiteFolder();
  folder.set('house.site.yaml', text);
  return check(folder);
}

function explained(plan: Plan, ...path: readonly string[]): string {
  const found = explainOutlook(plan, path);
  assert.ok(found !== undefined);
  return 'problem' in found ? found.problem : found.explanations.map(explanationText).join('\n');
}

describe('the outlook', () => {
  const { plan } = checked(SITE);

  it('is what the commands say', () => {
    const { headroom, failures } = outlookOf(plan);
    const [cam, core] = ['cam', 'core'].map((name) => plan.site.deviceByName.get(name));
    assert.ok(cam !== undefined && core !== undefined);
    assert.deepEqual(headroom.map(headroomReport), [headroomReport(headroomOf(plan, cam, core))]);
    assert.deepEqual(failures, rankingOf(plan).ranked);
  });

  it('stops between its steps', () => {
    const steps = outlookSteps(plan);
    let stops = 0;
    while (steps.next().done !== true) stops++;
    assert.equal(stops, 1 + elementsOf(plan).length);
  });

  it('is in the text and on the page of the report', () => {
    const outlook = outlookOf(plan);
    const text = outlookSections(outlook).join('\n');
    // 40 W less 15.4 W of the camera leave one more of class 3 (IEEE 802.3).
    assert.match(text, /^ {2}core +cam +1 +core feeds 40 W at most +2: then core has no free port left/m);
    assert.match(text, /^ +1 +1 +0 +any of 3 devices: core, cam and recorder$/m);
    const page = outlookHtml(outlook, asText);
    assert.match(page, /<h2>Room for cameras<\/h2>/);
    assert.match(page, /<h2>What must not fail<\/h2>/);
  });

  it('says in each format what a large site leaves untried', () => {
    const ring = 30;
    const big = planOf(
      siteOf(`
devices:
  cam: {kind: camera, address: 10.0.0.11, speed: 100 Mb/s}
${Array.from({ length: ring }, (_, i) => `  s${i}: {kind: switch, ports: {1-2: {speed: 1 Gb/s}, 3-20: {speed: 1 Gb/s}}}\n`).join('')}
${Array.from({ length: 500 }, (_, i) => `  c${i}: {kind: camera}\n`).join('')}
cables:
  - {from: s0/3, to: cam}
${Array.from({ length: ring - 1 }, (_, i) => `  - {from: s${i}/1, to: s${i + 1}/2}\n`).join('')}
`),
    );
    const outlook = outlookOf(big);
    const { headroom, failures } = outlookReport(outlook);
    assert.equal(failures, null);
    const last = { camera: null, switch: `s${ring - 1}`, more: null, limits: [] };
    assert.deepEqual(headroom.at(-1), last);
    const tried = headroom.filter(({ more }) => more !== null).length;
    assert.ok(tried > 0 && tried < ring);
    const words = /There is too much to try \d+ switches more/;
    const text = outlookSections(outlook).join('\n');
    const page = outlookHtml(outlook, asText);
    for (const shown of [text, page]) {
      assert.match(shown, words);
      assert.match(shown, /What must not fail[^]*plumbline failure --all begins with/);
    }
    const element = { kind: 'cable', name: 'a – b', cables: [], devices: [], volume: undefined } as const;
    const json = rankingReport({ ranked: [], untried: [element] });
    assert.deepEqual(json, [
      {
        element: { kind: 'cable', name: 'a – b' },
        recordings: null,
        cameras: null,
        pictures: null,
        losesFootage: null,
      },
    ]);
    const fits = new Ajv2020({ allowUnionTypes: true, schemas: [reportSchema] }).compile(questionsSchema);
    for (const printed of [json, headroom]) assert.ok(fits(printed), JSON.stringify(fits.errors));
  });

  it('is explained line by line', () => {
    assert.match(explained(plan, 'headroom', 'cam'), /^ {2}power core +15\.4 W +15\.4 W +40 W +1$/m);
    assert.match(explained(plan, 'failures', 'C-01'), /^ {2}gate +recording +cam has no power$/m);
    assert.match(explained(plan, 'failures', 'core'), /core fails, 1 recording and 1 camera are lost/);
    assert.match(explained(plan, 'headroom', 'cm'), /no camera cm\. The nearest is cam/);
    assert.match(explained(plan, 'failures', 'nothing'), /Nothing here is called nothing/);
    assert.equal(explainOutlook(plan, ['links', 'core/1']), undefined);
  });

  it('prints JSON that fits its schema', () => {
    const ajv = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true });
    ajv.addSchema(reportSchema).addSchema(questionsSchema);
    const fits = (schema: string, value: unknown): void => {
      const validate = ajv.getSchema(schema);
      assert.ok(validate, schema);
      assert.ok(validate(JSON.parse(JSON.stringify(value))), `${schema}: ${ajv.errorsText(validate.errors)}`);
    };
    fits('urn:plumbline:report', { ...reportOf(plan), ...outlookReport(outlookOf(plan)) });
    fits('urn:plumbline:report#/$defs/supply', supplyReport(plan));
    for (const element of elementsOf(plan))
      fits('urn:plumbline:questions#/$defs/failure', failureReport(failureOf(plan, element)));
    const other = checked(
      SITE.replace('6 Mb/s', '600 Mb/s').replace('core/2', 'core/3').replace('class: 3', 'class: 4'),
    );
    const compared = compare(checked(SITE), other);
    assert.ok(compared.findings.new.length > 0 && compared.work.length > 0 && compared.links.length > 0);
    fits('urn:plumbline:questions#/$defs/comparison', compared);
    fits('urn:plumbline:questions', compared);
    fits('urn:plumbline:questions', outlookReport(outlookOf(plan)).headroom);
  });
});
