import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'yaml';
import { VOCABULARY } from '../../server/generate/schema-validators.ts';
import { planOf } from '../../server/src/plan.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';
import reportSchema from '../../schemas/report.schema.json' with { type: 'json' };
import siteSchema from '../../schemas/site.schema.json' with { type: 'json' };

const samples = new URL('../../samples/', import.meta.url);

function filesOf(sample: string): { name: string; text: string }[] {
  const folder = new URL(`${sample}/`, samples);
  const names = readdirSync(folder).filter((name) => name.endsWith('.site.yaml'));
  return names.map((name) => ({ name, text: readFileSync(new URL(name, folder), 'utf8') }));
}

const SAMPLES = readdirSync(samples, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);

const ajv = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true, strictRequired: false });
ajv.addVocabulary(VOCABULARY);
const validSite = ajv.compile(siteSchema);
const validReport = ajv.compile(reportSchema);

describe('The samples against the schemas', () => {
  for (const sample of SAMPLES) {
    for (const { name, text } of filesOf(sample)) {
      it(`${sample}/${name} names its schema where other editors look for it`, () => {
        const schema = /^# yaml-language-server: \$schema=(\S+)$/m.exec(text)?.[1];
        assert.equal(
          new URL(schema ?? '', new URL(`${sample}/${name}`, samples)).href,
          new URL('../../schemas/site.schema.json', import.meta.url).href,
        );
      });
    }
  }

  for (const { name, text } of filesOf('harrow-lane')) {
    it(`harrow-lane/${name} fits, as any YAML editor would see it`, () => {
      assert.ok(validSite(parse(text)), ajv.errorsText(validSite.errors));
    });
  }

  for (const sample of SAMPLES) {
    it(`the report of ${sample} is as its schema describes it`, () => {
      const folder = new SiteFolder();
      for (const { name, text } of filesOf(sample)) folder.set(`file:///${sample}/${name}`, text);
      const report: unknown = JSON.parse(JSON.stringify(reportOf(planOf(folder.site()))));
      assert.ok(validReport(report), ajv.errorsText(validReport.errors));
    });
  }
});
