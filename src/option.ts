/**
 * One option worked through: as asked, then with every component that must change because of it, until nothing asks any
 * more; priced and answered.
 */
import { decide } from './answer/decide.ts'
import { isProtecting, type OptionFacts } from './answer/facts.ts'
import { gainOver } from './answer/gain.ts'
import { type Carried, carry } from './calibration/carried.ts'
import type { Work } from './circuit/duty.ts'
import { askedChanges } from './consequences/asked.ts'
import { inWords } from './consequences/names.ts'
import { inTurn, type Remedy, remedies, settle } from './consequences/remedy.ts'
import { buildUpOf } from './costing/build-up.ts'
import { quote } from './costing/quote.ts'
import type { BuildUp, Consequence, Cost, Evaluation, Fault, Finding, OptionResult } from './evaluation.ts'
import { type Evaluated, judge, workOut } from './findings/evaluate-machine.ts'
import type { Loaded, PreparedMachine } from './loaded.ts'
import type { Json, OptionRequest } from './question.ts'
import { OIL_TEMPERATURE_LIMITS } from './tables/oil-risk.ts'
import { litresFromCubicMetres } from './units/shop-units.ts'
import type { WorkOrder } from './work-order.ts'
import { workOrderOf } from './work-orders/work-order-of.ts'

/** Passes of the consequence loop; more would mean that two components ask for each other in turn. */
const MOST_PASSES = 20

/** What every option of a scenario starts from. */
export interface Start {
  readonly before: Evaluated
  readonly beforeJudged: Evaluation
  readonly carried: Carried
  /** Options are held against the restored machine. */
  readonly isRestored: boolean
  readonly faults: readonly Fault[]
  readonly work: Work
}

export interface OptionOutcome {
  /** The machine with the changes and the consequences, for ranges. */
  readonly prepared: PreparedMachine
  readonly result: OptionResult
  readonly workOrder: WorkOrder
  readonly buildUp: BuildUp
}

/** Findings that ask for a component: severity change, and not merely there before. */
const asking = (evaluation: Evaluation, done: ReadonlySet<string>): readonly Finding[] =>
  evaluation.findings.filter((f) => f.severity === 'change' && !f.existing && !done.has(f.id))

interface Pass {
  readonly prepared: PreparedMachine
  readonly evaluated: Evaluated
  readonly judged: Evaluation
}

const runPass = (loaded: Loaded, start: Start, patches: readonly Json[]): Pass => {
  const { site } = loaded.scenario
  const prepared = loaded.prepare(patches)
  const machine = carry(prepared.resolve().machine, start.carried, start.isRestored)
  const evaluated = workOut(machine, site, start.work)
  return { prepared, evaluated, judged: judge(evaluated, start.before, site, start.work) }
}

/** Neither on the list nor to order. */
const isNowhere = ({ available, specialOrder }: Consequence): boolean => !available && !specialOrder

/** What joins a hose to its port and is to be had nowhere: no check asks for it, so it is told as a finding of its own. */
const unjoined = ({ component, connections, kind }: Consequence): Finding => {
  const open = connections.find(({ from, to, adapter }) => adapter === null && from !== to)
  return {
    id: `line-joint:${component}`,
    component,
    check: 'line-joint',
    value: open?.from ?? null,
    limit: open?.to ?? null,
    unit: '',
    severity: 'stop',
    existing: false,
    because: `Without the right ${kind === 'adapter' ? 'adapter' : 'hose end'} this hose cannot be screwed in.`,
    source: "the shop's parts list",
    heading: 'Nothing to be had joins this hose to its port',
  }
}

/**
 * A finding for which there is no part and no order is a stop; so is a hose that nothing joins, and a loop that does not
 * come to rest.
 */
const withStops = (
  judged: Evaluation,
  stopped: ReadonlySet<string>,
  nowhere: readonly Consequence[],
  unsettled: boolean,
): Evaluation => {
  const findings: Finding[] = judged.findings.map((f) =>
    // What something else has put right since is none.
    stopped.has(f.id) && f.severity !== 'ok' ? { ...f, severity: 'stop' } : f,
  )
  const answered = nowhere.filter(({ because }) => !because.some((id) => stopped.has(id)))
  findings.push(...answered.map(unjoined))
  if (unsettled)
    findings.push({
      id: 'consequences-unsettled:machine',
      component: 'machine',
      check: 'consequences-unsettled',
      value: MOST_PASSES,
      limit: MOST_PASSES,
      unit: 'passes',
      severity: 'stop',
      existing: false,
      because: 'Each part that was changed asked for another one in turn, without an end.',
      source: 'the tool itself',
      heading: 'The consequences do not come to rest',
    })
  return { ...judged, findings }
}

