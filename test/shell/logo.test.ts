/** Which marks of a shop are taken and which are refused, each with a file of its own. */
import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { readLogo } from '../../src/shell/logo.ts'

let shop = ''
let root = ''
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'feasibility-logo-'))
  shop = join(root, 'shop')
  mkdirSync(join(shop, 'marks'), { recursive: true })
})
afterEach(() => rmSync(root, { recursive: true, force: true }))

const NS = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'
const svg = (inside: string, more = '') => `<svg ${NS} viewBox="0 0 9 9" ${more}>${inside}</svg>`
const PNG = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0])
const JPEG = Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0])

const put = (name: string, content: string | Buffer, folder = shop) => writeFileSync(join(folder, name), content)
const outcome = (name: string) => {
  const logo = readLogo(shop, name)
  return 'mark' in logo ? (/^data:[^;]+/u.exec(logo.mark)?.[0] ?? '') : logo.refused
}

describe('taken', () => {
  test.each([
    ['a.svg', svg('<path d="M0 0h9"/>'), 'data:image/svg+xml'],
    ['a.png', PNG, 'data:image/png'],
    ['A.JPG', JPEG, 'data:image/jpeg'],
    ['a.jpeg', JPEG, 'data:image/jpeg'],
    ['marks/a.png', PNG, 'data:image/png'],
  ])('%s', (name, content, kind) => {
    put(name, content)
    expect(outcome(name)).toBe(kind)
  })
  // As drawing programs write them.
  test.each([
    ['an XML head, a comment', `<?xml version="1.0" encoding="UTF-8"?>\n<!-- made by hand -->\n${svg('<g/>')}`],
    [
      'a gradient, a pattern, a part used twice',
      svg(
        '<defs><path id="p" d="M0 0"/></defs><use href="#p"/><use xlink:href="#p" fill="url(#g)" style="fill:url(\'#g\')"/>',
      ),
    ],
    ['a bitmap inside', svg('<image href="data:image/png;base64,iVBORw0KGgo="/>')],
    ['its own style', svg('<style>.a{fill:#123;stroke:url(#g)}</style><text class="a">One and one are two</text>')],
    ['the words of an editor', svg('<metadata><rdf:RDF xmlns:rdf="urn:r"><x rdf:about=""/></rdf:RDF></metadata>')],
  ])('an SVG with %s', (_, content) => {
    put('a.svg', content)
    expect(outcome('a.svg')).toBe('data:image/svg+xml')
  })
})

describe('refused: where it lies', () => {
  test('above the folder, by whatever way', () => {
    put('a.png', PNG, root)
    put('b.png', PNG)
    for (const name of ['../a.png', 'marks/../../a.png', '../shop/../a.png'])
      expect(outcome(name)).toContain('not beside the shop file')
  })
  test('an absolute path, even of a file beside it', () => {
    put('a.png', PNG)
    expect(outcome(join(shop, 'a.png'))).toContain('not beside the shop file')
  })
  test('a folder whose name begins alike', () => {
    mkdirSync(join(root, 'shop-of-another'))
    put('a.png', PNG, join(root, 'shop-of-another'))
    expect(outcome('../shop-of-another/a.png')).toContain('not beside the shop file')
  })
  test('a link that leads out, as a file and as a folder', () => {
    put('a.png', PNG, root)
    symlinkSync(join(root, 'a.png'), join(shop, 'link.png'))
    symlinkSync(root, join(shop, 'out'))
    expect(outcome('link.png')).toContain("leads out of the shop's folder")
    expect(outcome('out/a.png')).toContain("leads out of the shop's folder")
  })
  test('a link that stays inside is taken', () => {
    put('a.png', PNG)
    symlinkSync(join(shop, 'a.png'), join(shop, 'link.png'))
    expect(outcome('link.png')).toBe('data:image/png')
  })
  test('nothing there, a link to nothing, a web address', () => {
    symlinkSync(join(root, 'gone.png'), join(shop, 'gone.png'))
    for (const name of ['none.png', 'gone.png', 'https://mark.example/a.png', 'file:///etc/a.png'])
      expect(outcome(name)).toContain('not beside the shop file')
  })
})

