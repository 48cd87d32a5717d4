/* What happens: failures and what they drag down (17 to 19), what is found (16), what is done now (29). */
#ifndef EVENT_H
#define EVENT_H

#include "job.h"

/* What has come together in one event so far. */
typedef struct {
  Job job;
  bool stops, hasHiddenRoot;
  int hits;
  /* Modes that failed and whose links are still to fire. */
  int firing[MOST_MODES];
  int firingCount;
  bool isAsleepFound[MOST_PARTS];
} Happening;

static Happening happening;

static int sleepingMode(int part) {
  const PartKind *kind = &model.part[part];
  for (int m = kind->firstMode; m < kind->firstMode + kind->modes; m++) {
    if (world.mode[m].state == UNNOTICED) return m;
  }
  return -1;
}

/* A mode fails within the event. Hidden modes never stop the set. */
static void strike(int m) {
  addMode(&happening.job, m);
  happening.firing[happening.firingCount++] = m;
  if (!model.mode[m].hidden && happens(model.mode[m].stops)) happening.stops = true;
}

/* A working shutdown takes part of the chance away; one found asleep is revealed and joins the job. */
static bool isHit(const Link *link) {
  if (link->guard < 0) return happens(link->chance);
  if (sleepingMode(link->guard) < 0) return happens(link->chance * (1 - link->guardEffect));
  const bool hit = happens(link->chance);
  if (hit || !happening.hasHiddenRoot) happening.isAsleepFound[link->guard] = true;
  return hit;
}

static void fire(const Link *link) {
  if (placeOf(&happening.job, link->part) >= 0 || !isHit(link)) return;
  if (link->mode < 0) {
    happening.hits++;
    addPlain(&happening.job, link->part);
  } else if (!link->startsDefect) {
    happening.hits++;
    strike(link->mode);
  } else if (world.mode[link->mode].state == SOUND) {
    happening.hits++;
    if (model.mode[link->mode].delayKind == NO_DELAY) strike(link->mode);
    else beginDefect(link->mode);
  }
}

static void addSleepers(void) {
  for (int p = 0; p < model.parts; p++) {
    if (!happening.isAsleepFound[p]) continue;
    const PartKind *kind = &model.part[p];
    for (int m = kind->firstMode; m < kind->firstMode + kind->modes; m++) {
      if (world.mode[m].state == UNNOTICED) addMode(&happening.job, m);
    }
  }
}

static void beginEvent(int root) {
  happening.job.count = 0;
  happening.stops = false;
  happening.hasHiddenRoot = model.mode[root].hidden;
  happening.hits = 0;
  happening.firingCount = 0;
  memset(happening.isAsleepFound, 0, sizeof happening.isAsleepFound);
}

/* (14) Looks go on, for what is wrong now. */
static void failUnnoticed(int m) {
  world.mode[m].stamp++;
  world.mode[m].state = UNNOTICED;
  wearOthers(m, true);
  expectLooks(m);
}

static void fail(int m) {
  beginEvent(m);
  strike(m);
  for (int i = 0; i < happening.firingCount; i++) {
    const ModeKind *kind = &model.mode[happening.firing[i]];
    for (int l = 0; l < kind->links; l++) fire(&kind->link[l]);
  }
  if (happening.hasHiddenRoot && happening.hits == 0) {
    failUnnoticed(m);
    return;
  }
  addSleepers();
  doJob(&happening.job, happening.stops ? UNPLANNED_STOP : UNPLANNED);
}

/* In lay-up a visible failure shows at the next day of use, unless fitting out meets it (17). */
static void failByItself(int m) {
  Mode *mode = &world.mode[m];
  if (model.mode[m].hidden || !isLayUp(world.t)) {
    fail(m);
    return;
  }
  mode->state = LAID_UP;
  mode->stamp++;
  const Kind kind = happens(model.fittingOutShare) ? FITTING_OUT : SHOWS;
  expect(kind, m, mode->stamp, YEARS, nextUse(world.t));
}

static void mendPlanned(int m, How how, const Supply *ordered) {
  Job *job = &happening.job;
  job->count = 0;
  addMode(job, m);
  job->member[0].supply = ordered;
  doJob(job, how);
}

