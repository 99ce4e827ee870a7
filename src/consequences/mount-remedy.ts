/** A pump whose flange or shaft does not match what is there: plate, hub or coupling. */
import type { Finding } from '../evaluation.ts'
import type { Circuit } from '../machine.ts'
import type { Json } from '../question.ts'
import type { Part, Shop } from '../shop.ts'
import { chainUpTo, type RemedyInput } from './answer-finding.ts'
import { atLeastStated, type Candidate, cheaperFirst, choose } from './choose.ts'
import { mountWanted, plain, pumpRemedy, sameText, standing, together } from './pump-remedies.ts'
import { couplings } from './stock.ts'
import { adapters } from './stock-lines.ts'
import type { PartUse, Remedy } from './uses.ts'

/** A plate or hub from the list that joins two flanges or two shafts. */
export const plateBetween = (one: string, other: string, shop: Shop): Part | null => {
  const joins = ([a, b]: readonly [string, string]) =>
    (plain(a) === plain(one) && plain(b) === plain(other)) || (plain(a) === plain(other) && plain(b) === plain(one))
  return (
    adapters(shop)
      .filter(({ figures }) => joins(figures.sides))
      .map(({ part }) => part)
      .toSorted(cheaperFirst(shop))[0] ?? null
  )
}

/** A coupling whose hub is bored for the shaft, as strong as the one that is there. */
export const couplingFor = (shaft: string, circuit: Circuit, shop: Shop): Candidate<unknown> | null => {
  const torque = circuit.coupling?.ratedTorque ?? 0
  const { chosen } = choose(
    couplings(shop),
    [
      { what: 'shaft', met: (figures) => figures.shaft !== null && plain(figures.shaft) === plain(shaft) },
      { what: 'torque', met: (figures) => atLeastStated(figures.ratedTorque, torque) },
    ],
    ({ ratedTorque }) => ratedTorque,
    shop,
  )
  return chosen
}

interface Mismatch {
  readonly what: 'flange' | 'shaft'
  readonly now: string
  readonly there: string
  readonly part: Part | null
  readonly isCoupling: boolean
}

/**
 * A pump that does not go on: a plate for the flange, a hub or a coupling for the shaft; for the wrong rotation another
 * pump of the same size. What is joined counts as matching from then on.
 */
export const mountRemedy = (input: RemedyInput, on: Circuit, because: readonly Finding[]): Remedy => {
  const circuit = standing(input, together(input, on)) ?? on
  const component = `circuits.${circuit.name}.pump.mount`
  if (because.some(({ check }) => check === 'pump-rotation')) return pumpRemedy(input, circuit, because)
  const wanted = mountWanted(input, circuit)
  const own = circuit.pump.mount
  const mismatches = (['flange', 'shaft'] as const).flatMap((what): readonly Mismatch[] => {
    const [now, there] = [own[what], wanted[what]]
    if (now === null || there === null || sameText(now, there)) return []
    const plate = plateBetween(now, there, input.shop)
    const coupling = plate === null && what === 'shaft' ? (couplingFor(now, circuit, input.shop)?.part ?? null) : null
    return [{ what, now, there, part: plate ?? coupling, isCoupling: coupling !== null }]
  })
  const missing = mismatches.filter(({ part }) => part === null)
  const order = missing.length > 0 && input.shop.specialOrder.some(({ kind }) => kind === 'adapter')
  const stop = missing.length > 0 && !order
  const uses = mismatches.map(({ part, isCoupling, what, now, there }): PartUse => {
    const kind = isCoupling ? 'coupling' : 'adapter'
    return { component, kind, part: part?.id ?? null, what: part?.name ?? `${what} ${now} to ${there}`, quantity: 1 }
  })
  const lacking = missing.map(({ what, now, there }) => `${what} ${now} to ${there}`).join(', ')
  const words = stop
    ? `no plate or hub to be had: ${lacking}`
    : `joined by ${mismatches.map(({ part, what }) => part?.name ?? `a ${what} adapter to order`).join(' and ')}`
  const mount = Object.fromEntries(mismatches.map(({ what, there }) => [what, there]))
  const patches = together(input, circuit).map((one): readonly [string, Json] => [one.name, { pump: { mount } }])
  const coupling = mismatches.find(({ isCoupling }) => isCoupling)?.part ?? null
  return {
    consequence: {
      component,
      kind: 'adapter',
      action: 'adapt',
      part: mismatches[0]?.part?.id ?? null,
      quantity: mismatches.length,
      because: because.map(({ id }) => id),
      connections: mismatches.map(({ now, there, part }) => ({ from: now, to: there, adapter: part?.id ?? null })),
      available: missing.length === 0,
      specialOrder: order,
      chain: [...chainUpTo(input, because), words],
    },
    patch: stop
      ? null
      : coupling === null
        ? { circuits: Object.fromEntries(patches) }
        : {
            circuits: Object.fromEntries(
              patches.map(([name, patch]) => [
                name,
                name === circuit.name ? { ...(patch as object), coupling: { part: coupling.id } } : patch,
              ]),
            ),
          },
    uses: stop ? [] : uses,
    jobs: stop || coupling === null ? [] : [{ component, job: 'replace coupling', quantity: 1 }],
    stop,
  }
}
