import { escapeXml, fileReference } from '../../src/files/xml.ts';
import type { Contents } from './contents.ts';

/**
 * `imsmanifest.xml` of SCORM 1.2 (Content Aggregation Model, version 1.2): one item, one SCO, every file listed,
 * because some platforms serve the listed ones only.
 *
 * A platform that finds a `masteryscore` sets the status itself from the score when a session ends (Run-Time Environment
 * 1.2, on `cmi.core.lesson_status`): a learner who has only begun is then shown as failed. So there is one only when the
 * tutor gives a pass mark.
 */
export function scorm12Manifest({ id, title, version, launch, files, passMark }: Contents): string {
  const mastery =
    passMark === undefined
      ? ''
      : `\n        <adlcp:masteryscore>${Math.round(passMark * 100)}</adlcp:masteryscore>`;
  const listed = files.map((file) => `      <file href="${escapeXml(fileReference(file))}"/>`).join('\n');
  return `<?xml version="1.0" encoding="UTF-8"?>
<manifest identifier="${id}" version="${escapeXml(version)}"
  xmlns="http://www.imsproject.org/xsd/imscp_rootv1p1p2"
  xmlns:adlcp="http://www.adlnet.org/xsd/adlcp_rootv1p2"
  xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"
  xsi:schemaLocation="http://www.imsproject.org/xsd/imscp_rootv1p1p2 imscp_rootv1p1p2.xsd
    http://www.adlnet.org/xsd/adlcp_rootv1p2 adlcp_rootv1p2.xsd">
  <metadata>
    <schema>ADL SCORM</schema>
    <schemaversion>1.2</schemaversion>
  </metadata>
  <organizations default="${id}-organization">
    <organization identifier="${id}-organization">
      <title>${escapeXml(title)}</title>
      <item identifier="${id}-item" identifierref="${id}-sco" isvisible="true">
        <title>${escapeXml(title)}</title>${mastery}
      </item>
    </organization>
  </organizations>
  <resources>
    <resource identifier="${id}-sco" type="webcontent" adlcp:scormtype="sco" href="${fileReference(launch)}">
${listed}
    </resource>
  </resources>
</manifest>
`;
}
