export const sitePattern = '**/*.site.yaml';

/** What the server is asked about; documents of any scheme, so that those of a virtual workspace are too. */
export const siteDocuments = [{ language: 'yaml', pattern: sitePattern }] as const;
