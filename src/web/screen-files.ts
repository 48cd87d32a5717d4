/**
 * Where each page's screen is, and how to fetch it.
 *
 * @module
 */

/** A screen is fetched when it is first gone to. A page that is not listed here is linked from nowhere. */
export const screenFiles = {
  boats: async () => (await import('./screens/boats.js')).BoatsScreen,
  new: async () => (await import('./screens/new-boat.js')).NewBoatScreen,
  settings: async () => (await import('./screens/settings.js')).SettingsScreen,
  logbook: async () => (await import('./screens/logbook.js')).LogbookScreen,
  writeEntry: async () => (await import('./screens/write-entry.js')).WriteEntry,
  set: async () => (await import('./screens/set.js')).SetScreen,
  forecast: async () => (await import('./screens/forecast.js')).ForecastScreen,
  alternatives: async () => (await import('./screens/alternatives.js')).AlternativesScreen,
  faults: async () => (await import('./screens/faults.js')).FaultsScreen,
  brief: async () => (await import('./screens/brief.js')).BriefScreen,
  plan: async () => (await import('./screens/plan.js')).PlanScreen,
  sizing: async () => (await import('./screens/sizing.js')).SizingScreen,
  job: async () => (await import('./screens/job.js')).JobScreen,
  'job-quotes': async () => (await import('./screens/job-quotes.js')).JobQuotesScreen,
  'job-calendar': async () => (await import('./screens/job-calendar.js')).JobCalendarScreen,
  'job-kit': async () => (await import('./screens/job-kit.js')).JobKitScreen,
  'job-apart': async () => (await import('./screens/job-apart.js')).JobApartScreen,
  'job-sheet': async () => (await import('./screens/job-sheet.js')).JobSheetScreen,
  proof: async () => (await import('./screens/proof.js')).ProofScreen,
  'proof-report': async () => (await import('./screens/proof-report.js')).ProofReportScreen,
  links: async () => (await import('./screens/links.js')).LinksScreen,
  'shop-sheet': async () => (await import('./screens/shop-sheet.js')).ShopSheetScreen,
  'looking-back': async () => (await import('./screens/looking-back.js')).LookingBackScreen,
} as const
