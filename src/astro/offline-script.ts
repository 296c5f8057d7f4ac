import { bundleScript, licence } from './bundle-script.ts';

/** A file of the site: its address from the site's root, and a mark of its bytes. */
export interface SiteFile {
  readonly url: string;
  readonly revision: string;
}

/** The script that keeps the whole site on a device. It differs as soon as a file of the site does. */
export async function offlineScript(files: readonly SiteFile[]): Promise<string> {
  return await bundleScript('worker/offline.ts', {
    banner: await licence('workbox-precaching', 'LICENSE'),
    define: { siteFiles: JSON.stringify(files) },
  });
}
