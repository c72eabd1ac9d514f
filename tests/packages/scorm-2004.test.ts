import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { listed, packed, works } from './support/packed.ts';
import { schema, troubles } from './support/schema.ts';

const FOLDER = 'tools/package/schemas/scorm-2004';
const names = readdirSync(fileURLToPath(new URL(`../../${FOLDER}`, import.meta.url)));

/** Takes in every namespace of a manifest, so that what stands under a wildcard is judged as well. */
const all = {
  fileName: 'all.xsd',
  contents: `<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema">
    <xs:import namespace="http://www.imsglobal.org/xsd/imscp_v1p1" schemaLocation="imscp_v1p1.xsd"/>
    <xs:import namespace="http://www.imsglobal.org/xsd/imsss" schemaLocation="imsss_v1p0.xsd"/>
    <xs:import namespace="http://www.adlnet.org/xsd/adlcp_v1p3" schemaLocation="adlcp_v1p3.xsd"/>
    <xs:import namespace="http://www.adlnet.org/xsd/adlseq_v1p3" schemaLocation="adlseq_v1p3.xsd"/>
    <xs:import namespace="http://www.adlnet.org/xsd/adlnav_v1p3" schemaLocation="adlnav_v1p3.xsd"/>
  </xs:schema>`,
};
const schemas = [
  all,
  ...names.filter((name) => name.endsWith('.xsd')).map((name) => schema(`${FOLDER}/${name}`)),
];

const manifestOf = (work = works[0], passMark?: number): string =>
  (work && packed('scorm-2004', work, passMark).get('imsmanifest.xml')) ?? '';

describe('a package for SCORM 2004 4th edition', () => {
  // The schemas published by ADL and IMS with SCORM 2004 4th edition; see tools/package/schemas/README.md.
  it('has a valid manifest, whatever it is made of', async () => {
    const made = works.flatMap((work) => [undefined, 0.8, 2 / 3, 1].map((mark) => manifestOf(work, mark)));
    expect(await troubles(made, schemas)).toEqual(made.map(() => []));
  });

  it('would be refused with any of these', async () => {
    const sound = manifestOf(works[0], 0.8);
    const wrong: readonly [string | RegExp, string][] = [
      // a threshold out of range
      ['minProgressMeasure="1.0"', 'minProgressMeasure="1.5"'],
      // a pass mark out of range
      [/(<imsss:minNormalizedMeasure>)0\.8/, '$12'],
      // sequencing before what it controls
      [/<imsss:controlMode [^>]*>/, '<imsss:rollupRules wrong="1"/>'],
      // a global objective switch that is no truth value
      ['objectivesGlobalToSystem="false"', 'objectivesGlobalToSystem="no"'],
    ];
    const broken = wrong.map(([from, to]) => sound.replace(from, to));
    expect(broken).not.toContain(sound);
    const found = await troubles(broken, schemas);
    expect(found.map((one) => one.length > 0)).toEqual(wrong.map(() => true));
  });

  it('says its edition, which platforms go by', () => {
    expect(manifestOf()).toContain('<schemaversion>2004 4th Edition</schemaversion>');
    // The schema lets any attribute pass here; the Content Aggregation Model, 4th edition, spells it so.
    expect(manifestOf()).toContain('adlcp:scormType="sco" href="launch/index.html"');
  });

  it('lists every file that is in it but the manifest', () => {
    const files = packed('scorm-2004', { kind: 'course', title: 'x' });
    const rest = [...files.keys()].filter((name) => name !== 'imsmanifest.xml').sort();
    expect(listed(files.get('imsmanifest.xml') ?? '')).toEqual(rest);
    expect(rest).toEqual(expect.arrayContaining(names));
  });

  it('leaves the judging of success to the page, unless a pass mark is asked for', () => {
    expect(manifestOf()).not.toContain('satisfiedByMeasure');
    expect(manifestOf(works[0], 0.8)).toMatch(
      /satisfiedByMeasure="true">\s*<imsss:minNormalizedMeasure>0\.8<\/imsss:minNormalizedMeasure>/,
    );
  });
});