interface Followed {
  readonly pass: Pass
  readonly patches: readonly Json[]
  readonly remedies: readonly Remedy[]
  readonly unsettled: boolean
}

/** The consequence loop: findings ask, remedies answer, the machine is evaluated again. */
const follow = (loaded: Loaded, start: Start, request: OptionRequest, asked: Pass): Followed => {
  const { scenario, shop } = loaded
  const done = new Set<string>()
  const patches: Json[] = [request.changes]
  const taken: Remedy[] = []
  let pass = asked
  for (let round = 0; round < MOST_PASSES; round++) {
    const findings = inTurn(asking(pass.judged, done))
    if (findings.length === 0) return { pass, patches, remedies: taken, unsettled: false }
    const { heat } = pass.judged
    const found = remedies({
      asking: findings,
      machine: pass.evaluated.machine,
      before: start.before.machine,
      shop,
      site: scenario.site,
      figures: pass.evaluated.figures,
      steady: {
        averageHeatKw: heat.averageHeatKw,
        returnFlowLpm: pass.evaluated.more.returnFlowLpm,
        steadyOilC: heat.steadyOilC,
      },
      targetOilC: scenario.wants.oilBelow ?? OIL_TEMPERATURE_LIMITS.moderate,
      option: request.name,
      done,
      earlier: taken.map((remedy) => remedy.consequence),
    })
    const moves = found.some((remedy) => remedy.patch !== null)
    for (const finding of findings) {
      const answered = found.some((r) => r.patch !== null && r.consequence.because.includes(finding.id))
      if (!answered) done.add(finding.id)
    }
    taken.push(...found)
    patches.push(...found.flatMap((remedy) => (remedy.patch === null ? [] : [remedy.patch])))
    if (moves) pass = runPass(loaded, start, patches)
  }
  return { pass, patches, remedies: taken, unsettled: asking(pass.judged, done).length > 0 }
}

/** Evaluates one option of the scenario. */
export const evaluateOption = (loaded: Loaded, start: Start, request: OptionRequest): OptionOutcome => {
  const { scenario, shop } = loaded
  const asked = runPass(loaded, start, [request.changes])
  const wished = askedChanges({
    before: start.before.machine,
    after: asked.evaluated.machine,
    changes: request.changes,
    shop,
    option: request.name,
  })
  const followed = follow(loaded, start, request, asked)
  const settled = settle(wished, followed.remedies)
  const { consequences } = settled
  const stopped = new Set(settled.stopped)
  const nowhere = consequences.filter(isNowhere)
  /** In words: what can neither be bought nor ordered. */
  const missing = nowhere.map(({ component }) => inWords(component, followed.pass.evaluated.machine))
  const evaluation = withStops(followed.pass.judged, stopped, nowhere, followed.unsettled)
  const cost: Cost = quote({
    uses: settled.uses,
    jobs: settled.jobs,
    shop,
    reservoirLitres: litresFromCubicMetres(followed.pass.evaluated.machine.reservoir.volume),
    oil: followed.pass.evaluated.machine.oil,
  })
  const gain = gainOver(start.beforeJudged, evaluation, scenario.site, cost)
  const protecting = isProtecting(request.changes)
  const facts: OptionFacts = {
    before: { machine: start.before.machine, evaluation: start.beforeJudged },
    after: { machine: followed.pass.evaluated.machine, evaluation },
    changes: request.changes,
    protecting,
    missing: followed.unsettled ? [...missing, 'what each new part asks for in turn'] : missing,
    cost,
    gain,
    site: scenario.site,
    wants: scenario.wants,
    status: scenario.status,
    alternatives: scenario.alternatives,
    limits: shop.limits,
    faults: start.faults,
  }
  return {
    prepared: followed.pass.prepared,
    result: {
      name: request.name,
      why: request.why,
      protecting,
      changes: wished.changes,
      consequences,
      evaluation,
      asAskedOnly: asked.judged,
      cost,
      gain,
      range: null,
      answer: decide(facts),
      found: null,
      sameAs: null,
    },
    workOrder: workOrderOf({
      option: request.name,
      uses: settled.uses,
      jobs: settled.jobs,
      consequences,
      before: start.before.machine,
      after: followed.pass.evaluated.machine,
      cost,
      shop,
    }),
    buildUp: buildUpOf(request.name, cost, shop),
  }
}
