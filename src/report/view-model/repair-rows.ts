/** Rows of a repair that no part was ordered for: work only, or the other pump of one housing. */
import type { Fault, Restoration, ResultDocument } from '../../evaluation.ts'
import { typeset } from '../format.ts'
import { plainName } from '../names.ts'
import { en } from '../wording.ts'
import type { PartRow } from './parts.ts'

/** The job of the quote that answers a fault without a part: it names the component in its last word. */
const jobFor = ({ component }: Fault, { cost }: Restoration): string | undefined => {
  const last = component.split('.').at(-1) ?? ''
  return cost.labour.find(({ job }) => job.split(' ').includes(last))?.job
}

/** The worn pump comes new with the other one of its housing. */
const isTandem = ({ component }: Fault, { consequences }: Restoration): boolean =>
  component.endsWith('.pump') && consequences.some(({ kind }) => kind === 'tandem pump')

/** Faults that no part of the repair was ordered for. */
export const workRows = (result: ResultDocument, restoration: Restoration): readonly PartRow[] =>
  result.recommendation.faults
    .filter(
      ({ component, text }) =>
        !restoration.consequences.some((each) => each.component === component || each.chain.includes(text)),
    )
    .map((fault, index) => {
      const { name, gloss } = plainName(fault.component)
      const job = jobFor(fault, restoration)
      return {
        number: String(index + 1),
        component: fault.component,
        isAsked: false,
        what: en.capital(name),
        gloss,
        because: en.sentence(typeset(fault.text)),
        values: [],
        part: isTandem(fault, restoration)
          ? en.parts.sameHousing
          : job === undefined
            ? en.parts.workOnly
            : en.parts.work(job),
        joints: [],
        price: en.parts.inPrice,
        missing: false,
      }
    })
