/* Fills the structures of the model from the flat sections. */
#ifndef READ_H
#define READ_H

#include "model.h"

static double doubleAt(const char *name, int i) {
  return ((double *)column(name))[i];
}

static int integerAt(const char *name, int i) {
  return ((i32 *)column(name))[i];
}

static int byteAt(const char *name, int i) {
  return ((u8 *)column(name))[i];
}

static Amount amountAt(const char *name, int i) {
  return (Amount){((u8 *)columnOf(name, "kind"))[i], ((double *)columnOf(name, "level"))[i],
                  ((double *)columnOf(name, "spread"))[i]};
}

static void *roomFor(int count, size_t size) {
  return calloc((size_t)count + 1, size);
}

static Repair readRepair(int r) {
  const int from = integerAt("repairs.supplyFrom", r);
  const int count = integerAt("repairs.supplyFrom", r + 1) - from;
  Repair repair = {amountAt("repairs.price", r),     amountAt("repairs.workshop", r),    doubleAt("repairs.hours", r),
                   doubleAt("repairs.trips", r),     doubleAt("repairs.wrongPart", r),   doubleAt("repairs.intrusion", r),
                   doubleAt("repairs.lastLikelier", r), byteAt("repairs.byOwner", r) == 1, count,
                   roomFor(count, sizeof(Supply))};
  for (int s = 0; s < count; s++) {
    repair.supply[s] = (Supply){doubleAt("repairs.supplyChance", from + s), doubleAt("repairs.supplyPrice", from + s),
                                doubleAt("repairs.supplyQuality", from + s), amountAt("repairs.supplyDays", from + s)};
  }
  return repair;
}

static void readChecks(ModeKind *mode, int m) {
  const int from = integerAt("modes.checkFrom", m);
  mode->checks = integerAt("modes.checkFrom", m + 1) - from;
  mode->check = roomFor(mode->checks, sizeof(Check));
  if (mode->checks > MOST_CHECKS) {
    fprintf(stderr, "a mode has too many checks for this program\n");
    exit(1);
  }
  for (int c = 0; c < mode->checks; c++) {
    mode->check[c] = (Check){doubleAt("plain.detection", from + c), doubleAt("plain.detectionFailed", from + c),
                             doubleAt("plain.diligence", from + c), doubleAt("modes.checkEvery", from + c)};
  }
}

static void readLinks(ModeKind *mode, int m) {
  const int from = integerAt("modes.linkFrom", m);
  mode->links = integerAt("modes.linkFrom", m + 1) - from;
  mode->link = roomFor(mode->links, sizeof(Link));
  for (int l = 0; l < mode->links; l++) {
    const int at = from + l;
    mode->link[l] = (Link){integerAt("modes.linkPart", at),       integerAt("modes.linkMode", at),
                           integerAt("modes.linkGuard", at),      doubleAt("modes.linkChance", at),
                           doubleAt("modes.linkGuardEffect", at), byteAt("modes.linkStartsDefect", at) == 1};
  }
}

static void readWear(ModeKind *mode, int m) {
  const int from = integerAt("modes.wearFrom", m);
  mode->wears = integerAt("modes.wearFrom", m + 1) - from;
  mode->wear = roomFor(mode->wears, sizeof(Wear));
  for (int w = 0; w < mode->wears; w++) {
    mode->wear[w] = (Wear){integerAt("modes.wearMode", from + w), doubleAt("modes.wearFactor", from + w)};
  }
}

static void readMode(int m) {
  ModeKind *mode = &model.mode[m];
  mode->part = integerAt("modes.part", m);
  mode->clock = byteAt("modes.clock", m);
  mode->delayKind = byteAt("modes.delayKind", m);
  mode->delayClock = byteAt("modes.delayClock", m);
  mode->outcome = byteAt("modes.outcome", m);
  mode->shape = doubleAt("modes.shape", m);
  mode->onsetScale = doubleAt("modes.onsetScale", m);
  mode->logSd = doubleAt("modes.logSd", m);
  mode->delayLevel = doubleAt("modes.delayLevel", m);
  mode->delaySpread = doubleAt("modes.delaySpread", m);
  mode->stops = doubleAt("modes.stops", m);
  mode->soot = doubleAt("modes.soot", m);
  mode->agesLess = doubleAt("modes.agesLess", m);
  mode->delayFactor = doubleAt("modes.delayFactor", m);
  mode->hidden = byteAt("modes.hidden", m) == 1;
  mode->repair = &model.repair[integerAt("modes.repair", m)];
  /* Nothing can be patched that gives no warning: it would fail again at once (25). */
  if (mode->outcome == PATCHED && mode->delayKind == NO_DELAY) mode->outcome = CLEARED;
  readChecks(mode, m);
  readLinks(mode, m);
  readWear(mode, m);
}