/* (16) */
static void found(int m) {
  const ModeKind *kind = &model.mode[m];
  Mode *mode = &world.mode[m];
  mode->ordered = kind->outcome == CLEARED ? NULL : drawSupply(kind->repair);
  const double wait = drawWait(kind->repair, mode->ordered) / DAYS_PER_YEAR;
  if (mode->state == DEFECTIVE && timeAt(kind->delayClock, mode->fails) - world.t <= wait) {
    if (!happens(model.restChance)) return;
    /* At rest it does not fail. */
    mode->stamp++;
    takeOutUntil(larger(world.downUntil, world.t + wait));
  }
  expect(PIECE_COMES, m, mode->stamp, YEARS, world.t + wait);
}

/* Whether the whole part is put right, whichever mode prices it. */
static bool isMendedNow(int m) {
  for (int i = 0; i < world.alternative->items; i++) {
    const Item *item = &world.alternative->item[i];
    const bool isWhole = item->outcome == RENEWED || item->outcome == RECONDITIONED || item->mode < 0;
    if (item->part == model.mode[m].part && (isWhole || item->mode == m)) return true;
  }
  return false;
}

static void fillJobNow(Job *job) {
  job->count = 0;
  for (int i = 0; i < world.alternative->items; i++) {
    const Item *item = &world.alternative->item[i];
    Member *member = memberOf(job, item->part);
    const PartKind *part = &model.part[item->part];
    member->repair = item->mode < 0 ? part->repair : model.mode[item->mode].repair;
    member->outcome = item->outcome;
    member->agesLess = item->agesLess;
    member->quality = item->quality;
    member->isPlain = item->mode < 0;
    if (item->mode >= 0) member->mode[member->reasons++] = item->mode;
  }
}

/* (29) Parts put right as one planned job, by its quote, its usual price, or the price of its parts. */
static void mendNow(bool stands) {
  const Alternative *alternative = world.alternative;
  Job *job = &happening.job;
  double unused;
  int worked[MOST_PARTS];
  fillJobNow(job);
  const double pieces = drawPieces(job, UNPLANNED, &unused);
  const Work work = workOf(job, 0);
  const double overrun = lognormal(alternative->overrunMedian, alternative->overrunLogSd);
  book(overrun * (alternative->isPriced ? drawAmount(&alternative->price) : pieces + priceOfWork(&work)));
  book(drawAmount(&alternative->besides));
  const double usual = drawWorkshop(job) + (work.owner + work.paid) / model.hoursPerDay;
  const double days = alternative->areDaysGiven ? drawAmount(&alternative->days) : usual;
  takeOut((stands ? drawAmount(&alternative->wait) : 0) + days);
  world.opened |= work.access;
  for (int i = 0; i < job->count; i++) {
    worked[i] = job->member[i].part;
    putRight(&job->member[i]);
  }
  if (alternative->isPriced) intrude(worked, job->count, alternative->intrusionChance);
  else for (int i = 0; i < job->count; i++) intrude(&worked[i], 1, job->member[i].repair->intrusion);
}

/* What stood broken before now and is not put right: an ordinary failure without links (29). */
static void failFromBefore(int m, bool stops) {
  beginEvent(m);
  addMode(&happening.job, m);
  world.mode[m].stamp++;
  doJob(&happening.job, stops ? UNPLANNED_STOP : UNPLANNED);
}

static void actNow(void) {
  const Alternative *alternative = world.alternative;
  bool stops[MOST_PARTS] = {false};
  bool stands = false;
  for (int p = 0; p < model.parts; p++) {
    const int m = model.part[p].broken;
    stops[p] = m >= 0 && !model.mode[m].hidden && happens(model.mode[m].stops);
    if (stops[p]) stands = true;
  }
  if (alternative->laterWith >= 0) expect(REPLACEMENT_DUE, alternative->laterWith, 0, YEARS, alternative->laterYear);
  if (alternative->now == GIVE_UP) giveUp(stands);
  if (alternative->now == REPLACE) replaceSet(&model.candidate[alternative->replaceWith], stands);
  if (alternative->now == MEND) mendNow(stands);
  for (int p = 0; p < model.parts; p++) {
    const int m = model.part[p].broken;
    if (m < 0 || world.set > 0 || world.gaveUp || (alternative->now == MEND && isMendedNow(m))) continue;
    failFromBefore(m, stops[p]);
  }
}

#endif
