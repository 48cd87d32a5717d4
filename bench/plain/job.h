/* A job (20 to 22, 25, 26, 28): what is mended together, what it costs, how long it takes, how its parts stand after. */
#ifndef PLAIN_JOB_H
#define PLAIN_JOB_H

#include "policy.h"

enum { MOST_REASONS = 16 };

/* A part in a job, by modes that failed or were found, or plainly damaged. */
typedef struct {
  int part, reasons;
  int mode[MOST_REASONS];
  bool isPlain;
  /* The strongest of the reasons, or what is asked for now. */
  int outcome;
  double agesLess;
  const Repair *repair;
  /* The piece that has come or is fitted; its quality, nought as the supply's. */
  const Supply *supply;
  double quality;
} Member;

typedef struct {
  int count;
  Member member[MOST_PARTS];
} Job;

typedef enum { UNPLANNED_STOP, UNPLANNED, PLANNED, ASHORE } How;

/* What hands, opening and trips a job takes. */
typedef struct {
  double owner, paid, trips;
  u64 access;
} Work;

static int placeOf(const Job *job, int part) {
  for (int i = 0; i < job->count; i++) {
    if (job->member[i].part == part) return i;
  }
  return -1;
}

static Member *memberOf(Job *job, int part) {
  const int known = placeOf(job, part);
  if (known >= 0) return &job->member[known];
  Member *member = &job->member[job->count++];
  *member = (Member){.part = part, .outcome = -1};
  return member;
}

static void addMode(Job *job, int m) {
  const ModeKind *kind = &model.mode[m];
  Member *member = memberOf(job, kind->part);
  if (member->reasons < MOST_REASONS) member->mode[member->reasons++] = m;
  if (kind->outcome <= member->outcome) return;
  member->outcome = kind->outcome;
  member->agesLess = kind->agesLess;
  member->repair = kind->repair;
}

static void addPlain(Job *job, int part) {
  Member *member = memberOf(job, part);
  member->isPlain = true;
  member->outcome = RENEWED;
  member->repair = model.part[part].repair;
}

/* Hours on the parts and of opening, the owner's if every part is the owner's; what stands open is not opened again. */
static Work workOf(const Job *job, u64 opened) {
  Work work = {0, 0, 0, 0};
  bool allOwner = true;
  for (int i = 0; i < job->count; i++) {
    const Repair *repair = job->member[i].repair;
    *(repair->byOwner ? &work.owner : &work.paid) += repair->hours * labourFactor();
    if (!repair->byOwner) allOwner = false;
    work.trips = larger(work.trips, repair->trips);
    work.access |= model.part[job->member[i].part].access;
  }
  double opening = 0;
  for (int group = 0; group < model.accessGroups; group++) {
    if ((work.access & ~opened) >> group & 1) opening += model.accessHours[group] * labourFactor();
  }
  if (allOwner) work.owner += opening * model.ownerAccessFactor;
  else work.paid += opening;
  return work;
}

static double priceOfWork(const Work *work) {
  return work->owner * model.ownPerHour + work->paid * model.paidPerHour + work->trips * model.perTrip;
}

/* What would be said beforehand: means, at the first supply's price (28). */
static double estimate(const Job *job) {
  const Work work = workOf(job, 0);
  double money = priceOfWork(&work);
  for (int i = 0; i < job->count; i++) {
    const Repair *repair = job->member[i].repair;
    const double factor = repair->supplies > 0 ? repair->supply[0].priceFactor : 1;
    if (job->member[i].outcome != CLEARED) money += meanAmount(&repair->price) * factor * partPriceFactor();
  }
  return money;
}

/* Straight between knots at now, half way and the horizon. */
static double repairLimit(void) {
  const double *knots = world.alternative->knots;
  const double way = 2 * world.t / model.horizonYears;
  return way < 1 ? knots[0] + way * (knots[1] - knots[0]) : knots[1] + (way - 1) * (knots[2] - knots[1]);
}

/* One of the options; the last grows likelier with the years (21). */
static const Supply *drawSupply(const Repair *repair) {
  if (repair->supplies == 0) return NULL;
  const Supply *last = &repair->supply[repair->supplies - 1];
  const double lastChance = smaller(1, last->chance + repair->lastLikelier * world.t);
  double u = uniform();
  for (const Supply *option = repair->supply; option < last; option++) {
    u -= option->chance / (1 - last->chance) * (1 - lastChance);
    if (u < 0) return option;
  }
  return last;
}

static double drawWait(const Repair *repair, const Supply *supply) {
  if (supply == NULL) return 0;
  double days = drawAmount(&supply->days);
  if (happens(repair->wrongPart)) days += drawAmount(&supply->days);
  return days;
}

