/** Circuits that hang together in every way that a machine file allows, from a seed, with marks on some of what is drawn. */
import type { Diagram, DiagramCircuit, DiagramLine } from '../../../src/diagram.ts'
import { drawableIds, type Mark } from '../../../src/report/drawing/marks.ts'
import { seeded } from '../../fixtures/random-machine.ts'

const NAMES = ['arms', 'attachment', 'third', 'steering', 'auxiliary-hydraulics-at-the-rear', 'x', 'WWWWWWWWWWWWWWWW']

export interface RandomDiagram {
  readonly diagram: Diagram
  readonly marks: readonly Mark[]
}

export const randomDiagram = (seed: number): RandomDiagram => {
  const next = seeded(seed * 104729 + 7)
  const chance = (share: number) => next() < share
  const pick = <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)] as T
  const line = (id: string): DiagramLine => ({
    id,
    dash: chance(0.7) ? pick([4, 6, 8, 12, 20]) : null,
    boreMm: pick([6.4, 12.7, 31.8]),
  })
  const maybe = (id: string, share = 0.9) => (chance(share) ? line(id) : null)
  const circuit = (
    name: string,
    drives: DiagramCircuit['drives'],
    suctionSharedWith: string | null,
  ): DiagramCircuit => {
    const id = (part: string) => `circuits.${name}.${part}`
    const works = (['implements', 'attachment'] as const).filter(() => chance(0.5))
    return {
      name,
      pump: { id: id('pump'), displacementCm3: pick([4, 6.8, 13.7, 122]) },
      coupling: chance(0.7) ? { id: id('coupling') } : null,
      relief: { id: id('relief'), settingBar: pick([95, 150, 214.3]) },
      valve: chance(0.85) ? { id: id('valve'), ratedFlowLpm: pick([null, 20, 37.9, 120]) } : null,
      suction: suctionSharedWith === null ? maybe(id('lines.suction')) : null,
      suctionSharedWith,
      pressure: maybe(id('lines.pressure')),
      return: maybe(id('lines.return')),
      drives,
      works,
      auxiliary:
        works.includes('attachment') && chance(0.8)
          ? {
              out: maybe(id('auxiliary.lines.out')),
              back: maybe(id('auxiliary.lines.back')),
              coupler: chance(0.6) ? { id: id('auxiliary.coupler'), flowLpm: pick([45, 112.5]) } : null,
            }
          : null,
    }
  }
  const share = (with_: string) => (chance(0.4) ? with_ : null)
  const driving = chance(0.5)
    ? [circuit('main', 'both tracks', null)]
    : [circuit('left', 'left track', null), circuit('right', 'right track', share('left'))]
  const others = [...NAMES]
    .sort(() => next() - 0.5)
    .slice(0, pick([0, 0, 1, 1, 2, 3]))
    .map((name) => circuit(name, 'no track', share(driving[0]?.name ?? '')))
  const circuits = chance(0.3) ? [...others, ...driving] : [...driving, ...others]
  const wheels = chance(0.3)
  const ways = pick([['valve-to-motor'], ['valve-to-swivel', 'swivel-to-motor'], ['a', 'b', 'c'], ['a', 'b'], []])
  const diagram: Diagram = {
    engine: { id: 'engine' },
    circuits,
    travel: {
      running: wheels ? 'wheels' : 'tracks',
      motors: wheels ? pick([2, 4]) : 2,
      motor: {
        id: 'travel.motor',
        displacementCm3: pick([125, 310]),
        secondDisplacementCm3: chance(0.3) ? 155.5 : null,
      },
      block: chance(0.5) ? { id: 'travel.motor.block' } : null,
      swivel: chance(0.6) ? { id: 'travel.swivel' } : null,
      lines: ways.map((way) => line(`travel.lines.${way}`)),
    },
    filter: chance(0.5) ? { id: 'filter', ratedFlowLpm: pick([null, 60, 150]) } : null,
    cooler: chance(0.5) ? { id: 'cooler', capacityWK: pick([42, 1234]) } : null,
    strainer: chance(0.6) ? { id: 'strainer' } : null,
    reservoir: { id: 'reservoir', volumeL: pick([8, 37.5, 120]) },
  }
  const share_ = pick([0, 0.2, 0.6, 1])
  const marked = [...drawableIds(diagram), 'lamp-set', 'circuits.main.pump.mount'].filter(() => chance(share_))
  const marks = marked.flatMap((component) => (chance(0.15) ? [component, component] : [component]))
  return { diagram, marks: marks.map((component, index) => ({ number: String(index + 1), component })) }
}