describe('refused: what it is', () => {
  test('another kind by its name', () => {
    for (const name of ['a.gif', 'a.webp', 'a.html', 'a', 'a.svg.exe', 'a.svgz'])
      expect(outcome(name)).toContain('is no SVG, PNG or JPEG')
  })
  test('another kind by its content', () => {
    for (const [name, content] of [
      ['a.png', JPEG],
      ['b.jpg', PNG],
      ['c.png', svg('<g/>')],
      ['d.svg', PNG],
      ['e.svg', `<html>${svg('<g/>')}</html>`],
      ['f.svg', Buffer.from(`\ufeff${svg('<script/>')}`, 'utf16le')],
      ['g.png', ''],
    ] as const) {
      put(name, content)
      expect(outcome(name)).toContain('not what its ending says')
    }
  })
  test('a folder, a pipe, a file that would swell every copy', () => {
    mkdirSync(join(shop, 'folder.png'))
    expect(outcome('folder.png')).toContain('is no file')
    if (process.platform !== 'win32') {
      execFileSync('mkfifo', [join(shop, 'pipe.png')])
      expect(outcome('pipe.png')).toContain('is no file')
    }
    put('big.png', Buffer.concat([PNG, Buffer.alloc(100_000)]))
    expect(outcome('big.png')).toContain('save it smaller')
  })
})

describe('refused: what an SVG carries', () => {
  test.each([
    ['script', '<script>1</script>'],
    ['script of a prefix', '<s:script xmlns:s="http://www.w3.org/2000/svg">1</s:script>'],
    ['script in capitals', '<SCRIPT/>'],
    ['a page inside', '<foreignObject><p/></foreignObject>'],
    ['a page inside, by prefix', '<h:p xmlns:h="http://www.w3.org/1999/xhtml"/>'],
    ['a frame', '<iframe src="#a"/>'],
    ['a handler', '<path onload="x()"/>'],
    ['a handler, spaced', '<path onclick = "x()"/>'],
    ['a handler on a new line', '<path d=""\nonfocus="x()"/>'],
    ['a script address', '<a href="javascript:x()"/>'],
    ['a script address, disguised', '<a href="#" data-x="java&#115;cript:x()"/>'],
    ['a script address in an animation', '<a><set attributeName="href" to="x"/></a>'],
    ['an animation', '<animate attributeName="x"/>'],
    ['a link', '<a href="https://a.example/"/>'],
    ['a relative link', '<use href="other.svg#a"/>'],
    ['an old link', '<use xlink:href="//a.example/a.svg#a"/>'],
    ['a picture of elsewhere', '<image href="http://a.example/a.png"/>'],
    ['a file', '<image href="file:///etc/passwd"/>'],
    ['a picture that is a page', '<image href="data:text/html,x"/>'],
    ['an SVG inside', '<image href="data:image/svg+xml,x"/>'],
    ['an address by character references', '<image href="&#x68;ttp://a.example/a.png"/>'],
    ['a font of elsewhere', '<style>@font-face{src:url(http://a.example/f)}</style>'],
    ['a fill of elsewhere', '<path fill="url(http://a.example/#g)"/>'],
    ['a fill of elsewhere, quoted', '<path style="fill:url( \'a.svg#g\' )"/>'],
    ['a style by CSS escapes', '<style>a{fill:u\\72 l(http://a.example/)}</style>'],
    ['a style by character references', '<path style="fill:&#117;rl(http://a.example/)"/>'],
    ['a style with a comment inside', '<style>@im/**/port "a.css"</style>'],
    ['a picture without url()', '<style>a{fill:image-set("http://a.example/a.png" 1x)}</style>'],
    ['a style sheet', '<style>@import "a.css";</style>'],
  ])('%s', (_, inside) => {
    put('a.svg', svg(inside))
    expect(outcome('a.svg')).toContain('carries script or reaches outside itself')
  })
  test('a handler on the picture itself', () => {
    put('a.svg', svg('<g/>', 'onload="x()"'))
    expect(outcome('a.svg')).toContain('carries script')
  })
  test.each([
    ['a document type', `<!DOCTYPE svg [<!ENTITY x "y">]>${svg('<g/>')}`],
    ['an outside document type', `<?xml version="1.0"?><!DOCTYPE svg SYSTEM "http://a.example/a.dtd">${svg('<g/>')}`],
    ['a style sheet of elsewhere', `<?xml version="1.0"?><?xml-stylesheet href="a.css"?>${svg('<g/>')}`],
  ])('%s', (_, content) => {
    put('a.svg', content)
    expect(outcome('a.svg')).toContain('carries script')
  })
})
