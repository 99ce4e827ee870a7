/** Memory of a process and of everything that it started, on Linux. */
import { readdirSync, readFileSync } from 'node:fs'

const read = (path: string): string => {
  try {
    return readFileSync(path, 'latin1')
  } catch {
    return '' // it has ended meanwhile
  }
}

const parentOf = (pid: number): number => Number(/\) \S+ (\d+) /u.exec(read(`/proc/${pid}/stat`))?.[1] ?? 0)

const childrenOf = (pid: number): readonly number[] => {
  const all = readdirSync('/proc').filter((name) => /^\d+$/u.test(name))
  const direct = all.map(Number).filter((other) => parentOf(other) === pid)
  return direct.flatMap((child) => [child, ...childrenOf(child)])
}

/** Pages that several processes share are counted once: proportional set size [MB]. */
const sharedOnce = (pid: number): number =>
  Number(/^Pss:\s+(\d+) kB/mu.exec(read(`/proc/${pid}/smaps_rollup`))?.[1] ?? 0) / 1024

export interface Memory {
  /** The process itself [MB]. */
  readonly own: number
  /** Everything below it: the browser [MB]. */
  readonly below: number
}

export const memoryOf = (pid: number): Memory => ({
  own: sharedOnce(pid),
  below: childrenOf(pid).reduce((sum, child) => sum + sharedOnce(child), 0),
})

/** Looks at the first process that `pid` has started, now and then until it is stopped; the most of each. */
export const watchMemory = (pid: number): (() => Memory) => {
  let most: Memory = { own: 0, below: 0 }
  const look = () => {
    const [child] = childrenOf(pid)
    if (child === undefined) return
    const now = memoryOf(child)
    most = { own: Math.max(most.own, now.own), below: Math.max(most.below, now.below) }
  }
  const timer = setInterval(look, 500)
  return () => {
    clearInterval(timer)
    return most
  }
}
