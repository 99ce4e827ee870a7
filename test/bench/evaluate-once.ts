/** Bundled by start.bench.ts: one scenario read and evaluated in a process that has loaded everything; prints how long [ms]. */
import { evaluate } from '../../src/evaluate.ts'
import { load } from '../../src/shell/load.ts'

/** Processor time of this process, of every thread of it. */
const spent = (): number => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

const [began, spentBefore] = [performance.now(), spent()]
const read = load(process.argv[2] ?? '', '.')
if ('problems' in read) throw new Error('the scenario has mistakes')
const between = performance.now()
evaluate(read.loaded)
const worked = spent() - spentBefore
console.log(JSON.stringify({ reading: between - began, evaluation: performance.now() - between, worked }))
