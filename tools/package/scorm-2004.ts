import { escapeXml, fileReference } from '../../src/files/xml.ts';
import type { Contents } from './contents.ts';

/**
 * `imsmanifest.xml` of SCORM 2004 4th edition (Content Aggregation Model): one item, one SCO, no sequencing of its own.
 * The page says whether it is completed and passed; completion is also told by its measure of progress. With a pass mark
 * of the tutor's the platform judges success by the score (`satisfiedByMeasure`).
 */
export function scorm2004Manifest({ id, title, version, launch, files, passMark }: Contents): string {
  const objective =
    passMark === undefined
      ? '<imsss:primaryObjective objectiveID="whole"/>'
      : `<imsss:primaryObjective objectiveID="whole" satisfiedByMeasure="true">
              <imsss:minNormalizedMeasure>${Number(passMark.toFixed(4))}</imsss:minNormalizedMeasure>
            </imsss:primaryObjective>`;
  const listed = files.map((file) => `      <file href="${escapeXml(fileReference(file))}"/>`).join('\n');
  return `<?xml version="1.0" encoding="UTF-8"?>
<manifest identifier="${id}" version="${escapeXml(version)}"
  xmlns="http://www.imsglobal.org/xsd/imscp_v1p1"
  xmlns:adlcp="http://www.adlnet.org/xsd/adlcp_v1p3"
  xmlns:adlseq="http://www.adlnet.org/xsd/adlseq_v1p3"
  xmlns:adlnav="http://www.adlnet.org/xsd/adlnav_v1p3"
  xmlns:imsss="http://www.imsglobal.org/xsd/imsss"
  xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"
  xsi:schemaLocation="http://www.imsglobal.org/xsd/imscp_v1p1 imscp_v1p1.xsd
    http://www.adlnet.org/xsd/adlcp_v1p3 adlcp_v1p3.xsd
    http://www.adlnet.org/xsd/adlseq_v1p3 adlseq_v1p3.xsd
    http://www.adlnet.org/xsd/adlnav_v1p3 adlnav_v1p3.xsd
    http://www.imsglobal.org/xsd/imsss imsss_v1p0.xsd">
  <metadata>
    <schema>ADL SCORM</schema>
    <schemaversion>2004 4th Edition</schemaversion>
  </metadata>
  <organizations default="${id}-organization">
    <organization identifier="${id}-organization" adlseq:objectivesGlobalToSystem="false">
      <title>${escapeXml(title)}</title>
      <item identifier="${id}-item" identifierref="${id}-sco" isvisible="true">
        <title>${escapeXml(title)}</title>
        <adlcp:completionThreshold completedByMeasure="true" minProgressMeasure="1.0"/>
        <imsss:sequencing>
          <imsss:objectives>
            ${objective}
          </imsss:objectives>
          <imsss:deliveryControls completionSetByContent="true" objectiveSetByContent="true"/>
        </imsss:sequencing>
      </item>
      <imsss:sequencing>
        <imsss:controlMode choice="true" flow="true"/>
      </imsss:sequencing>
    </organization>
  </organizations>
  <resources>
    <resource identifier="${id}-sco" type="webcontent" adlcp:scormType="sco" href="${fileReference(launch)}">
${listed}
    </resource>
  </resources>
</manifest>
`;
}
