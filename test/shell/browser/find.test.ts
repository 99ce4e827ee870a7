/** The order in which browsers are looked for, on a machine that is made up. */
import { describe, expect, test } from 'vitest'
import { type FindWorld, findBrowsers } from '../../../src/shell/browser/find.ts'

const world = (over: Partial<FindWorld>): FindWorld => ({
  env: { PATH: '/usr/local/bin:/usr/bin' },
  platform: 'linux',
  arch: 'x64',
  home: '/users/anyone',
  isExecutable: () => false,
  hasPackage: true,
  downloaded: async () => null,
  ...over,
})

const kinds = async (over: Partial<FindWorld>) => (await findBrowsers(world(over))).places.map(({ kind }) => kind)

describe('order', () => {
  test('a named browser is the only one that counts', async () => {
    const env = { PUPPETEER_EXECUTABLE_PATH: '/opt/browser', PATH: '/usr/bin' }
    expect(await kinds({ env, isExecutable: () => true })).toEqual(['named'])
  })

  test('the one of the package, then what is installed, then what was downloaded', async () => {
    const isExecutable = (path: string) => ['/usr/bin/chromium', '/cache/chrome'].includes(path)
    expect(await kinds({ isExecutable, downloaded: async () => '/cache/chrome' })).toEqual([
      'package',
      'installed',
      'downloaded',
    ])
  })

  test('of installed ones Chrome before Chromium before Edge', async () => {
    const { places } = await findBrowsers(
      world({ isExecutable: (path) => path.startsWith('/usr/bin/'), hasPackage: false }),
    )
    expect(places.map(({ place }) => place)).toEqual(
      ['google-chrome-stable', 'google-chrome', 'chromium', 'chromium-browser', 'microsoft-edge'].map(
        (n) => `/usr/bin/${n}`,
      ),
    )
  })

  test('the package is for Linux on x64 only', async () => {
    expect(await kinds({ arch: 'arm64' })).toEqual([])
    expect(await kinds({ platform: 'darwin' })).toEqual([])
  })

  test('none at all: every place that was tried is named', async () => {
    const { places, missing } = await findBrowsers(world({ hasPackage: false }))
    expect(places).toEqual([])
    expect(missing).toContain('npm package @sparticuz/chromium')
    expect(missing).toContain('chromium on PATH')
    expect(missing.length).toBeGreaterThanOrEqual(7)
  })
})