static void readPart(int p) {
  PartKind *part = &model.part[p];
  part->firstMode = integerAt("parts.modeFrom", p);
  part->modes = integerAt("parts.modeFrom", p + 1) - part->firstMode;
  part->broken = integerAt("parts.broken", p);
  part->repair = &model.repair[integerAt("parts.repair", p)];
  part->access = (u64)(u32)integerAt("parts.accessLow", p) | (u64)(u32)integerAt("parts.accessHigh", p) << 30;
  part->serviced = byteAt("parts.serviced", p) == 1;
  part->serviceRenews = byteAt("parts.serviceRenews", p) == 1;
  part->serviceByOwner = byteAt("parts.serviceByOwner", p) == 1;
  part->serviceHours = doubleAt("parts.serviceHours", p);
  part->serviceYears = doubleAt("parts.serviceYears", p);
  part->serviceDiligence = doubleAt("parts.serviceDiligence", p);
  part->servicePrice = doubleAt("parts.servicePrice", p);
  part->serviceWork = doubleAt("parts.serviceWork", p);
  part->quality = doubleAt("parts.presentQuality", p);
  part->clears = integerAt("parts.clearsFrom", p + 1) - integerAt("parts.clearsFrom", p);
  part->clear = (i32 *)column("parts.clearsMode") + integerAt("parts.clearsFrom", p);
  part->nears = integerAt("parts.nearFrom", p + 1) - integerAt("parts.nearFrom", p);
  part->near = (i32 *)column("parts.nearPart") + integerAt("parts.nearFrom", p);
}

static Tables readTables(const char *name) {
  return (Tables){countOf(nameOf(name, "kappaLog")), columnOf(name, "kappaLog"), columnOf(name, "kappaWeight"),
                  columnOf(name, "joint"),           columnOf(name, "state"),    columnOf(name, "theta"),
                  columnOf(name, "age"),             columnOf(name, "since"),    columnOf(name, "ageHours"),
                  columnOf(name, "serviceYears"),    columnOf(name, "serviceHours")};
}

static Resale readResale(int row) {
  return (Resale){doubleAt("resale.newPrice", row), doubleAt("resale.share", row), doubleAt("resale.fallPerYear", row),
                  doubleAt("resale.least", row), doubleAt("resale.deadShare", row)};
}

static void readCandidate(int c) {
  Candidate *candidate = &model.candidate[c];
  char tables[NAME_BYTES];
  snprintf(tables, sizeof tables, "states%d", c);
  candidate->price = amountAt("candidates.price", c);
  candidate->install = amountAt("candidates.install", c);
  candidate->leadDays = amountAt("candidates.leadDays", c);
  candidate->installDays = amountAt("candidates.installDays", c);
  candidate->fuelPerHour = doubleAt("candidates.fuelPerHour", c);
  candidate->partPriceFactor = doubleAt("candidates.partPriceFactor", c);
  candidate->labourFactor = doubleAt("candidates.labourFactor", c);
  candidate->lowLoadShare = doubleAt("candidates.lowLoadShare", c);
  candidate->guaranteeYears = doubleAt("candidates.guaranteeYears", c);
  candidate->usedYears = doubleAt("candidates.usedYears", c);
  candidate->infantFaults = doubleAt("candidates.infantFaults", c);
  candidate->hourLifeFactor = doubleAt("candidates.hourLifeFactor", c);
  candidate->isUsed = find(nameOf(tables, "kappaLog")) != NULL;
  if (candidate->isUsed) candidate->tables = readTables(tables);
  model.resaleOfCandidate[c] = readResale(c + 1);
}

static void readItems(Alternative *alternative, int a) {
  const int from = integerAt("alternatives.itemFrom", a);
  alternative->items = integerAt("alternatives.itemFrom", a + 1) - from;
  alternative->item = roomFor(alternative->items, sizeof(Item));
  for (int i = 0; i < alternative->items; i++) {
    alternative->item[i] =
        (Item){integerAt("alternatives.itemPart", from + i), integerAt("alternatives.itemMode", from + i),
               byteAt("alternatives.itemOutcome", from + i), doubleAt("alternatives.itemQuality", from + i),
               doubleAt("alternatives.itemAgesLess", from + i)};
  }
}

