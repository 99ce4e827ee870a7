/**
 * What anybody would write: puppeteer, one page, one PDF after the other. Prints finished HTML and does nothing else.
 * Arguments: a JSON file with the browser, its arguments, the HTML files and the folder for the PDFs.
 */
import { readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import puppeteer from 'puppeteer'

const { executablePath, args, headless, env, pages, out } = JSON.parse(readFileSync(process.argv[2], 'utf8'))
const browser = await puppeteer.launch({ executablePath, args, headless, pipe: true, env: { ...process.env, ...env } })
const page = await browser.newPage()
const times = []
for (const file of pages) {
  const began = performance.now()
  await page.setContent(readFileSync(file, 'utf8'), { waitUntil: 'load' })
  await page.pdf({
    path: join(out, `${basename(file)}.pdf`),
    preferCSSPageSize: true,
    printBackground: true,
    tagged: true,
    outline: true,
  })
  times.push(performance.now() - began)
}
await browser.close()
process.stdout.write(JSON.stringify(times))
