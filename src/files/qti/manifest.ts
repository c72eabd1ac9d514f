import { escapeXml } from '../xml.ts';
import type { QtiItem } from './item.ts';

/** Where an item stands in its package. */
export const itemPath = ({ id }: Pick<QtiItem, 'id'>): string => `items/${id}.xml`;

/** `imsmanifest.xml` of a QTI 3 package (1EdTech QTI 3.0 packaging): one resource for each item. */
export function qtiManifest(id: string, title: string, items: readonly Pick<QtiItem, 'id'>[]): string {
  const resources = items
    .map((item) => {
      const path = itemPath(item);
      return `    <resource identifier="r-${item.id}" type="imsqti_item_xmlv3p0" href="${path}"><file href="${path}"/></resource>`;
    })
    .join('\n');
  return `<?xml version="1.0" encoding="UTF-8"?>
<!-- ${escapeXml(title).replace(/--+/g, '-')} -->
<manifest xmlns="http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xsi:schemaLocation="http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1 https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqtiv3p0_imscpv1p2_v1p0.xsd" identifier="${id}-qti">
  <metadata>
    <schema>QTI Package</schema>
    <schemaversion>3.0.0</schemaversion>
  </metadata>
  <organizations/>
  <resources>
${resources}
  </resources>
</manifest>
`;
}