static void readAlternative(int a) {
  Alternative *alternative = &model.alternative[a];
  alternative->now = byteAt("alternatives.now", a);
  alternative->replaceWith = integerAt("alternatives.replaceWith", a);
  alternative->laterWith = integerAt("alternatives.laterWith", a);
  alternative->laterYear = doubleAt("alternatives.laterYear", a);
  alternative->above = integerAt("alternatives.above", a);
  for (int k = 0; k < 3; k++) alternative->knots[k] = doubleAt("alternatives.knots", 3 * a + k);
  alternative->overrunMedian = doubleAt("alternatives.overrunMedian", a);
  alternative->overrunLogSd = doubleAt("alternatives.overrunLogSd", a);
  alternative->intrusionChance = doubleAt("alternatives.intrusionChance", a);
  alternative->isQuoted = byteAt("alternatives.isQuoted", a) == 1;
  alternative->isPriced = byteAt("alternatives.isPriced", a) == 1;
  alternative->areDaysGiven = byteAt("alternatives.areDaysGiven", a) == 1;
  alternative->price = amountAt("alternatives.price", a);
  alternative->besides = amountAt("alternatives.besides", a);
  alternative->wait = amountAt("alternatives.wait", a);
  alternative->days = amountAt("alternatives.days", a);
  readItems(alternative, a);
}

static void readNumbers(void) {
  model.horizonYears = number("horizonYears");
  model.interest = number("interest");
  model.lowLoadShare = number("lowLoadShare");
  model.fuelPerHour = number("fuelPerHour");
  model.upkeepPerYear = number("upkeepPerYear");
  model.boatLogSd = number("boatLogSd");
  model.setLogSd = number("setLogSd");
  model.hoursPerDay = number("labour.hoursPerDay");
  model.ownPerHour = number("labour.ownPerHour");
  model.paidPerHour = number("labour.paidPerHour");
  model.perTrip = number("labour.perTrip");
  model.overrunMedian = number("labour.overrunMedian");
  model.overrunLogSd = number("labour.overrunLogSd");
  model.ownerAccessFactor = number("labour.ownerAccessFactor");
  model.testsCatch = number("intrusion.testsCatch");
  model.intrusionShape = number("intrusion.shape");
  model.intrusionScaleHours = number("intrusion.scaleHours");
  model.fittingOutShare = number("care.fittingOutShare");
  model.restChance = number("care.restChance");
  model.setAgeYears = number("setAgeYears");
  model.salvage = number("salvageAtReplacement");
  model.giveUpPerYear = number("giveUp.perYear");
  model.giveUpDaysPerYear = number("giveUp.daysPerYear");
  model.giveUpCost = amountAt("giveUp.cost", 0);
  model.curveDays = column("power.days");
  model.curveCost = column("power.cost");
  model.curvePoints = countOf("power.days");
  model.powerByMonth = column("power.byMonth");
  model.accessHours = column("accessHours");
  model.accessGroups = countOf("accessHours");
}

static void readModel(void) {
  readNumbers();
  model.modes = countOf("modes.part");
  model.parts = countOf("parts.repair");
  model.repairs = countOf("repairs.hours");
  model.candidates = countOf("candidates.hourLifeFactor");
  model.alternatives = countOf("alternatives.now");
  if (model.modes > MOST_MODES || model.parts > MOST_PARTS) {
    fprintf(stderr, "the model is too large for this program\n");
    exit(1);
  }
  model.repair = roomFor(model.repairs, sizeof(Repair));
  model.candidate = roomFor(model.candidates, sizeof(Candidate));
  model.resaleOfCandidate = roomFor(model.candidates, sizeof(Resale));
  model.alternative = roomFor(model.alternatives, sizeof(Alternative));
  for (int r = 0; r < model.repairs; r++) model.repair[r] = readRepair(r);
  for (int m = 0; m < model.modes; m++) readMode(m);
  for (int p = 0; p < model.parts; p++) readPart(p);
  for (int c = 0; c < model.candidates; c++) readCandidate(c);
  for (int a = 0; a < model.alternatives; a++) readAlternative(a);
  model.resaleOfPresent = readResale(0);
  model.present = readTables("states");
}

#endif
