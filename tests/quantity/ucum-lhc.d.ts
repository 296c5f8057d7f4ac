/** The part of the reference library that the tests call; the package brings no types of its own. */
declare module '@lhncbc/ucum-lhc' {
  type Utils = {
    convertUnitTo(
      from: string,
      value: number,
      to: string,
    ): { status: string; toVal: number | null; msg: string[] };
    validateUnitString(code: string): { status: string };
  };
  const ucum: { UcumLhcUtils: { getInstance(): Utils } };
  export default ucum;
}
