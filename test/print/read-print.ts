/** A printed PDF read back with a PDF library: text and where it stands, tags, bookmarks, fonts. */
import { getDocument, type PDFDocumentProxy, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs'

/** Points; x and y from the lower left corner of the page, y of the base line. */
export interface PlacedText {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly width: number
  readonly size: number
  /** Its tag, as "H2" or "TD"; '' where it has none, as page numbers have. */
  readonly tag: string
}

export interface Tagged {
  readonly role: string
  readonly text: string
  /** How deep it is inside other tags. */
  readonly depth: number
}

export interface PrintedPage {
  readonly width: number
  readonly height: number
  readonly texts: readonly PlacedText[]
  /** Headings, rows and whatever else is tagged, in reading order, each with all the text inside it. */
  readonly tags: readonly Tagged[]
  readonly fonts: readonly { readonly name: string; readonly embedded: boolean }[]
}

export interface Bookmark {
  readonly level: number
  readonly title: string
}

export interface Print {
  readonly pages: readonly PrintedPage[]
  readonly bookmarks: readonly Bookmark[]
  readonly marked: boolean
  readonly language: string | null
  readonly title: string | null
}

/**
 * Without spaces, as nothing says where a line was broken; and with one sign for each pair that the font draws alike (two
 * apostrophes, micro and mu), as the print does not know which was meant.
 */
export const squeezed = (text: string): string =>
  text
    .normalize('NFKC')
    .replace(/[\s\u00ad]+/gu, '')
    .replaceAll('\u02bc', '’')

interface Node {
  readonly role?: string
  readonly type?: string
  readonly id?: string
  readonly children?: readonly Node[]
}

const readFonts = async (page: PDFPageProxy): Promise<PrintedPage['fonts']> => {
  await page.getOperatorList() // reads the fonts that the page draws with
  const { styles } = await page.getTextContent()
  return Object.keys(styles).map((key) => {
    const font = page.commonObjs.get(key) as { readonly name: string; readonly missingFile?: boolean }
    return { name: font.name, embedded: font.missingFile !== true }
  })
}

const readPage = async (page: PDFPageProxy): Promise<PrintedPage> => {
  const { items } = await page.getTextContent({ includeMarkedContent: true })
  const inside: (string | null)[] = []
  const placed: (Omit<PlacedText, 'tag'> & { readonly id: string | null })[] = []
  for (const item of items) {
    if ('str' in item) {
      if (item.str.trim() === '') continue
      const [, , , size = 0, x = 0, y = 0] = item.transform as number[]
      const id = inside.findLast((open) => open !== null) ?? null
      placed.push({ text: item.str, x, y, width: item.width, size: Math.abs(size), id })
    } else if (item.type === 'endMarkedContent') inside.pop()
    else inside.push(item.id ?? null)
  }
  const texts = new Map<string | null, string>()
  for (const { id, text } of placed) texts.set(id, `${texts.get(id) ?? ''}${text}`)
  const tagOf = new Map<string, string>()
  const tags: Tagged[] = []
  const walk = (node: Node, roles: readonly string[]): string => {
    if (node.id !== undefined && node.type === 'content') {
      tagOf.set(node.id, roles.findLast((role) => !['NonStruct', 'Div', 'Span'].includes(role)) ?? '')
      return texts.get(node.id) ?? ''
    }
    const role = node.role ?? ''
    const place = tags.push({ role, text: '', depth: roles.length }) - 1
    const text = (node.children ?? []).map((child) => walk(child, [...roles, role])).join('')
    tags[place] = { role, text, depth: roles.length }
    return text
  }
  const tree = (await page.getStructTree()) as Node | null
  if (tree !== null) walk(tree, [])
  const [, , width = 0, height = 0] = page.view
  return {
    width,
    height,
    texts: placed.map(({ id, ...text }) => ({ ...text, tag: id === null ? '' : (tagOf.get(id) ?? '') })),
    tags,
    fonts: await readFonts(page),
  }
}

interface Outline {
  readonly title: string
  readonly items: readonly Outline[]
}

const flat = (items: readonly Outline[], level = 1): readonly Bookmark[] =>
  items.flatMap(({ title, items: inner }) => [{ level, title }, ...flat(inner, level + 1)])

export const openPdf = (bytes: Uint8Array): Promise<PDFDocumentProxy> =>
  getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise

export const readPrint = async (bytes: Uint8Array): Promise<Print> => {
  const document = await openPdf(bytes)
  try {
    const pages: PrintedPage[] = []
    for (let i = 1; i <= document.numPages; i++) pages.push(await readPage(await document.getPage(i)))
    const info = (await document.getMetadata()).info as { readonly Language?: string; readonly Title?: string }
    return {
      pages,
      bookmarks: flat((await document.getOutline()) ?? []),
      marked: (await document.getMarkInfo())?.Marked === true,
      language: info.Language ?? null,
      title: info.Title ?? null,
    }
  } finally {
    await document.loadingTask.destroy()
  }
}
