export declare const design: Readonly<Record<string, unknown>>;
