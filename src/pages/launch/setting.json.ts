/** Outside of packages there is nothing to report and nobody to report to: the packager writes its own. */
export const GET = (): Response => Response.json({ standard: 'none' });
