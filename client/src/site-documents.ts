export const sitePattern = '**/*.site.yaml';

/** The documents for the server: of any scheme, so that those of a virtual workspace are included. */
export const siteDocuments = [{ language: 'yaml', pattern: sitePattern }] as const;
