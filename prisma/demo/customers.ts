/** Invented people and crews. Telephone numbers lie in the range kept for fiction, addresses under `.example`. */
export interface DemoCustomer {
  readonly name: string
  readonly phone: string
  readonly email: string
}

export const customers = {
  maren: { name: 'Maren Holloway-Fisk', phone: '555-0101', email: 'maren@thornhill-ascent.example' },
  ascent: { name: 'Thornhill Ascent Crew', phone: '555-0102', email: 'garage@thornhill-ascent.example' },
  saltmarsh: { name: 'Saltmarsh Boat Hire', phone: '555-0117', email: 'boats@saltmarsh.example' },
  ferryman: { name: 'Ansel Ferryman', phone: '555-0123', email: 'ansel@ferryman.example' },
  netmaker: { name: 'Netmaker Fishing Co-operative', phone: '555-0130', email: 'harbour@netmaker.example' },
  tilda: { name: 'Tilda Brackenbury', phone: '555-0135', email: 'tilda@brackenbury.example' },
  otis: { name: 'Otis Wyndlow', phone: '555-0142', email: 'otis@wyndlow.example' },
  corin: { name: 'Corin Applegarth', phone: '555-0148', email: '' },
  jessamy: { name: 'Jessamy Vole', phone: '555-0151', email: 'jessamy@vole.example' },
  dunstan: { name: 'Dunstan Oakhurst', phone: '555-0159', email: 'dunstan@oakhurst.example' },
  pumphouse: { name: 'Old Pumphouse Trust', phone: '555-0163', email: 'engine@pumphouse.example' },
  larkfield: { name: 'Larkfield Gliding Meadow', phone: '555-0170', email: 'winch@larkfield.example' },
  imogen: { name: 'Imogen Starling-Pew', phone: '555-0176', email: 'imogen@starling-pew.example' },
  hesper: { name: 'Hesper Delivery Vans', phone: '555-0184', email: 'workshop@hesper.example' },
} as const satisfies Record<string, DemoCustomer>

export type CustomerKey = keyof typeof customers
