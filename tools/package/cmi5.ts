import { createHash } from 'node:crypto';
import { escapeXml, fileReference } from '../../src/files/xml.ts';
import type { Contents } from './contents.ts';

/** Our own names come from this one; it was drawn once and never changes. */
const NAMESPACE = '6d2f4c1e-0f0b-4a53-9b57-3a1d5f1c8e42';

/** A name-based identifier (RFC 9562, section 5.5, version 5): the same name always gives the same one. */
export function uuidOf(name: string): string {
  const space = Buffer.from(NAMESPACE.replaceAll('-', ''), 'hex');
  const bytes = createHash('sha1').update(space).update(name).digest().subarray(0, 16);
  bytes.writeUInt8((bytes.readUInt8(6) & 0x0f) | 0x50, 6);
  bytes.writeUInt8((bytes.readUInt8(8) & 0x3f) | 0x80, 8);
  return bytes.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})/, '$1-$2-$3-$4-');
}

/**
 * `cmi5.xml` (cmi5 specification, section 13): one unit, whose page is in the package. The unit counts as done when it
 * is passed. A mastery score is given where passing is a share of the score (section 13.1.4).
 */
export function cmi5Structure({ id, title, about, launch, passMark }: Contents): string {
  const mastery = passMark === undefined ? '' : ` masteryScore="${Number(passMark.toFixed(4))}"`;
  const words = (text: string) => `<langstring lang="en-GB">${escapeXml(text)}</langstring>`;
  return `<?xml version="1.0" encoding="UTF-8"?>
<courseStructure xmlns="https://w3id.org/xapi/profiles/cmi5/v1/CourseStructure.xsd">
  <course id="urn:uuid:${uuidOf(`course ${id}`)}">
    <title>${words(title)}</title>
    <description>${words(about)}</description>
  </course>
  <au id="urn:uuid:${uuidOf(`unit ${id}`)}" launchMethod="AnyWindow" moveOn="Passed"${mastery}>
    <title>${words(title)}</title>
    <description>${words(about)}</description>
    <url>${fileReference(launch)}</url>
  </au>
</courseStructure>
`;
}
