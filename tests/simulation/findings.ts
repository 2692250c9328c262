/** What was tried on the tuning seeds, and what came of it: kept as text, as the variants are not part of the app. */
export const FINDINGS = `## What was tried

To be written.`;