/* Still the same defect, with some of its time given back (25). */
static void patch(int m) {
  Mode *mode = &world.mode[m];
  if (mode->state == UNNOTICED) wearOthers(m, false);
  mode->stamp++;
  beDefective(m, drawDelay(&model.mode[m]) * model.mode[m].delayFactor);
}

static void putRight(const Member *member) {
  const PartKind *kind = &model.part[member->part];
  const bool isWhole = member->isPlain || member->outcome == RENEWED || member->outcome == RECONDITIONED;
  const int count = isWhole ? kind->modes : member->reasons;
  for (int i = 0; i < count; i++) {
    const int m = isWhole ? kind->firstMode + i : member->mode[i];
    if (member->outcome == PATCHED) patch(m);
    else if (member->outcome == CLEARED) beginLife(m);
    else if (member->outcome == RECONDITIONED) makeSound(m, ageOf(m) * (1 - member->agesLess));
    else {
      world.mode[m].quality = member->quality > 0 ? member->quality : 1;
      beginLife(m);
    }
  }
  if (member->outcome == RENEWED) restartService(member->part);
}

/* Work puts a fault into what it opens: into the part itself or one that names an access group with it (26). */
static void intrude(const int *worked, int count, double chance) {
  if (!happens(chance * (1 - model.testsCatch))) return;
  bool isNear[MOST_PARTS] = {false};
  int near[MOST_PARTS];
  int found = 0;
  for (int i = 0; i < count; i++) {
    for (int n = 0; n < model.part[worked[i]].nears; n++) isNear[model.part[worked[i]].near[n]] = true;
  }
  for (int p = 0; p < model.parts; p++) {
    if (isNear[p]) near[found++] = p;
  }
  putFaultIn(near[pick(found)]);
}

/* Pieces drawn, with the longest of their waits. */
static double drawPieces(Job *job, How how, double *waitDays) {
  double money = 0;
  *waitDays = 0;
  for (int i = 0; i < job->count; i++) {
    Member *member = &job->member[i];
    const bool isOrdered = how == PLANNED && member->supply != NULL;
    if (member->outcome == CLEARED) continue;
    if (!isOrdered) member->supply = drawSupply(member->repair);
    const double factor = member->supply == NULL ? 1 : member->supply->priceFactor;
    money += drawAmount(&member->repair->price) * factor * partPriceFactor();
    if (!isOrdered) *waitDays = larger(*waitDays, drawWait(member->repair, member->supply));
    if (member->quality == 0 && member->supply != NULL) member->quality = member->supply->quality;
  }
  return money;
}

static double drawWorkshop(const Job *job) {
  double days = 0;
  for (int i = 0; i < job->count; i++) days = larger(days, drawAmount(&job->member[i].repair->workshop));
  return days;
}

/* Above the limit the set is replaced or given up instead (28). */
static void doInstead(How how) {
  const bool stands = how == UNPLANNED_STOP || isDown();
  if (world.alternative->above == GIVE_UP_ABOVE) giveUp(stands);
  else replaceSet(&model.candidate[world.alternative->above], stands);
}

/* Unplanned in an outage: it lasts until the later of its end and the wait, and then for the work (22). */
static void takeOutForJob(How how, bool joins, double waitDays, double workDays) {
  if (how == ASHORE) return;
  const double ready = world.t + waitDays / DAYS_PER_YEAR;
  if (joins) takeOutUntil(larger(world.downUntil, ready) + workDays / DAYS_PER_YEAR);
  else takeOut(how == UNPLANNED_STOP ? waitDays + workDays : workDays);
}

static void doJob(Job *job, How how) {
  const bool isFree = world.t < world.guaranteeUntil;
  if (!isFree && world.alternative->above != NO_LIMIT && estimate(job) > repairLimit()) {
    doInstead(how);
    return;
  }
  const bool joins = isDown() && (how == UNPLANNED_STOP || how == UNPLANNED);
  double waitDays;
  const double pieces = drawPieces(job, how, &waitDays);
  Work work = workOf(job, joins ? world.opened : 0);
  if (joins) work.trips = 0;
  const double overrun = lognormal(model.overrunMedian, model.overrunLogSd);
  if (!isFree) book((pieces + priceOfWork(&work)) * overrun);
  takeOutForJob(how, joins, waitDays, drawWorkshop(job) + (work.owner + work.paid) / model.hoursPerDay);
  world.opened |= work.access;
  for (int i = 0; i < job->count; i++) putRight(&job->member[i]);
  for (int i = 0; i < job->count; i++) intrude(&job->member[i].part, 1, job->member[i].repair->intrusion);
}

#endif
