// Made from schemas/site.schema.json by `npm run generate`; edits belong there.
import type { Validator } from '../validate.ts';

export declare const site: Validator;
export declare const vlans: Validator;
export declare const devices: Validator;
export declare const racks: Validator;
export declare const cables: Validator;
export declare const multiplexes: Validator;
export declare const services: Validator;
export declare const occasions: Validator;
export declare const streams: Validator;
export declare const traffic: Validator;
export declare const volumes: Validator;
export declare const recordings: Validator;
export declare const policies: Validator;
export declare const lint: Validator;
