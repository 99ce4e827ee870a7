/**
 * Advance widths of Inter 700, figures of one width, in thousandths of its size: read off the font in a browser, so that
 * the room that the drawing reckons with is held against the font and not against itself.
 */
const GROUPS: { readonly [width: number]: string } = {
  280: ' ,.:;ijlI\u00a0',
  340: "!'’\\·",
  370: '`ft|',
  400: '()/[]{}',
  420: 'r',
  470: '°²³',
  490: '_^',
  510: '–-',
  550: '”“"',
  570: '?Lsz',
  590: 'JakxFcvyé',
  610: 'eEoö',
  630: 'hnubdgpqµ',
  660: '0123456789#*+<=>P~−×$BRSZß',
  680: '&T',
  730: 'DKUY',
  750: 'CXGH',
  770: 'ANVÅO',
  790: 'Q',
  860: 'w',
  930: 'mM',
  1010: '…%@',
  1060: 'W',
}

const WIDTHS = new Map(
  Object.entries(GROUPS).flatMap(([width, signs]) => [...signs].map((sign) => [sign, Number(width)])),
)

/** Width of a text in Inter bold; of a sign that was not measured, that of the widest. */
export const inkWidth = (text: string, size: number): number =>
  ([...text].reduce((sum, sign) => sum + (WIDTHS.get(sign) ?? 1060), 0) * size) / 1000
