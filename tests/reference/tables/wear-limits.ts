import type { CheckTable } from './check-table.ts'

/** A published range for one size or clearance; null where the manual gives no limit on that side. */
export interface PublishedLimits {
  readonly item: string
  readonly unit: 'inch' | 'millimetre'
  readonly low: string | null
  readonly high: string | null
}

const inch = (item: string, low: string | null, high: string | null): PublishedLimits => ({ item, unit: 'inch', low, high })
const metric = (item: string, low: string | null, high: string | null): PublishedLimits => ({ item, unit: 'millimetre', low, high })

const manual = (name: string, values: readonly PublishedLimits[]): CheckTable<PublishedLimits> => ({
  title: name, source: `US Army technical manual ${name}, read as page text`, label: 'read', tolerance: 0,
  reason: 'inches to five decimals and microns are whole nanometres', values,
})
const sheet = (title: string, source: string, values: readonly PublishedLimits[]): CheckTable<PublishedLimits> => ({
  title, source, label: 'read', tolerance: 0, reason: 'inches to five decimals and microns are whole nanometres', values,
})

/** Limits new and worn, as their publishers print them. */
export const publishedLimits: readonly CheckTable<PublishedLimits>[] = [
  manual('TM 9-2815-225-34&P, appendix F', [
    inch('main journal, new', '4.4985', '4.500'), inch('main journal, worn', '4.4975', null),
    inch('rod journal, new', '3.1235', '3.125'), inch('rod journal, worn', '3.122', null),
    inch('liner bore, new', '5.4995', '5.501'), inch('liner bore, worn', null, '5.505'),
    inch('main bearing bore, new', '4.7485', '4.750'), inch('main bearing bore, worn', null, '4.7505'),
  ]),
  manual('TM 9-6115-604-34, table 1-4', [
    inch('main clearance, new', '0.0036', '0.0075'), inch('main clearance, worn', null, '0.0095'),
    inch('rod clearance, new', '0.0025', '0.0065'), inch('rod clearance, worn', null, '0.0090'),
    inch('crank end clearance, new', '0.005', '0.015'), inch('crank end clearance, worn', null, '0.020'),
    inch('liner bore, new', '6.2495', '6.2510'), inch('liner bore, worn', null, '6.2550'),
  ]),
  manual('TM 5-3895-346-14', [
    inch('crank end play, new', '0.0040', '0.0110'), inch('crank end play, worn', null, '0.0180'),
    inch('rod clearance, new', '0.0015', '0.0045'), inch('rod clearance, worn', null, '0.0060'),
  ]),
  manual('TM 9-2815-213-34', [
    inch('end clearance, new', '0.005', '0.015'), inch('end clearance, worn', null, '0.0220'),
    inch('rod bore', '3.3160', '3.3165'), inch('shell, new', '0.0942', '0.0947'), inch('shell, worn', '0.0929', null),
    inch('rod journal, new', '3.1240', '3.1253'), inch('rod journal, worn', '3.1215', null),
    inch('pin bushing, new', '1.7510', '1.7515'), inch('pin bushing, worn', null, '1.7525'),
  ]),
  manual('TM 5-3805-262-34', [
    inch('journal taper', null, '0.0005'), inch('journal out-of-round', null, '0.0005'),
    inch('journal reground 0.010', '2.738', '2.739'), inch('journal reground 0.020', '2.728', '2.729'),
    inch('journal reground 0.030', '2.718', '2.719'),
  ]),
  manual('TM 5-3805-281-24-2', [
    metric('main journal', '95.201', '95.227'), metric('journal out-of-round', null, '0.025'),
    metric('oil clearance', '0.030', '0.107'),
  ]),
  manual('TM 9-2815-260-24', [inch('oil clearance', '0.0016', '0.0043')]),
  manual('TM 5-6115-584-34', [inch('rod side clearance', '0.0020', '0.0160')]),
  manual('TM 5-6115-545-34', [
    inch('first ring gap', '0.013', '0.027'), inch('second and third ring gap', '0.013', '0.024'),
    inch('first ring side clearance', '0.0040', '0.0060'), inch('second ring side clearance', '0.0020', '0.0040'),
    inch('oil ring side clearance', '0.0005', '0.0030'), inch('piston in bore', '0.0025', '0.0050'),
  ]),
  manual('TM 5-3825-225-14&P', [inch('ring gap', '0.009', '0.014'), inch('ring side clearance', '0.0025', '0.0045')]),
  manual('TM 10-3930-653-14&P', [
    metric('top ring gap, new', '0.25', '0.40'), metric('other ring gap, new', '0.15', '0.30'),
    metric('ring gap, worn', null, '1.0'),
  ]),
  sheet('Cadillac 4.6 V8, 1999', 'factory service specifications as mirrored on the web', [
    inch('top ring gap', '0.010', '0.016'), inch('second ring gap', '0.014', '0.020'), inch('oil rail gap', '0.010', '0.030'),
    inch('ring side clearance', '0.0016', '0.0037'),
  ]),
  sheet('GM 7.4 V8, 1999', 'factory service specifications as mirrored on the web', [
    inch('top ring gap, new', '0.010', '0.018'), inch('top ring gap, worn', null, '0.028'),
    inch('second ring gap, new', '0.016', '0.024'), inch('second ring gap, worn', null, '0.034'),
    inch('ring side clearance, new', '0.0012', '0.0029'), inch('ring side clearance, worn', null, '0.0039'),
  ]),
  sheet('Honda 1.5, 1995', 'factory service specifications as mirrored on the web', [
    inch('top ring gap', '0.006', '0.012'), inch('second ring gap', '0.012', '0.018'), inch('piston in bore', '0.0004', '0.0016'),
  ]),
  sheet('Yanmar JH4E', 'service manual, p. 178', [
    metric('bore roundness, new', null, '0.01'), metric('bore roundness, worn', null, '0.030'),
  ]),
  sheet('Yamaha FX160', 'service manual, p. 5-93', [metric('bore taper', null, '0.08'), metric('bore out-of-round', null, '0.05')]),
]
