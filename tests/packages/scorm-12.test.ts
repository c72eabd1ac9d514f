import { describe, expect, it } from 'vitest';
import { listed, packed, works } from './support/packed.ts';
import { schema, troubles } from './support/schema.ts';
import { coursework } from './support/site.ts';

const FOLDER = 'tools/package/schemas/scorm-1.2';
const [adlcp, imscp, xml] = ['adlcp_rootv1p2', 'imscp_rootv1p1p2', 'ims_xml'].map((name) =>
  schema(`${FOLDER}/${name}.xsd`),
) as [ReturnType<typeof schema>, ReturnType<typeof schema>, ReturnType<typeof schema>];
const schemas = [adlcp, imscp, xml];

const manifestOf = (work = works[0], passMark?: number): string =>
  (work && packed('scorm-1.2', work, passMark).get('imsmanifest.xml')) ?? '';

describe('a package for SCORM 1.2', () => {
  // The schemas published by ADL and IMS with SCORM 1.2; see tools/package/schemas/README.md.
  it('has a valid manifest, whatever it is made of', async () => {
    const made = works.flatMap((work) => [undefined, 0.8, 2 / 3, 1].map((mark) => manifestOf(work, mark)));
    expect(await troubles(made, schemas)).toEqual(made.map(() => []));
  });

  it('would be refused with any of these', async () => {
    const sound = manifestOf();
    const wrong: readonly [string | RegExp, string][] = [
      // a status of our own making
      ['adlcp:scormtype="sco"', 'adlcp:scormtype="SCO"'],
      // the spelling of SCORM 2004
      ['adlcp:scormtype', 'adlcp:scormType'],
      // an identifier that begins with a digit
      ['identifier="switched-live"', 'identifier="1"'],
      // a reference to nothing
      ['identifierref="switched-live-sco"', 'identifierrif="x"'],
      // no organizations
      [/<organizations[\s\S]*<\/organizations>/, ''],
    ];
    const broken = wrong.map(([from, to]) => sound.replace(from, to));
    expect(broken).not.toContain(sound);
    const found = await troubles(broken, schemas);
    expect(found.map((one) => one.length > 0)).toEqual(wrong.map(() => true));
  });

  // What is known of these schemas, exactly: with the content-packaging schema as the main one, names of ADL's are
  // unknown to wildcards that demand them, and the file for the xml namespace declares it as its default one, which
  // Namespaces in XML 1.0 forbids (section 3). Nothing else is found.
  it('cannot be validated by the content-packaging schema alone', async () => {
    const [found = []] = await troubles([manifestOf()], [imscp, xml]);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain('scormtype');
    expect(found[0]).toContain('demanded by the strict wildcard');
    expect(xml.contents).toContain('xmlns="http://www.w3.org/XML/1998/namespace"');
  });

  // Content Aggregation Model 1.2, 2.3.2: the manifest stands at the root; 2.3.5.2: files are listed by reference.
  it('lists every file that is in it but the manifest, and the schemas beside it', () => {
    const files = packed('scorm-1.2', { kind: 'course', title: 'x' });
    expect(listed(files.get('imsmanifest.xml') ?? '')).toEqual(
      [...files.keys()].filter((name) => name !== 'imsmanifest.xml').sort(),
    );
    expect([...files.keys()][0]).toBe('imsmanifest.xml');
    expect(files.get('adlcp_rootv1p2.xsd')).toBe(adlcp.contents);
    expect(manifestOf()).toContain('href="_astro/a%26b%20c.js"');
  });

  it('opens the launch page, and leaves out the one that may speak with other servers', () => {
    expect(manifestOf()).toContain('adlcp:scormtype="sco" href="launch/index.html"');
    expect(packed('scorm-1.2', { kind: 'course', title: 'x' }).has('launch/cmi5/index.html')).toBe(false);
  });

  it('tells the launch page what it is for', () => {
    const setting = packed('scorm-1.2', { kind: 'coursework', coursework }).get('launch/setting.json');
    expect(JSON.parse(setting ?? '')).toEqual({
      standard: 'scorm-1.2',
      work: { kind: 'coursework', coursework },
    });
  });

  it('has a mastery score only when a pass mark is asked for: a platform would fail whoever has just begun', () => {
    expect(manifestOf()).not.toContain('masteryscore');
    expect(manifestOf(works[0], 0.8)).toContain('<adlcp:masteryscore>80</adlcp:masteryscore>');
  });

  it('is named after the coursework, whose title keeps its characters', () => {
    const manifest = manifestOf(works[1]);
    expect(manifest).toContain('<manifest identifier="switched-live-valves-and-more"');
    expect(manifest).toContain('<title>Valves &amp; “more” &lt;two &amp; three-port&gt;</title>');
  });
});
