import { PDFArray, PDFDict, PDFDocument, PDFName, PDFString } from '@cantoo/pdf-lib';

/** Where a link of a printed page leads. */
export type LinkTarget =
  | { readonly to: 'file'; readonly name: string }
  | { readonly to: 'address'; readonly url: string }
  | { readonly to: 'nothing' };

/**
 * Leads the links of a PDF elsewhere: to a file beside it, to an address, or nowhere. `target` is asked for
 * every address that the PDF leads to; undefined leaves the link alone. All else in the PDF stays as it is.
 */
export async function relink(
  pdf: Uint8Array,
  target: (url: string) => LinkTarget | undefined,
): Promise<Uint8Array> {
  const document = await PDFDocument.load(pdf, { updateMetadata: false });
  for (const page of document.getPages()) {
    const links = page.node.Annots();
    if (links === undefined) continue;
    for (let i = 0; i < links.size(); i += 1) {
      const link = links.lookupMaybe(i, PDFDict);
      const action = link?.lookupMaybe(PDFName.of('A'), PDFDict);
      const url = action?.lookupMaybe(PDFName.of('URI'), PDFString)?.decodeText();
      const found = url === undefined ? undefined : target(url);
      if (link === undefined || found === undefined) continue;
      // The link stays, without its action: the tags of the page speak of it.
      if (found.to === 'nothing') link.delete(PDFName.of('A'));
      else link.set(PDFName.of('A'), actionTo(found, document));
    }
  }
  return document.save({ useObjectStreams: false });
}

function actionTo(
  target: Exclude<LinkTarget, { to: 'nothing' }>,
  { context }: PDFDocument,
): PDFDict {
  if (target.to === 'address')
    return context.obj({ Type: 'Action', S: 'URI', URI: PDFString.of(target.url) });
  const whole = PDFArray.withContext(context);
  whole.push(context.obj(0));
  whole.push(PDFName.of('Fit'));
  return context.obj({ Type: 'Action', S: 'GoToR', F: PDFString.of(target.name), D: whole });
}
