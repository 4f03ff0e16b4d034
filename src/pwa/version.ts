declare const __HEELTAP_VERSION__: string;

/** Put in by the build: the version of package.json. */
export const version: string = __HEELTAP_VERSION__;
