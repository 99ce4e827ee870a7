/** Whether an SVG is a picture and nothing else: no script, no handler, no animation, nothing from outside itself. */

/** Elements that act, load or hold a page, whatever prefix their namespace was given. */
const ELEMENTS =
  /<(?:[\w.-]+:)?(?:script|handler|listener|foreignObject|iframe|frame|embed|object|applet|audio|video|source|link|meta|base|form|set|animate\w*|discard)[\s/>]/iu

/** Entities can spell anything; with a document type they can be defined, or fetched. */
const DOCUMENT_TYPE = /<!(?:DOCTYPE|ENTITY)/iu

const XHTML = /http:\/\/www\.w3\.org\/1999\/xhtml/iu

const STYLE_SHEET = /<\?xml-stylesheet/iu

const HANDLER = /[\s"'/]on\w+\s*=/iu

const SCRIPT_ADDRESS = /(?:java|vb)script\s*:/iu

/** Of `href`, `xlink:href` and `src`: only to a part of the same picture, or to a picture inside it. */
const OUTSIDE_LINK = /(?:href|src)\s*=\s*(?:["']\s*)?(?!["'\s]|#|data:image\/(?:png|jpeg)[;,])/iu

const OUTSIDE_STYLE =
  /@import|(?:image-set|\bsrc|\bimage|cross-fade|element)\s*\(|url\(\s*["']?\s*(?!["'\s]|#|data:image\/(?:png|jpeg)[;,])/iu

/** As XML and CSS read it: character references and CSS escapes resolved, comments of CSS gone. */
const read = (svg: string): string =>
  svg
    .replace(/&#x([0-9a-f]+);?/giu, (_, code: string) => sign(Number.parseInt(code, 16)))
    .replace(/&#(\d+);?/gu, (_, code: string) => sign(Number(code)))
    .replace(/\\([0-9a-f]{1,6})\s?/giu, (_, code: string) => sign(Number.parseInt(code, 16)))
    .replace(/\\/gu, '')
    .replace(/\/\*[\s\S]*?\*\//gu, '')

const sign = (code: number): string => (code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : '')

const RULES: readonly RegExp[] = [
  ELEMENTS,
  DOCUMENT_TYPE,
  XHTML,
  STYLE_SHEET,
  HANDLER,
  SCRIPT_ADDRESS,
  OUTSIDE_LINK,
  OUTSIDE_STYLE,
]

/** True for an SVG that carries no script and reaches nothing outside itself; judged both as it is written and as it is read. */
export const isPlainPicture = (svg: string): boolean =>
  [svg, read(svg)].every((text) => RULES.every((rule) => !rule.test(text)))
